// inside-closest, macro: nearer than the lens focuses, or than its figures hold.

package checks

import (
	"fmt"
	"math"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkInsideClosest(b Run) {
	if b.Start.Ok && b.TooNear(&b.Start, 0) {
		b.tellTooNear(&b.Start, 0, b.Tell)
	}
	for _, p := range b.Pulls {
		tell := func(f shot.Finding) { b.tellPull(p, f) }
		switch {
		case b.TooNear(&p.Aim, p.LandS):
			b.tellTooNear(&p.Aim, p.LandS, tell)
		case p.Follow:
			if t, ok := b.followsTooNear(p); ok {
				b.tellTooNear(&p.Aim, t, tell)
			}
		}
	}
}

func (b Run) tellTooNear(g *stage.Goal, t float64, tell func(shot.Finding)) {
	tape, closest := b.Nearest(g, t), b.Set.Lens.Closest
	detail := "Go farther away, or take another lens."
	if missing := closest - b.FromSensor(tape, t); missing > 0 {
		detail = fmt.Sprintf("The camera has to be %s farther away, or another lens taken.", inwords.Metres(missing))
	}
	tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "inside-closest", Severity: lang.Error, Range: g.At, Time: t, Detail: detail,
		Message: fmt.Sprintf("the focus cannot go to %s (%s): lens %q focuses no closer than %s", g.Text, inwords.Metres(tape), b.Set.Lens.Name, inwords.Metres(closest)),
		Figures: []lang.Figure{shot.Figure("distance_m", tape), shot.Figure("closest_m", closest)},
	}})
}

// followsTooNear finds the first moment at which a follow gets too near.
func (b Run) followsTooNear(p *clock.Pull) (t float64, ok bool) {
	for _, m := range b.Stage.Moves {
		for _, t := range []float64{m.Start, m.End} {
			if t >= p.StartS && t <= p.LandS && b.TooNear(&p.Aim, t) {
				return t, true
			}
		}
	}
	return 0, false
}

func checkMacro(b Run) {
	tell := func(g *stage.Goal, x, t float64, tell func(shot.Finding)) {
		if !g.Ok || !math.IsNaN(x) || b.TooNear(g, t) {
			return
		}
		tell(shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "macro", Severity: lang.Note, Range: g.At, Time: t,
			Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: its figures are left out", g.Text),
			Detail:  "Measure from the lens instead: tape from lens.",
			Cures:   []lang.Cure{{Text: "tape from lens"}},
		}})
	}
	tell(&b.Start, b.Shot.Optics.Start.Distance, 0, b.Tell)
	for _, p := range b.Pulls {
		tell(&p.Aim, p.ToLens, p.LandS, func(f shot.Finding) { b.tellPull(p, f) })
	}
}
