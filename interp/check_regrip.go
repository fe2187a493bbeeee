// re-grip: one grip cannot turn that far.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/lang"
)

func checkRegrip(b run) {
	b.racks(func(p *pull) {
		if p.landed.Regrips == 0 || b.outOfReach(p) {
			return
		}
		needs := "one re-grip, which costs"
		if p.landed.Regrips > 1 {
			needs = fmt.Sprintf("%d re-grips, which cost", p.landed.Regrips)
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "re-grip", Severity: lang.Note,
			Message: fmt.Sprintf("%s at the hand: that needs %s %s s", degrees(float64(p.HandDeg)), needs, plan.Decimal(math.Max(p.landed.Lost, 0.01), 2)),
			Figures: []lang.Figure{figure("hand_deg", float64(p.HandDeg)), figure("grip_deg", b.set.hand.Grip), figure("lost_s", p.landed.Lost)},
		}, tries: func() []try {
			g := math.Floor(b.set.gear*b.set.hand.Grip/float64(p.HandDeg)*20) / 20
			if g < 0.05 {
				return nil
			}
			return []try{{lang.Cure{Text: "gear " + plan.Decimal(g, 2), Value: g, Unit: "gear"}, change{Gear: g}}}
		}})
	})
}
