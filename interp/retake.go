// Taking a shot anew: the same shot at another stop, with another lens, from
// farther away.

package interp

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

// Retake returns what computes a shot of the result's plan anew, by the same
// steps and with the same numbers as if the change had been written into the
// plan. It must not be called from several goroutines at a time.
func (r *Result) Retake(shot *plan.Shot) stops.Retake {
	p := r.program
	sec := p.sections[shot]
	base := p.shotBuilder(sec, change{})
	base.probing = true
	ok := base.build()
	return func(c stops.Change) (stops.Take, bool) {
		if !ok {
			return stops.Take{}, false
		}
		ch, ok := base.change(c)
		if !ok {
			return stops.Take{}, false
		}
		return p.retake(sec, ch, c)
	}
}

// change says in statements what a change says in pulls; ok is false where a
// pull has none that takes it.
func (b *builder) change(c stops.Change) (ch change, ok bool) {
	ch = change{
		Stop: c.Stop, Gear: c.Gear, Wheel: c.Wheel, Back: c.Back, Camera: c.Camera, Lens: c.Lens,
		Focal: c.Focal, FocalBy: c.FocalBy, SensorBy: c.SensorBy, Over: map[int]float64{},
	}
	for n, t := range c.Over {
		if n < 1 || n > len(b.pulls) || b.pulls[n-1].follow {
			return change{}, false
		}
		ch.Over[b.pulls[n-1].item+1] = t
	}
	return ch, true
}

func (p *program) retake(sec *lang.Section, ch change, c stops.Change) (stops.Take, bool) {
	b := p.shotBuilder(sec, ch)
	b.probing, b.needs = true, c.Needs
	if !b.build() {
		return stops.Take{}, false
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
