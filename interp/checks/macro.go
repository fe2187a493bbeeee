// macro: nearer than thin-lens figures hold.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkMacro(b Run) {
	tell := func(g *stage.Goal, x, t float64, tell func(shot.Finding)) {
		if !g.Ok || !math.IsNaN(x) || b.TooNear(g, t) {
			return
		}
		tell(shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "macro", Severity: lang.Note, Range: g.At, Time: t,
			Message: fmt.Sprintf("%s is nearer than four focal lengths from the sensor: its figures are left out", g.Text),
			Detail:  "Measure from the lens instead: tape from lens.",
			Cures:   []lang.Cure{{Text: "tape from lens"}},
		}})
	}
	tell(&b.Start, b.Shot.Optics.Start.Distance, 0, b.Tell)
	for _, p := range b.Pulls {
		tell(&p.Aim, p.ToLens, p.LandS, func(f shot.Finding) { b.tellPull(p, f) })
	}
}
