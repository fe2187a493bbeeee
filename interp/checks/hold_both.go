// cannot-hold-both: a split that no setting keeps sharp.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var holdBoth = Check{Codes: []rule.Code{rule.CannotHoldBoth}, Run: splits}

func splits(b *Shot) (found []Finding) {
	for _, p := range b.Pulls {
		if f, ok := b.tooFarApart(&p.Rack.Aim, p.Rack.LandS); ok {
			found = append(found, b.About(p, f))
		}
	}
	if f, ok := b.tooFarApart(&b.Start, 0); ok {
		found = append(found, f)
	}
	return found
}

func (b *Shot) tooFarApart(g *stage.Goal, t float64) (f Finding, ok bool) {
	if g.Split == nil {
		return f, false
	}
	near, far := b.Extent(g, t)
	set := b.Plan.Setting(t)
	if math.IsNaN(near) || set.FitsJudged(near, far) { // too near is told as inside-closest
		return f, false
	}
	needs := set.StopToFitJudged(near, far)
	detail := "One of them has to come nearer to the other, or the focus racks from one to the other."
	if _, smallest := b.Setup.Lens.StopsAt(b.Plan.Focal(t)); needs > smallest {
		detail = fmt.Sprintf("The lens closes to %s only. ", b.StopText(smallest, units.Near)) + detail
	}
	return Finding{Diagnostic: lang.Diagnostic{
		Code: "cannot-hold-both", Severity: lang.Error, Range: g.At,
		Message: fmt.Sprintf("no setting holds %s together at %s: that needs %s", g.Text, b.Setup.StopText, b.StopText(needs, units.Closed)),
		Detail:  detail,
		Figures: []lang.Figure{check.Figure("needed_f", needs), check.Figure("near_m", b.Plan.ToTape(near, t)), check.Figure("far_m", b.Plan.ToTape(far, t))},
	}, Tries: func() []change.Change {
		return b.StopTry(true, func(at *shot.Built) bool { return at.Plan.Setting(t).FitsJudged(near, far) })
	}}, true
}
