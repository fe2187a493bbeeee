// diffraction: the stop alone blurs more than the screen shows.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/optics"
)

func checkDiffraction(b Run) {
	airy := optics.Airy(b.Set.Number, optics.Green)
	if airy <= b.Set.Criterion || len(b.Pulls) == 0 {
		return
	}
	b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "diffraction", Severity: lang.Note, Range: b.Set.StopAt,
		Message: fmt.Sprintf("at %s diffraction alone makes a disc of %s mm, and %s mm is the limit of sharp", b.Set.StopText, plan.Decimal(airy*1000, 4), plan.Decimal(b.Set.Criterion*1000, 4)),
		Figures: []lang.Figure{shot.Figure("airy_mm", airy*1000), shot.Figure("criterion_mm", b.Set.Criterion*1000)},
	}, Tries: func() []change.Change {
		return b.stopTry(false, func() bool { return optics.Airy(b.Shot.Optics.Number, optics.Green) <= b.Set.Criterion })
	}})
}
