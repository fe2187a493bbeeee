// jarring: shorter than the film wants its racks.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkJarring(b run) {
	b.racks(func(p *pull) {
		t, quickest := p.land-p.start, b.set.view.quickest
		if t >= quickest-1e-9 || t < 0 {
			return
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "jarring", Severity: lang.Warning,
			Message: fmt.Sprintf("%s takes %s, and this film wants %s at least", racked(b, p), seconds(t), seconds(quickest)),
			Figures: []lang.Figure{figure("time_s", t), figure("quickest_s", quickest)},
		}, tries: func() []try { return b.overTry(p, ceilTo(quickest, 10)) }})
	})
}
