// loses-focus-in-zoom, stop-closes-in-zoom: what a zoom does to a pull.

package glass

import (
	"fmt"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Zoom = check.Check{Codes: []rule.Code{rule.LosesFocusInZoom, rule.StopClosesInZoom}, Run: zooms}

func zooms(b *check.Shot) (found []check.Finding) {
	for _, m := range b.Stage.Moves {
		if m.Kind != "zoom" {
			continue
		}
		if !b.Setup.Lens.KeepsFocus {
			found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "loses-focus-in-zoom", Severity: lang.Warning, Range: m.Stmt.Range(), Time: m.Start,
				Message: fmt.Sprintf("lens %q loses focus through the zoom: no mark holds while it moves", b.Setup.Lens.Name),
				Detail:  "Zoom first and find the marks at the end of the zoom, or take a lens that keeps its focus.",
			}})
		}
		from, _ := b.Setup.Lens.StopsAt(b.Plan.Focal(m.Start))
		to, _ := b.Setup.Lens.StopsAt(b.Plan.Focal(m.End))
		n := b.Setup.Number
		if to <= n*1.03 || from > n*1.03 {
			continue
		}
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "stop-closes-in-zoom", Severity: lang.Warning, Range: m.Stmt.Range(), Time: m.Start,
			Message: fmt.Sprintf("the stop closes from %s to %s as lens %q zooms", b.StopText(n, units.Near), b.StopText(to, units.Near), b.Setup.Lens.Name),
			Figures: []lang.Figure{check.Figure("f_number", n), check.Figure("widest", to)},
		}, Tries: func() []change.Change {
			for _, s := range b.StopsOf() {
				if s.Number >= to/1.03 && s.Number > n {
					return []change.Change{s.Change}
				}
			}
			return nil
		}})
	}
	return found
}
