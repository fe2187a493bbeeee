// diffraction: the stop alone blurs more than the screen shows.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var diffraction = Check{Codes: []rule.Code{rule.Diffraction}, Run: diffracts}

func diffracts(b *Shot) []Finding {
	airy := optics.Airy(b.Setup.Number, optics.Green)
	if airy <= b.Setup.Criterion || len(b.Pulls) == 0 {
		return nil
	}
	disc, sharp := b.units.Disc(airy), b.units.Disc(b.Setup.Criterion)
	message := fmt.Sprintf("at %s diffraction alone makes a disc of %s, and %s is the limit of sharp", b.Setup.StopText, disc, sharp)
	if disc == sharp {
		message = fmt.Sprintf("at %s diffraction alone makes a disc just over %s, which is the limit of sharp", b.Setup.StopText, sharp)
	}
	return []Finding{{Diagnostic: lang.Diagnostic{
		Code: "diffraction", Severity: lang.Note, Range: b.Setup.StopAt,
		Message: message,
		Figures: []lang.Figure{figure("airy_mm", airy*1000), figure("criterion_mm", b.Setup.Criterion*1000)},
	}, Tries: func() []change.Change {
		return b.stopTry(false, func(at *shot.Built) bool {
			return optics.Airy(at.Plan.Optics.Number, optics.Green) <= b.Setup.Criterion
		})
	}}}
}
