// Taking a shot anew: the same shot at another stop, with another lens, from
// farther away.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// Retake returns what computes a shot of the result's plan anew, by the same
// steps and with the same numbers as if the change had been written into the
// plan. A rack that does not say its time keeps the one that it has in the plan
// as written, whatever else is changed: as if `over` had been written too. Else
// every stop would be judged at another time. It must not be called from several
// goroutines at a time.
func (r *Result) Retake(shot *plan.Shot) stops.Retake {
	p := r.program
	sec := p.sections[shot]
	base := newBuilder(p.film, sec, change{})
	base.probing = true
	ok := base.build()
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
func asChange(b *builder, c stops.Change) (ch change, ok bool) {
	ch = change{
		Stop: c.Stop, Gear: c.Gear, Wheel: c.Wheel, Back: c.Back, Camera: c.Camera, Lens: c.Lens,
		Focal: c.Focal, FocalBy: c.FocalBy, SensorBy: c.SensorBy, Over: map[int]float64{},
	}
	for _, p := range b.pulls {
		if p.Untimed {
			ch.Over[p.item+1] = kept(p)
		}
	}
	for n, t := range c.Over {
		if n < 1 || n > len(b.pulls) || b.pulls[n-1].follow {
			return change{}, false
		}
		ch.Over[b.pulls[n-1].item+1] = t
	}
	return ch, true
}

// kept is the time that a rack takes, as a plan would write it: in whole
// microseconds.
func kept(p *pull) float64 { return math.Round((p.land-p.start)*1e6) / 1e6 }

func (p *program) retake(sec *lang.Section, base *builder, ch change, c stops.Change) (stops.Take, bool) {
	b := run{newBuilder(p.film, sec, ch)}
	b.probing, b.needs = true, c.Needs
	if !b.build() {
		return stops.Take{}, false
	}
	for _, q := range b.pulls {
		was := base.clock.pullOf[q.item] // a change adds no statements
		q.Untimed = was.Untimed
	}
	t := stops.Take{Shot: b.shot}
	if c.Bare {
		return t, true
	}
	b.check()
	for f := range b.faults() {
		t.Faults = append(t.Faults, fmt.Sprintf("%s %d:%d", f.code, f.at.Start.Line, f.at.Start.Column))
	}
	slices.Sort(t.Faults)
	return t, true
}

// Kit returns the cameras and lenses that the plan and the files it uses
// declare, those that can be used.
func (r *Result) Kit() stops.Kit {
	var kit stops.Kit
	for _, name := range sortedKeys(r.program.cameras) {
		if c := r.program.cameras[name]; c.ok {
			kit.Cameras = append(kit.Cameras, stops.Camera{Name: name, SensorW: c.sensorW})
		}
	}
	for _, name := range sortedKeys(r.program.lenses) {
		if l := r.program.lenses[name]; l.ok {
			kit.Lenses = append(kit.Lenses, stops.Lens{Name: name, Shortest: l.focal, Longest: l.longest})
		}
	}
	return kit
}
