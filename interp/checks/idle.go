// no-effect: a hold that moves nothing.

package checks

import (
	"fmt"

	"pullscore/interp/checks/check"

	"pullscore/lang"
	"pullscore/lang/rule"
)

var noEffect = Check{Codes: []rule.Code{rule.NoEffect}, Run: holdsNothing}

// holdsNothing tells of holds that move nothing: they count from the landing, and
// people write them meaning "and so long from here".
func holdsNothing(b *Shot) (found []Finding) {
	for _, h := range b.Clock.Idle {
		found = append(found, Finding{Diagnostic: lang.Diagnostic{
			Code: "no-effect", Severity: lang.Note, Range: h.Stmt.Range(), Time: h.Now,
			Message: fmt.Sprintf("this hold has no effect: it counts from the landing at %s, and the clock is already at %s", b.Units.Time(h.Landed), b.Units.Time(h.Now)),
			Detail:  "For a time from here, write a pause.",
			Figures: []lang.Figure{check.Figure("landed_s", h.Landed), check.Figure("hold_s", h.Long), check.Figure("clock_s", h.Now)},
		}})
	}
	return found
}
