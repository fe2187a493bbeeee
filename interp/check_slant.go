// slant: a tape read at an angle, where that matters.

package interp

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/lang"
)

func checkSlant(b run) {
	told := map[*subject]bool{}
	for _, p := range b.pulls {
		for _, u := range p.goal.members() {
			if u.SlantDeg == 0 || told[u] || p.goal.offset != 0 {
				continue
			}
			d := b.shot.DistanceAt(u.Subject, p.land)
			if d != u.along.v { // it or the camera has moved since the tape was read
				continue
			}
			x := b.shot.FromTape(d, p.land)
			lo, hi := b.shot.Setting(p.land).Window(x)
			off := float64(u.Slant) - float64(u.along.v)
			if off <= min(x-lo, hi-x) {
				continue
			}
			told[u] = true
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "slant", Severity: lang.Note,
				Message: fmt.Sprintf("the tape to %s reads %s at %s deg, and the focus goes to %s: set the second, not the first", u.Name, metres(float64(u.Slant)), plan.Decimal(u.SlantDeg, 1), metres(u.along.v)),
				Figures: []lang.Figure{figure("slant_m", float64(u.Slant)), figure("distance_m", u.along.v)},
			}})
		}
	}
}
