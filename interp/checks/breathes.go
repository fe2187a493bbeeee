// breathes: the image changes its size in the rack.

package checks

import (
	"fmt"

	"pullscore/interp/clock"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

// breathesAt is the change of size from which a rack is said to breathe,
// percent (common practice, no source).
const breathesAt = 3

func checkBreathes(b Run) {
	b.Racks(func(p *clock.Pull) {
		if v := float64(p.Breathing); v > breathesAt && !b.OutOfReach(p) {
			b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "breathes", Severity: lang.Note,
				Message: fmt.Sprintf("the image changes its size by %s %% in this rack", plan.Decimal(v, 1)),
				Figures: []lang.Figure{shot.Figure("breathing_percent", v)},
			}})
		}
	})
}
