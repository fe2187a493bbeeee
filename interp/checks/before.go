// before-the-shot: a move of the focus would start before the camera runs.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var beforeTheShot = Check{Codes: []rule.Code{rule.BeforeTheShot}, Run: startsBefore}

func startsBefore(b *Shot) (found []Finding) {
	for _, p := range b.Pulls {
		if p.Rack.StartS >= -1e-9 || b.inList() {
			continue
		}
		early := -p.Rack.StartS
		found = append(found, b.about(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "before-the-shot", Severity: lang.Error,
			Message: fmt.Sprintf("%s would start %s before the shot", b.racked(p), b.units.Time(early)),
			Figures: []lang.Figure{figure("start_s", p.Rack.StartS)},
		}, Tries: func() []change.Change {
			lead := units.Up(early, 10)
			tries := []change.Change{edited(change.Edit{Kind: change.Pause, Item: 1, Seconds: lead})}
			return append(tries, b.overTry(p, math.Floor(p.Rack.LandS*10)/10)...)
		}}))
	}
	return found
}
