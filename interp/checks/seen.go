// not-seen, faint, breathes: what the audience sees of a rack.

package checks

import (
	"fmt"
	"math"

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
			Message: fmt.Sprintf("the audience does not see this rack: %s blurs by %s only, and %s is where it shows", b.fromText(p), b.units.Blur(blur), b.units.Blur(from)),
			Figures: []lang.Figure{figure("left_blur_arcmin", blur), figure("seen_arcmin", from)},
		}
		if blur > viewer.FaintFrom(b.Plan.Diffraction(p.Plan.ToLens, p.Rack.LandS)) {
			d.Code, d.Severity = "faint", lang.Note
			d.Message = fmt.Sprintf("the audience barely sees this rack: %s blurs by %s, and %s is where it shows", b.fromText(p), b.units.Blur(blur), b.units.Blur(from))
		}
		found = append(found, b.about(p, Finding{Diagnostic: d, Tries: func() []change.Change {
			return b.stopTry(false, func(at *shot.Built) bool {
				blur := at.Plan.Blur(p.LeftAt, p.Plan.ToLens, p.Rack.LandS)
				return blur > viewer.SeenFrom(at.Plan.Diffraction(p.Plan.ToLens, p.Rack.LandS))
			})
		}}))
	})
	return found
}

// breathesAt is the change of size from which a rack is said to breathe,
// percent (common practice, no source).
const breathesAt = 3

var breathes = Check{Codes: []rule.Code{rule.Breathes}, Run: changesSize}

func changesSize(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		if v := float64(p.Plan.Breathing); v > breathesAt && !b.OutOfReach(p) {
			found = append(found, b.about(p, Finding{Diagnostic: lang.Diagnostic{
				Code: "breathes", Severity: lang.Note,
				Message: fmt.Sprintf("the image changes its size by %s in this rack", b.units.Share(v/100, 1)),
				Figures: []lang.Figure{figure("breathing_percent", v)},
			}}))
		}
	})
	return found
}
