// cannot-hold-both: a split that no setting keeps sharp.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/lang"
)

func checkHoldBoth(b run) {
	for _, p := range b.pulls {
		b.holdBoth(&p.goal, p.land, func(f finding) { b.tellPull(p, f) })
	}
	b.holdBoth(&b.start, 0, b.tell)
}

func (b run) holdBoth(g *goal, t float64, tell func(finding)) {
	if g.split == nil {
		return
	}
	near, far := b.extent(g, t)
	set := b.shot.Setting(t)
	if math.IsNaN(near) || set.Fits(near, far) { // too near is told as inside-closest
		return
	}
	needs := set.StopToFit(near, far)
	detail := "One of them has to come nearer to the other, or the focus racks from one to the other."
	if _, smallest := b.set.lens.stopsAt(b.shot.Focal(t)); needs > smallest {
		detail = fmt.Sprintf("The lens closes to f/%s only. ", plan.Decimal(smallest, 2)) + detail
	}
	tell(finding{Diagnostic: lang.Diagnostic{
		Code: "cannot-hold-both", Severity: lang.Error, Range: g.at,
		Message: fmt.Sprintf("no setting holds %s together at %s: that needs f/%s", g.text, b.set.stopText, plan.Decimal(ceilTo(needs, 10), 1)),
		Detail:  detail,
		Figures: []lang.Figure{figure("needed_f", needs), figure("near_m", b.shot.ToTape(near, t)), figure("far_m", b.shot.ToTape(far, t))},
	}, tries: func() []try {
		return b.stopTry(true, func() bool { return b.shot.Setting(t).Fits(near, far) })
	}})
}
