// beyond-marks: outside what is engraved on the lens.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkBeyondMarks(b run) {
	law := b.shot.Optics.Ring
	if law == nil || !b.shot.Optics.Marked {
		return
	}
	for _, p := range b.pulls {
		if b.outOfReach(p) {
			continue // told as inside-closest or macro
		}
		if _, inside := b.shot.RingDeg(p.ToLens, p.land); inside {
			continue
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "beyond-marks", Severity: lang.Note,
			Message: fmt.Sprintf("%s lies outside the marks of lens %q: its angle is drawn out from the last two", p.to(), b.set.lens.name),
			Detail:  "Measure a mark nearer to it.",
			Figures: []lang.Figure{figure("distance_m", float64(p.ToM))},
		}})
	}
}
