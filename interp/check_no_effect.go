// no-effect: a hold that is over before the clock gets to it.

package interp

import (
	"fmt"

	"pullscore/lang"
)

// idleHold notes a hold that moves nothing: it counts from the landing, and
// people write it meaning "and so long from here".
func (b *builder) idleHold(s *lang.Hold, landed, long, now float64) {
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "no-effect", Severity: lang.Note, Range: s.Range(), Time: now,
		Message: fmt.Sprintf("this hold changes nothing: it counts from the landing at %s, and the clock stands at %s already", seconds(landed), seconds(now)),
		Detail:  "For a time from here, write a pause.",
		Figures: []lang.Figure{figure("landed_s", landed), figure("hold_s", long), figure("clock_s", now)},
	}})
}
