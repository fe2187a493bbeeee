// diffraction: the stop alone blurs more than the screen shows.

package interp

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics"
)

func checkDiffraction(b run) {
	airy := optics.Airy(b.set.number, optics.Green)
	if airy <= b.set.criterion || len(b.pulls) == 0 {
		return
	}
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "diffraction", Severity: lang.Note, Range: b.set.stopAt,
		Message: fmt.Sprintf("at %s diffraction alone makes a disc of %s mm, and %s mm is the limit of sharp", b.set.stopText, plan.Decimal(airy*1000, 4), plan.Decimal(b.set.criterion*1000, 4)),
		Figures: []lang.Figure{figure("airy_mm", airy*1000), figure("criterion_mm", b.set.criterion*1000)},
	}, tries: func() []try {
		return b.stopTry(false, func() bool { return optics.Airy(b.shot.Optics.Number, optics.Green) <= b.set.criterion })
	}})
}
