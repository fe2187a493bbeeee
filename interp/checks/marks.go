// beyond-marks: outside what is engraved on the lens.

package checks

import (
	"fmt"

	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkBeyondMarks(b Run) {
	law := b.Shot.Optics.Ring
	if law == nil || !b.Shot.Optics.Marked {
		return
	}
	for _, p := range b.Pulls {
		if b.OutOfReach(p) {
			continue // told as inside-closest or macro
		}
		if _, inside := b.Shot.RingDeg(p.ToLens, p.LandS); inside {
			continue
		}
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "beyond-marks", Severity: lang.Note,
			Message: fmt.Sprintf("%s lies outside the marks of lens %q: its angle is drawn out from the last two", p.ToText(), b.Set.Lens.Name),
			Detail:  "Measure a mark nearer to it.",
			Figures: []lang.Figure{shot.Figure("distance_m", float64(p.ToM))},
		}})
	}
}
