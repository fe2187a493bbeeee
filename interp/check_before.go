// before-the-shot: a move of the focus would start before the camera runs.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
)

// notBefore reports a line, an action or a cue that would come before the shot
// does; pulls and blocking are checked once all is known.
//
// A line or a cue that a cut has may be heard before its shot is seen.
func (b *builder) notBefore(k int, start float64) {
	if b.timedByCut(k) {
		return
	}
	switch b.items[k].stmt.(type) {
	case *lang.Speech, *lang.Action, *lang.Cue:
		if start < -1e-9 {
			b.fail(b.items[k].stmt.Range(), "before-the-shot", fmt.Sprintf("this would have to start %s before the shot does", seconds(-start)), "")
		}
	}
}

func checkBeforeTheShot(b *builder) {
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
