// no-ring, by-wire: lenses whose focus cannot be pulled by angle.

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
