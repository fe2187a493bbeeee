// breathes: the image changes its size in a rack.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

const (
	// breathesAt is the change of size from which a rack is said to breathe,
	// percent (common practice, no source).
	breathesAt = 3

	// unitAt is the same where the change is only computed, as for a lens that focuses as
	// a unit: others breathe less.
	unitAt = 6
)

var Breathes = check.Check{Codes: []rule.Code{rule.Breathes}, Run: changesSize}

func changesSize(b *check.Shot) (found []check.Finding) {
	b.Racks(func(p *shot.Pull) {
		least, by, detail := float64(breathesAt), "", ""
		if o := &b.Plan.Optics; math.IsNaN(o.Breathes) && !o.Glass.Breathing.Known() {
			least, by = unitAt, " by the law of unit focusing"
			detail = "If it focuses as a unit: internal focusing breathes less."
		}
		if v := float64(p.Plan.Breathing); v > least && !b.OutOfReach(p) {
			found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "breathes", Severity: lang.Note,
				Message: fmt.Sprintf("the image changes its size by %s in this rack%s", b.Units.Share(v/100, 1), by), Detail: detail,
				Figures: []lang.Figure{check.Figure("breathing_percent", v)},
			}}))
		}
	})
	return found
}
