// inside-closest: nearer than the lens focuses.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/optics"
)

func checkInsideClosest(b *builder) {
	if b.start.ok && b.tooNear(&b.start, 0) {
		b.tellTooNear(&b.start, 0, b.tell)
	}
	for _, p := range b.pulls {
		tell := func(f finding) { b.tellPull(p, f) }
		switch {
		case b.tooNear(&p.goal, p.land):
			b.tellTooNear(&p.goal, p.land, tell)
		case p.follow:
			if t, ok := b.followsTooNear(p); ok {
				b.tellTooNear(&p.goal, t, tell)
			}
		}
	}
}

// tooNear tells whether a goal at t is nearer than the lens focuses.
func (b *builder) tooNear(g *goal, t float64) bool {
	tape := b.nearest(g, t)
	if b.shot.Optics.FromLens && tape <= b.shot.Focal(t) {
		return true
	}
	return b.fromSensor(tape, t) < b.set.lens.closest*(1-1e-6)
}

// outOfReach tells whether nothing can be computed of a rack because of where
// it goes.
func (b *builder) outOfReach(p *pull) bool {
	return math.IsNaN(p.ToLens) || b.tooNear(&p.goal, p.land)
}

func (b *builder) tellTooNear(g *goal, t float64, tell func(finding)) {
	tape, closest := b.nearest(g, t), b.set.lens.closest
	detail := "Go farther away, or take another lens."
	if missing := closest - b.fromSensor(tape, t); missing > 0 {
		detail = fmt.Sprintf("The camera has to be %s farther away, or another lens taken.", metres(missing))
	}
	tell(finding{Diagnostic: lang.Diagnostic{
		Code: "inside-closest", Severity: lang.Error, Range: g.at, Time: t, Detail: detail,
		Message: fmt.Sprintf("the focus cannot go to %s (%s): lens %q focuses no closer than %s", g.text, metres(tape), b.set.lens.name, metres(closest)),
		Figures: []lang.Figure{figure("distance_m", tape), figure("closest_m", closest)},
	}})
}

// fromSensor turns a tape reading into a distance from the sensor.
func (b *builder) fromSensor(tape, t float64) float64 {
	if b.shot.Optics.FromLens && tape > b.shot.Focal(t) {
		return optics.ToSensor(tape, b.shot.Focal(t))
	}
	return tape
}

// nearest is how near a goal comes, as the tape reads it: of a split, its
// nearest subject.
func (b *builder) nearest(g *goal, t float64) float64 {
	if g.split == nil {
		return b.tape(g, t)
	}
	near := math.Inf(1)
	for _, u := range g.split {
		near = min(near, b.shot.DistanceAt(u.Subject, t))
	}
	return near
}

// followsTooNear finds the first moment at which a follow gets too near.
func (b *builder) followsTooNear(p *pull) (t float64, ok bool) {
	for _, m := range b.stage.moves {
		for _, t := range []float64{m.start, m.end} {
			if t >= p.start && t <= p.land && b.tooNear(&p.goal, t) {
				return t, true
			}
		}
	}
	return 0, false
}
