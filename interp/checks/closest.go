// inside-closest, macro: nearer than the lens focuses, or than its figures hold.

package checks

import (
	"fmt"
	"math"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var insideClosest = Check{Codes: []rule.Code{rule.InsideClosest}, Run: goesTooNear}

func goesTooNear(b *Shot) (found []Finding) {
	if b.Start.Ok && b.TooNear(&b.Start, 0) {
		found = append(found, b.tooNear(&b.Start, 0))
	}
	for _, p := range b.Pulls {
		switch {
		case b.TooNear(&p.Rack.Aim, p.Rack.LandS):
			found = append(found, b.about(p, b.tooNear(&p.Rack.Aim, p.Rack.LandS)))
		case p.Rack.Follow:
			if t, ok := b.followsTooNear(p); ok {
				found = append(found, b.about(p, b.tooNear(&p.Rack.Aim, t)))
			}
		}
	}
	return found
}

func (b *Shot) tooNear(g *stage.Goal, t float64) Finding {
	tape, closest := b.Nearest(g, t), b.Setup.Lens.Closest
	detail := "Go farther away, or take another lens."
	if missing := closest - b.FromSensor(tape, t); missing > 0 {
		detail = fmt.Sprintf("The camera has to be %s farther away, or another lens taken.", b.units.Gap(missing))
	}
	return Finding{Diagnostic: lang.Diagnostic{
		Code: "inside-closest", Severity: lang.Error, Range: g.At, Time: t, Detail: detail,
		Message: fmt.Sprintf("the focus cannot go to %s (%s): lens %q focuses no closer than %s", g.Text, b.units.Tape(tape), b.Setup.Lens.Name, b.units.Tape(closest)),
		Figures: []lang.Figure{figure("distance_m", tape), figure("closest_m", closest)},
	}}
}

// followsTooNear finds the first moment at which a follow gets too near.
func (b *Shot) followsTooNear(p *shot.Pull) (t float64, ok bool) {
	for _, m := range b.Stage.MovesIn(p.Rack.StartS, p.Rack.LandS) {
		for _, t := range []float64{m.Start, m.End} {
			if t >= p.Rack.StartS && t <= p.Rack.LandS && b.TooNear(&p.Rack.Aim, t) {
				return t, true
			}
		}
	}
	return 0, false
}

var macro = Check{Codes: []rule.Code{rule.Macro}, Run: nearerThanFigures}

func nearerThanFigures(b *Shot) (found []Finding) {
	if f, ok := b.noFigures(&b.Start, b.Plan.Optics.Start.Distance, 0); ok {
		found = append(found, f)
	}
	for _, p := range b.Pulls {
		if f, ok := b.noFigures(&p.Rack.Aim, p.Plan.ToLens, p.Rack.LandS); ok {
			found = append(found, b.about(p, f))
		}
	}
	return found
}

// noFigures tells of a goal at x from the lens of which nothing can be computed.
func (b *Shot) noFigures(g *stage.Goal, x, t float64) (f Finding, ok bool) {
	if !g.Ok || !math.IsNaN(x) || b.TooNear(g, t) {
		return f, false
	}
	return Finding{Diagnostic: lang.Diagnostic{
		Code: "macro", Severity: lang.Note, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: its figures are left out", g.Text),
		Detail:  "Measure from the lens instead: tape from lens.",
		Cures:   []lang.Cure{{Text: "tape from lens"}},
	}}, true
}
