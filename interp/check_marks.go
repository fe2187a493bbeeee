// beyond-marks: outside what is engraved on the lens.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
	"pullscore/optics"
)

func checkBeyondMarks(b *builder) {
	law := b.shot.Optics.Ring
	if law == nil || !b.shot.Optics.Marked {
		return
	}
	for _, p := range b.pulls {
		if math.IsNaN(p.ToLens) {
			continue
		}
		if _, inside := b.shot.RingDeg(p.ToLens, p.land); inside {
			continue
		}
		if optics.ToSensor(p.ToLens, b.shot.Focal(p.land)) < b.set.lens.closest {
			continue // told as inside-closest
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "beyond-marks", Severity: lang.Note,
			Message: fmt.Sprintf("%s lies outside the marks of lens %q: its angle is drawn out from the last two", p.to(), b.set.lens.name),
			Detail:  "Measure a mark nearer to it.",
			Figures: []lang.Figure{figure("distance_m", float64(p.ToM))},
		}})
	}
}
