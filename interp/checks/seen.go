// not-seen, faint: what the audience sees of a rack.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var seen = Check{Codes: []rule.Code{rule.NotSeen, rule.Faint}, Run: hardlySeen}

func hardlySeen(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		blur := float64(p.Plan.LeftBlur)
		from := float64(p.Plan.SeenFrom)
		if blur > from || math.IsNaN(blur) || p.Plan.Stays {
			return
		}
		d := lang.Diagnostic{
			Code: "not-seen", Severity: lang.Warning,
			Message: fmt.Sprintf("the audience does not see this rack: %s blurs by %s only, and %s is where it shows", b.FromText(p), b.Units.Blur(blur), b.Units.Blur(from)),
			Figures: []lang.Figure{check.Figure("left_blur_arcmin", blur), check.Figure("seen_arcmin", from)},
		}
		if blur > viewer.FaintFrom(b.Plan.Diffraction(p.Plan.ToLens, p.Rack.LandS)) {
			d.Code, d.Severity = "faint", lang.Note
			d.Message = fmt.Sprintf("the audience barely sees this rack: %s blurs by %s, and %s is where it shows", b.FromText(p), b.Units.Blur(blur), b.Units.Blur(from))
		}
		found = append(found, b.About(p, Finding{Who: b.GoalBefore(p).Name(), Diagnostic: d, Tries: func() []change.Change {
			return b.StopTry(false, func(at *shot.Built) bool {
				blur := at.Plan.Blur(p.LeftAt, p.Plan.ToLens, p.Rack.LandS)
				return blur > viewer.SeenFrom(at.Plan.Diffraction(p.Plan.ToLens, p.Rack.LandS))
			})
		}}))
	})
	return found
}
