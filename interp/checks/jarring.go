// jarring: shorter than the film wants its racks.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkJarring(b Run) {
	b.Racks(func(p *clock.Pull) {
		t, quickest := p.LandS-p.StartS, b.Set.View.Quickest
		if t >= quickest-1e-9 || t < 0 {
			return
		}
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "jarring", Severity: lang.Warning,
			Message: fmt.Sprintf("%s takes %s, and this film wants %s at least", racked(b, p), inwords.Seconds(t), inwords.Seconds(quickest)),
			Figures: []lang.Figure{shot.Figure("time_s", t), shot.Figure("quickest_s", quickest)},
		}, Tries: func() []change.Change { return b.overTry(p, inwords.CeilTo(quickest, 10)) }})
	})
}
