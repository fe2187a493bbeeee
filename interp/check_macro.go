// macro: nearer than thin-lens figures hold.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkMacro(b *builder) {
	for _, p := range b.pulls {
		if b.macroAllowed(p.ToLens) {
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "macro", Severity: lang.Note,
				Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: the figures of this rack are left out", p.to()),
				Detail:  "Measure from the lens instead: tape from lens.",
				Cures:   []lang.Cure{{Text: "tape from lens"}},
			}})
		}
	}
}
