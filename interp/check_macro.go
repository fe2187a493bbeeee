// macro: nearer than thin-lens figures hold.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
)

func checkMacro(b run) {
	tell := func(g *goal, x, t float64, tell func(finding)) {
		if !g.ok || !math.IsNaN(x) || b.tooNear(g, t) {
			return
		}
		tell(finding{Diagnostic: lang.Diagnostic{
			Code: "macro", Severity: lang.Note, Range: g.at, Time: t,
			Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: its figures are left out", g.text),
			Detail:  "Measure from the lens instead: tape from lens.",
			Cures:   []lang.Cure{{Text: "tape from lens"}},
		}})
	}
	tell(&b.start, b.shot.Optics.Start.Distance, 0, b.tell)
	for _, p := range b.pulls {
		tell(&p.goal, p.ToLens, p.land, func(f finding) { b.tellPull(p, f) })
	}
}
