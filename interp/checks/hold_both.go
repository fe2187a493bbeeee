// cannot-hold-both: a split that no setting keeps sharp.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkHoldBoth(b Run) {
	for _, p := range b.Pulls {
		b.holdBoth(&p.Aim, p.LandS, func(f shot.Finding) { b.tellPull(p, f) })
	}
	b.holdBoth(&b.Start, 0, b.Tell)
}

func (b Run) holdBoth(g *stage.Goal, t float64, tell func(shot.Finding)) {
	if g.Split == nil {
		return
	}
	near, far := b.Extent(g, t)
	set := b.Shot.Setting(t)
	if math.IsNaN(near) || set.Fits(near, far) { // too near is told as inside-closest
		return
	}
	needs := set.StopToFit(near, far)
	detail := "One of them has to come nearer to the other, or the focus racks from one to the other."
	if _, smallest := b.Set.Lens.StopsAt(b.Shot.Focal(t)); needs > smallest {
		detail = fmt.Sprintf("The lens closes to f/%s only. ", plan.Decimal(smallest, 2)) + detail
	}
	tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "cannot-hold-both", Severity: lang.Error, Range: g.At,
		Message: fmt.Sprintf("no setting holds %s together at %s: that needs f/%s", g.Text, b.Set.StopText, plan.Decimal(inwords.CeilTo(needs, 10), 1)),
		Detail:  detail,
		Figures: []lang.Figure{shot.Figure("needed_f", needs), shot.Figure("near_m", b.Shot.ToTape(near, t)), shot.Figure("far_m", b.Shot.ToTape(far, t))},
	}, Tries: func() []change.Change {
		return b.stopTry(true, func() bool { return b.Shot.Setting(t).Fits(near, far) })
	}})
}
