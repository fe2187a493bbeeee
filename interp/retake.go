// Taking a shot anew: the same shot at another stop, with another lens, from
// farther away.

package interp

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/cures"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// Retake returns what computes a shot of the result's plan anew, by the same
// steps and with the same numbers as if the change had been written into the
// plan. A rack that does not say its time keeps the one that it has in the plan
// as written, whatever else is changed: as if `over` had been written too. Else
// every stop would be judged at another time. Several goroutines may call it at a
// time.
func (r *Result) Retake(of *plan.Shot) stops.Retake {
	p := r.program
	sec := p.sections[p.original(of)]
	base, ok := shot.Build(p.film, sec, change.Change{}, shot.Options{})
	return func(c stops.Change) (stops.Take, bool) {
		if !ok {
			return stops.Take{}, false
		}
		ch, ok := asChange(base, c)
		if !ok {
			return stops.Take{}, false
		}
		return p.retake(sec, base, ch, c)
	}
}

// asChange says in statements what a change says in pulls; ok is false where a
// pull has none that takes it.
func asChange(b *shot.Built, c stops.Change) (ch change.Change, ok bool) {
	ch = change.Change{
		Number: c.Stop, Gear: c.Gear, Wheel: c.Wheel, Back: c.Back, Camera: c.Camera, Lens: c.Lens,
		Focal: c.Focal, FocalBy: c.FocalBy, SensorBy: c.SensorBy,
	}
	for n := range c.Over {
		if n < 1 || n > len(b.Pulls) || b.Pulls[n-1].Rack.Follow {
			return change.Change{}, false
		}
	}
	for i, p := range b.Pulls {
		t, ok := c.Over[i+1]
		switch {
		case ok:
		case p.Plan.Untimed:
			t = kept(p.Rack)
		default:
			continue
		}
		ch.Edits = append(ch.Edits, change.Edit{Kind: change.Over, Item: p.Rack.Item + 1, Seconds: t})
	}
	return ch, true
}

// kept is the time that a rack takes, as a plan would write it: in whole
// microseconds.
func kept(p *clock.Pull) float64 { return math.Round((p.LandS-p.StartS)*1e6) / 1e6 }

func (p *program) retake(sec *lang.Section, base *shot.Built, ch change.Change, c stops.Change) (stops.Take, bool) {
	b, ok := shot.Build(p.film, sec, ch, shot.Options{Needed: c.Needs})
	if !ok {
		return stops.Take{}, false
	}
	untimed := map[int]bool{} // by statement: a change adds none
	for _, q := range base.Pulls {
		untimed[q.Rack.Item] = q.Plan.Untimed
	}
	for _, q := range b.Pulls {
		q.Plan.Untimed = untimed[q.Rack.Item]
	}
	t := stops.Take{Shot: b.Plan}
	if c.Bare {
		return t, true
	}
	for f := range cures.Faults(b) {
		t.Faults = append(t.Faults, fmt.Sprintf("%s %d:%d", f.Code, f.At.Start.Line, f.At.Start.Column))
	}
	slices.Sort(t.Faults)
	return t, true
}

// Kit returns the cameras and lenses that the plan and the files it uses
// declare, those that can be used.
func (r *Result) Kit() stops.Kit {
	var kit stops.Kit
	for _, name := range slices.Sorted(maps.Keys(r.program.film.Cameras)) {
		if c := r.program.film.Cameras[name]; c.Ok {
			kit.Cameras = append(kit.Cameras, stops.Camera{
				Name: name, Width: func(squeeze float64) float64 { return c.Picture(squeeze).SensorW },
			})
		}
	}
	for _, name := range slices.Sorted(maps.Keys(r.program.film.Lenses)) {
		if l := r.program.film.Lenses[name]; l.Ok {
			kit.Lenses = append(kit.Lenses, stops.Lens{Name: name, Shortest: l.Focal, Longest: l.Longest, Spoken: [2]plan.Spoken{l.Spoken(l.Focal, false), l.Spoken(l.Focal, true)}})
		}
	}
	return kit
}
