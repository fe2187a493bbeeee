// diffraction: the stop alone blurs more than the screen shows.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var diffraction = Check{Codes: []rule.Code{rule.Diffraction}, Run: diffracts}

func diffracts(b *Shot) []Finding {
	if len(b.Pulls) == 0 && len(b.Rests) == 0 {
		return nil
	}
	disc := b.diffraction()
	if disc <= b.Setup.Criterion {
		return nil
	}
	blur, sharp := b.units.Disc(disc), b.units.Disc(b.Setup.Criterion)
	message := fmt.Sprintf("at %s diffraction alone blurs by %s, and %s is the limit of sharp: nothing is sharp", b.Setup.StopText, blur, sharp)
	if blur == sharp {
		message = fmt.Sprintf("at %s diffraction alone blurs by just over %s, which is the limit of sharp: nothing is sharp", b.Setup.StopText, sharp)
	}
	return []Finding{{Diagnostic: lang.Diagnostic{
		Code: "diffraction", Severity: lang.Note, Range: b.Setup.StopAt,
		Message: message,
		Figures: []lang.Figure{
			figure("airy_mm", optics.Airy(b.Setup.Number, optics.Green)*1000), figure("diffraction_mm", disc*1000),
			figure("criterion_mm", b.Setup.Criterion*1000),
		},
	}, Tries: func() []change.Change {
		return b.stopTry(false, func(at *shot.Built) bool { return Of(at).diffraction() <= b.Setup.Criterion })
	}}}
}

// diffraction returns the disc of diffraction alone, metres, where it is widest:
// with the focus at the nearest place that it rests on.
func (b *Shot) diffraction() float64 {
	nearest := b.Plan.Optics.Start.Distance
	widest := b.Plan.Setting(0).Diffraction(nearest)
	if math.IsInf(widest, 0) || math.IsNaN(widest) { // inside the closest, which is told
		widest = b.Plan.Setting(0).Diffraction(math.Inf(1))
	}
	for _, p := range b.Pulls {
		if d := b.Plan.Setting(p.Rack.LandS).Diffraction(p.Plan.ToLens); d > widest && !math.IsInf(d, 1) {
			widest = d
		}
	}
	return widest
}
