// breathes: the image changes its size in a rack.

package glass

import (
	"fmt"

	"pullscore/interp/checks/check"

	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// breathesAt is the change of size from which a rack is said to breathe,
// percent (common practice, no source).
const breathesAt = 3

var Breathes = check.Check{Codes: []rule.Code{rule.Breathes}, Run: changesSize}

func changesSize(b *check.Shot) (found []check.Finding) {
	b.Racks(func(p *shot.Pull) {
		if v := float64(p.Plan.Breathing); v > breathesAt && !b.OutOfReach(p) {
			found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "breathes", Severity: lang.Note,
				Message: fmt.Sprintf("the image changes its size by %s in this rack", b.Units.Share(v/100, 1)),
				Figures: []lang.Figure{check.Figure("breathing_percent", v)},
			}}))
		}
	})
	return found
}
