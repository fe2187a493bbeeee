// beyond-farthest, outside-travel: farther than a close-up lens, a tube or a wheel lets
// the focus go.

package glass

import (
	"fmt"

	"pullscore/interp/checks/check"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Reach = check.Check{Codes: []rule.Code{rule.BeyondFarthest, rule.OutsideTravel}, Run: goesTooFar}

func goesTooFar(b *check.Shot) (found []check.Finding) {
	at := func(g *stage.Goal, t float64) (f check.Finding, ok bool) {
		switch {
		case !g.Ok:
		case b.BeyondFarthest(g, t):
			return beyondFarthest(b, g, t), true
		case b.OutsideTravel(g, t):
			return outsideTravel(b, g, t), true
		}
		return f, false
	}
	if f, ok := at(&b.Start, 0); ok {
		found = append(found, f)
	}
	for _, p := range b.Pulls {
		if f, ok := at(&p.Rack.Aim, p.Rack.LandS); ok {
			f.Range = lang.Range{} // the rack is what cannot be
			found = append(found, b.About(p, f))
		}
	}
	return found
}

// onTheLens names the close-up lens and the tube of a shot that has one of them.
func onTheLens(b *check.Shot) string {
	tube := "a tube of " + b.Units.Millimetres(b.Setup.Tube)
	diopter := "diopter " + units.Decimal(b.Setup.Diopter, 2)
	switch {
	case b.Setup.Diopter == 0:
		return tube
	case b.Setup.Tube > 0:
		return diopter + " and " + tube
	}
	return diopter
}

func beyondFarthest(b *check.Shot, g *stage.Goal, t float64) check.Finding {
	x := b.Plan.Farthest(t)
	far := b.Plan.ToTape(x, t)
	detail := ""
	if b.Setup.Diopter > 0 {
		detail = fmt.Sprintf("That counts from the close-up lens; the tape reads %s.", b.Units.Tape(far))
		far = x
	}
	tape := b.Tape(g, t)
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "beyond-farthest", Severity: lang.Error, Range: g.At, Time: t, Detail: detail,
		Message: fmt.Sprintf("with %s lens %q focuses no farther than %s: %s is at %s", onTheLens(b), b.Setup.Lens.Name, b.Units.Tape(far), g.Text, b.Units.Tape(tape)),
		Figures: []lang.Figure{check.Figure("distance_m", tape), check.Figure("farthest_m", far)},
	}}
}

func outsideTravel(b *check.Shot, g *stage.Goal, t float64) check.Finding {
	w := b.Setup.Travel
	return check.Finding{Diagnostic: lang.Diagnostic{
		Code: "outside-travel", Severity: lang.Error, Range: g.At, Time: t,
		Message: fmt.Sprintf("%s lies outside the part that the wheel is mapped to", g.Text),
		Detail:  fmt.Sprintf("The wheel goes from %s to %s.", b.Units.Tape(w.Near), b.Units.Tape(w.Far)),
		Figures: []lang.Figure{check.Figure("distance_m", b.Tape(g, t))},
	}}
}
