// before-the-shot: a move of the focus would start before the camera runs.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkBeforeTheShot(b Run) {
	for _, p := range b.Pulls {
		if p.StartS >= -1e-9 || b.inList() {
			continue
		}
		early := -p.StartS
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "before-the-shot", Severity: lang.Error,
			Message: fmt.Sprintf("%s would have to start %s before the shot does", racked(b, p), inwords.Seconds(early)),
			Figures: []lang.Figure{shot.Figure("start_s", p.StartS)},
		}, Tries: func() []shot.Try {
			lead := inwords.CeilTo(early, 10)
			tries := []shot.Try{{Cure: lang.Cure{Text: "pause " + inwords.Seconds(lead) + " before the first line", Value: lead, Unit: "s"}, Change: change.Change{Item: 1, Insert: &lang.Pause{Time: change.SecondsExpr(lead)}}}}
			return append(tries, b.overTry(p, math.Floor(p.LandS*10)/10)...)
		}})
	}
}
