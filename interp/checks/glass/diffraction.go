// diffraction: the stop alone blurs more than the screen shows.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var Diffraction = check.Check{Codes: []rule.Code{rule.Diffraction}, Run: diffracts}

func diffracts(b *check.Shot) []check.Finding {
	if len(b.Pulls) == 0 && len(b.Rests) == 0 {
		return nil
	}
	disc := widestDisc(b)
	if disc <= b.Setup.Criterion {
		return nil
	}
	blur, sharp := b.Units.Disc(disc), b.Units.Disc(b.Setup.Criterion)
	message := fmt.Sprintf("at %s diffraction alone blurs by %s, and %s is the limit of sharp: nothing is sharp", b.Setup.StopText, blur, sharp)
	if blur == sharp {
		message = fmt.Sprintf("at %s diffraction alone blurs by just over %s, which is the limit of sharp: nothing is sharp", b.Setup.StopText, sharp)
	}
	return []check.Finding{{Diagnostic: lang.Diagnostic{
		Code: "diffraction", Severity: lang.Note, Range: b.Setup.StopAt,
		Message: message,
		Figures: []lang.Figure{
			check.Figure("airy_mm", optics.Airy(b.Setup.Number, optics.Green)*1000), check.Figure("diffraction_mm", disc*1000),
			check.Figure("criterion_mm", b.Setup.Criterion*1000),
		},
	}, Tries: func() []change.Change {
		return b.StopTry(false, func(at *shot.Built) bool { return widestDisc(check.Of(at)) <= b.Setup.Criterion })
	}}}
}

// widestDisc returns the disc of diffraction alone, metres, where it is widest:
// with the focus at the nearest place that it rests on.
func widestDisc(b *check.Shot) float64 {
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
