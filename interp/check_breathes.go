// breathes: the image changes its size in the rack.

package interp

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// breathesAt is the change of size from which a rack is said to breathe,
// percent (common practice, no source).
const breathesAt = 3

func checkBreathes(b run) {
	b.racks(func(p *pull) {
		if v := float64(p.Breathing); v > breathesAt && !b.outOfReach(p) {
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "breathes", Severity: lang.Note,
				Message: fmt.Sprintf("the image changes its size by %s %% in this rack", plan.Decimal(v, 1)),
				Figures: []lang.Figure{figure("breathing_percent", v)},
			}})
		}
	})
}
