// before-the-shot: a move of the focus would start before the camera runs.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
)

func checkBeforeTheShot(b run) {
	for _, p := range b.pulls {
		if p.start >= -1e-9 || b.inList() {
			continue
		}
		early := -p.start
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "before-the-shot", Severity: lang.Error,
			Message: fmt.Sprintf("%s would have to start %s before the shot does", racked(b, p), seconds(early)),
			Figures: []lang.Figure{figure("start_s", p.start)},
		}, tries: func() []try {
			lead := ceilTo(early, 10)
			tries := []try{{lang.Cure{Text: "pause " + seconds(lead) + " before the first line", Value: lead, Unit: "s"}, change{Item: 1, Insert: &lang.Pause{Time: secondsExpr(lead)}}}}
			return append(tries, b.overTry(p, math.Floor(p.land*10)/10)...)
		}})
	}
}
