// loses-focus-in-zoom, stop-closes-in-zoom: what a zoom does to a pull.

package interp

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/lang"
)

func checkZoom(b run) {
	for _, m := range b.stage.moves {
		if m.kind != "zoom" {
			continue
		}
		if !b.set.lens.keepsFocus {
			b.tell(finding{Diagnostic: lang.Diagnostic{
				Code: "loses-focus-in-zoom", Severity: lang.Warning, Range: m.stmt.Range(), Time: m.start,
				Message: fmt.Sprintf("lens %q loses focus through the zoom: no mark holds while it moves", b.set.lens.name),
				Detail:  "Zoom first and find the marks at the end of the zoom, or take a lens that keeps its focus.",
			}})
		}
		from, _ := b.set.lens.stopsAt(b.shot.Focal(m.start))
		to, _ := b.set.lens.stopsAt(b.shot.Focal(m.end))
		n := b.set.number
		if to <= n*1.03 || from > n*1.03 {
			continue
		}
		b.tell(finding{Diagnostic: lang.Diagnostic{
			Code: "stop-closes-in-zoom", Severity: lang.Warning, Range: m.stmt.Range(), Time: m.start,
			Message: fmt.Sprintf("the stop closes from f/%s to f/%s as lens %q zooms", plan.Decimal(n, 2), plan.Decimal(to, 2), b.set.lens.name),
			Figures: []lang.Figure{figure("f_number", n), figure("widest", to)},
		}, tries: func() []try {
			for _, s := range b.stopsOf() {
				if s >= to/1.03 && s > n {
					return []try{{lang.Cure{Text: "stop f/" + plan.Decimal(s, 2), Value: s, Unit: "f"}, change{Stop: s}}}
				}
			}
			return nil
		}})
	}
}
