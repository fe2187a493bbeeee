// inside-closest, macro: nearer than the lens focuses, or than its figures hold.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var InsideClosest = check.Check{Codes: []rule.Code{rule.InsideClosest}, Run: goesTooNear}

func goesTooNear(b *check.Shot) (found []check.Finding) {
	if b.Start.Ok && b.TooNear(&b.Start, 0) {
		found = append(found, tooNear(b, &b.Start, 0, b.Start.At))
	}
	for _, p := range b.Pulls {
		switch {
		case b.TooNear(&p.Rack.Aim, p.Rack.LandS):
			found = append(found, b.About(p, tooNear(b, &p.Rack.Aim, p.Rack.LandS, p.Rack.Stmt.Range())))
		case p.Rack.Follow:
			if t, ok := followsTooNear(b, p); ok {
				found = append(found, b.About(p, tooNear(b, &p.Rack.Aim, t, p.Rack.Stmt.Range())))
			}
		}
	}
	return found
}

// tooNear tells of a goal that is too near at t; at is its place in the plan, which of a
// pull is that of the pull. Behind a close-up lens or on a tube a lens focuses closer.
func tooNear(b *check.Shot, g *stage.Goal, t float64, at lang.Range) check.Finding {
	tape, closest := b.Nearest(g, t), b.Setup.Lens.Closest
	missing := closest - b.FromSensor(tape, t)
	with, detail := "", "Go farther away, take another lens, or a diopter."
	if b.Setup.Diopter > 0 || b.Setup.Tube > 0 {
		closest = b.Plan.ToTape(b.Plan.Closest(t), t)
		missing = closest - tape
		with, detail = "with "+onTheLens(b)+" ", "Go farther away, or take a lens that focuses closer."
	}
	message := fmt.Sprintf("the focus cannot go to %s (%s): %slens %q focuses no closer than %s", g.Text, b.Units.Tape(tape), with, b.Setup.Lens.Name, b.Units.Tape(closest))
	if tape < 0 && b.Plan.Optics.Turns() {
		message, detail = fmt.Sprintf("the focus cannot go to %s: that is behind the camera, which has turned away", g.Text), "Turn the camera there first."
	}
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "inside-closest", Severity: lang.Error, Range: at, Time: t, Detail: detail, Message: message,
		Figures: []lang.Figure{check.Figure("distance_m", tape), check.Figure("closest_m", closest), check.Figure("missing_m", missing)},
	}}
}

// followsTooNear finds the first moment at which a follow gets too near.
func followsTooNear(b *check.Shot, p *shot.Pull) (t float64, ok bool) {
	for _, m := range b.Stage.MovesIn(p.Rack.StartS, p.Rack.LandS) {
		for _, t := range []float64{m.Start, m.End} {
			if t >= p.Rack.StartS && t <= p.Rack.LandS && b.TooNear(&p.Rack.Aim, t) {
				return t, true
			}
		}
	}
	return 0, false
}

var Macro = check.Check{Codes: []rule.Code{rule.Macro}, Run: nearerThanFigures}

func nearerThanFigures(b *check.Shot) (found []check.Finding) {
	if f, ok := noFigures(b, &b.Start, b.Plan.Optics.Start.Distance, 0); ok {
		found = append(found, f)
	}
	for _, p := range b.Pulls {
		if f, ok := noFigures(b, &p.Rack.Aim, p.Plan.ToLens, p.Rack.LandS); ok {
			found = append(found, b.About(p, f))
		}
	}
	return found
}

// noFigures tells of a goal at x from the lens of which nothing can be computed.
func noFigures(b *check.Shot, g *stage.Goal, x, t float64) (f check.Finding, ok bool) {
	if !g.Ok || !math.IsNaN(x) || b.TooNear(g, t) {
		return f, false
	}
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "macro", Severity: lang.Note, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: its figures are left out", g.Text),
		Detail:  "Measure from the lens instead: tape from lens.",
	}, Untried: []change.Change{{FromLens: true}}}, true
}
