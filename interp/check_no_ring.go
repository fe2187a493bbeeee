// no-ring, by-wire: lenses whose focus cannot be pulled by angle.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkNoRing(b run) {
	if len(b.pulls) == 0 {
		return
	}
	first := b.pulls[0]
	switch b.set.lens.ringKind {
	case "none":
		for _, p := range b.pulls {
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "no-ring", Severity: lang.Error,
				Message: fmt.Sprintf("lens %q has no ring: its focus cannot be pulled", b.set.lens.name),
			}})
		}
	case "wire":
		b.tellPull(first, finding{Diagnostic: lang.Diagnostic{
			Code: "by-wire", Severity: lang.Warning,
			Message: fmt.Sprintf("the ring of lens %q works by wire and repeats no mark: no angle and no chance can be told", b.set.lens.name),
			Detail:  "Set the camera to a linear ring if it has one, or take a lens with a ring that has ends.",
		}})
	}
}
