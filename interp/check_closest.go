// inside-closest: nearer than the lens focuses.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkInsideClosest(b run) {
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

func (b run) tellTooNear(g *goal, t float64, tell func(finding)) {
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

// followsTooNear finds the first moment at which a follow gets too near.
func (b run) followsTooNear(p *pull) (t float64, ok bool) {
	for _, m := range b.stage.moves {
		for _, t := range []float64{m.start, m.end} {
			if t >= p.start && t <= p.land && b.tooNear(&p.goal, t) {
				return t, true
			}
		}
	}
	return 0, false
}
