// loses-focus-in-zoom, stop-closes-in-zoom: what a zoom does to a pull.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkZoom(b Run) {
	for _, m := range b.Stage.Moves {
		if m.Kind != "zoom" {
			continue
		}
		if !b.Set.Lens.KeepsFocus {
			b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "loses-focus-in-zoom", Severity: lang.Warning, Range: m.Stmt.Range(), Time: m.Start,
				Message: fmt.Sprintf("lens %q loses focus through the zoom: no mark holds while it moves", b.Set.Lens.Name),
				Detail:  "Zoom first and find the marks at the end of the zoom, or take a lens that keeps its focus.",
			}})
		}
		from, _ := b.Set.Lens.StopsAt(b.Shot.Focal(m.Start))
		to, _ := b.Set.Lens.StopsAt(b.Shot.Focal(m.End))
		n := b.Set.Number
		if to <= n*1.03 || from > n*1.03 {
			continue
		}
		b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "stop-closes-in-zoom", Severity: lang.Warning, Range: m.Stmt.Range(), Time: m.Start,
			Message: fmt.Sprintf("the stop closes from f/%s to f/%s as lens %q zooms", plan.Decimal(n, 2), plan.Decimal(to, 2), b.Set.Lens.Name),
			Figures: []lang.Figure{shot.Figure("f_number", n), shot.Figure("widest", to)},
		}, Tries: func() []change.Change {
			for _, s := range b.stopsOf() {
				if s >= to/1.03 && s > n {
					return []change.Change{{Stop: s}}
				}
			}
			return nil
		}})
	}
}
