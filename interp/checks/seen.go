// not-seen, faint: whether the audience sees the rack.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/viewer"
	"pullscore/lang"
)

func checkSeen(b Run) {
	b.Racks(func(p *clock.Pull) {
		blur := float64(p.LeftBlur)
		if blur > viewer.Seen || math.IsNaN(blur) || p.Stays {
			return
		}
		d := lang.Diagnostic{
			Code: "not-seen", Severity: lang.Warning,
			Message: fmt.Sprintf("the audience does not see this rack: %s blurs by %s arcmin only, and %s is where it shows", b.fromText(p), plan.Decimal(blur, 1), plan.Decimal(viewer.Seen, 1)),
			Figures: []lang.Figure{shot.Figure("left_blur_arcmin", blur), shot.Figure("seen_arcmin", viewer.Seen)},
		}
		if blur > viewer.Sharp {
			d.Code, d.Severity = "faint", lang.Note
			d.Message = fmt.Sprintf("the audience barely sees this rack: %s blurs by %s arcmin, and %s is where it shows", b.fromText(p), plan.Decimal(blur, 1), plan.Decimal(viewer.Seen, 1))
		}
		b.tellPull(p, shot.Finding{Diagnostic: d, Tries: func() []change.Change {
			return b.stopTry(false, func() bool { return b.Shot.Blur(p.LeftAt, p.ToLens, p.LandS) > viewer.Seen })
		}})
	})
}
