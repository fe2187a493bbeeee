// re-grip: one grip cannot turn that far.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkRegrip(b Run) {
	b.Racks(func(p *clock.Pull) {
		if p.Landed.Regrips == 0 || b.OutOfReach(p) {
			return
		}
		needs := "one re-grip, which costs"
		if p.Landed.Regrips > 1 {
			needs = fmt.Sprintf("%d re-grips, which cost", p.Landed.Regrips)
		}
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "re-grip", Severity: lang.Note,
			Message: fmt.Sprintf("%s at the hand: that needs %s %s s", inwords.Degrees(float64(p.HandDeg)), needs, plan.Decimal(math.Max(p.Landed.Lost, 0.01), 2)),
			Figures: []lang.Figure{shot.Figure("hand_deg", float64(p.HandDeg)), shot.Figure("grip_deg", b.Set.Hand.Grip), shot.Figure("lost_s", p.Landed.Lost)},
		}, Tries: func() []change.Change {
			g := math.Floor(b.Set.Gear*b.Set.Hand.Grip/float64(p.HandDeg)*20) / 20
			if g < 0.05 {
				return nil
			}
			return []change.Change{{Gear: g}}
		}})
	})
}
