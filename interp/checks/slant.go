// slant: a tape read at an angle, where that matters.

package checks

import (
	"fmt"

	"pullscore/interp/checks/check"

	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var slant = Check{Codes: []rule.Code{rule.Slant}, Run: readsAtAnAngle}

func readsAtAnAngle(b *Shot) (found []Finding) {
	if b.Plan.Optics.Rig != nil { // its heading counts, see rig.OffAxis
		return nil
	}
	told := map[*stage.Subject]bool{}
	for _, p := range b.Pulls {
		for _, u := range p.Rack.Aim.Members() {
			if u.SlantDeg == 0 || told[u] || p.Rack.Aim.Offset != 0 {
				continue
			}
			d := b.Plan.DistanceAt(u.Subject, p.Rack.LandS)
			if d != u.FirstAlong.V { // it or the camera has moved since the tape was read
				continue
			}
			x := b.Plan.FromTape(d, p.Rack.LandS)
			lo, hi := b.Plan.Judged(x, p.Rack.LandS).Window(x)
			off := float64(u.Slant) - float64(u.FirstAlong.V)
			if off <= min(x-lo, hi-x) {
				continue
			}
			told[u] = true
			found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
				Code: "slant", Severity: lang.Note,
				Message: fmt.Sprintf("the tape to %s reads %s at %s, and the focus goes to %s: set the second, not the first", u.Name, b.Units.Tape(float64(u.Slant)), b.Units.AngleTo(u.SlantDeg, 1), b.Units.Tape(u.FirstAlong.V)),
				Figures: []lang.Figure{check.Figure("slant_m", float64(u.Slant)), check.Figure("distance_m", u.FirstAlong.V)},
			}}))
		}
	}
	return found
}
