// slant: a tape read at an angle, where that matters.

package checks

import (
	"fmt"

	"pullscore/interp/inwords"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkSlant(b Run) {
	told := map[*stage.Subject]bool{}
	for _, p := range b.Pulls {
		for _, u := range p.Aim.Members() {
			if u.SlantDeg == 0 || told[u] || p.Aim.Offset != 0 {
				continue
			}
			d := b.Shot.DistanceAt(u.Subject, p.LandS)
			if d != u.FirstAlong.V { // it or the camera has moved since the tape was read
				continue
			}
			x := b.Shot.FromTape(d, p.LandS)
			lo, hi := b.Shot.Setting(p.LandS).Window(x)
			off := float64(u.Slant) - float64(u.FirstAlong.V)
			if off <= min(x-lo, hi-x) {
				continue
			}
			told[u] = true
			b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "slant", Severity: lang.Note,
				Message: fmt.Sprintf("the tape to %s reads %s at %s deg, and the focus goes to %s: set the second, not the first", u.Name, inwords.Metres(float64(u.Slant)), plan.Decimal(u.SlantDeg, 1), inwords.Metres(u.FirstAlong.V)),
				Figures: []lang.Figure{shot.Figure("slant_m", float64(u.Slant)), shot.Figure("distance_m", u.FirstAlong.V)},
			}})
		}
	}
}
