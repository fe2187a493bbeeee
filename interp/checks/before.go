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
		}, Tries: func() []change.Change {
			lead := inwords.CeilTo(early, 10)
			tries := []change.Change{edited(change.Edit{Kind: change.Pause, Item: 1, Seconds: lead})}
			return append(tries, b.overTry(p, math.Floor(p.LandS*10)/10)...)
		}})
	}
}
