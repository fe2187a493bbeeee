// inside-closest: nearer than the lens focuses.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/optics"
)

func checkInsideClosest(b *builder) {
	closest := b.set.lens.closest
	if math.IsNaN(closest) {
		return
	}
	tell := func(g *goal, x, t float64, tell func(finding)) {
		d := optics.ToSensor(x, b.shot.Focal(t))
		if !g.ok || !(math.IsNaN(x) || d < closest*(1-1e-6)) {
			return
		}
		tape := b.nearest(g, t)
		if b.macroAllowed(x) {
			return
		}
		tell(finding{Diagnostic: lang.Diagnostic{
			Code: "inside-closest", Severity: lang.Error, Range: g.at, Time: t,
			Message: fmt.Sprintf("the focus cannot go to %s (%s): lens %q focuses no closer than %s", g.text, metres(tape), b.set.lens.name, metres(closest)),
			Detail:  fmt.Sprintf("The camera has to be %s farther away, or another lens taken.", metres(closest-tape)),
			Figures: []lang.Figure{figure("distance_m", tape), figure("closest_m", closest)},
		}})
	}
	tell(&b.start, b.shot.Optics.Start.Distance, 0, b.tell)
	for _, p := range b.pulls {
		tell(&p.goal, p.ToLens, p.land, func(f finding) { b.tellPull(p, f) })
		if p.follow {
			b.followsInsideClosest(p, closest, tell)
		}
	}
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

// followsInsideClosest looks at the nearest that a follow gets, unless its end
// has been told already.
func (b *builder) followsInsideClosest(p *pull, closest float64, tell func(*goal, float64, float64, func(finding))) {
	if optics.ToSensor(p.ToLens, b.shot.Focal(p.land)) < closest {
		return
	}
	at, near := p.start, math.Inf(1)
	for _, m := range b.stage.moves {
		for _, t := range []float64{m.start, m.end} {
			if t < p.start || t > p.land {
				continue
			}
			if x := b.lensDistance(&p.goal, t); x < near {
				at, near = t, x
			}
		}
	}
	if !math.IsInf(near, 1) {
		tell(&p.goal, near, at, func(f finding) { b.tellPull(p, f) })
	}
}

// macroAllowed tells whether x is so near that the figures of a unit-focusing
// lens do not hold, on a lens that focuses that close.
func (b *builder) macroAllowed(x float64) bool {
	return math.IsNaN(x) && b.set.lens.closest < 4*b.set.focal
}
