// no-ring, by-wire, beyond-marks: what the ring of the lens cannot do.

package checks

import (
	"fmt"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkNoRing(b Run) {
	if len(b.Pulls) == 0 {
		return
	}
	first := b.Pulls[0]
	switch b.Set.Lens.RingKind {
	case "none":
		for _, p := range b.Pulls {
			b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "no-ring", Severity: lang.Error,
				Message: fmt.Sprintf("lens %q has no ring: its focus cannot be pulled", b.Set.Lens.Name),
			}})
		}
	case "wire":
		b.tellPull(first, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "by-wire", Severity: lang.Warning,
			Message: fmt.Sprintf("the ring of lens %q works by wire and repeats no mark: no angle and no chance can be told", b.Set.Lens.Name),
			Detail:  "Set the camera to a linear ring if it has one, or take a lens with a ring that has ends.",
		}})
	}
}

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
