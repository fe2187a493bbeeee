// slant, where the camera turns or leaves its axis: the tape to somebody beside the axis
// is longer than the focus distance.

package rig

import (
	"fmt"

	"pullscore/interp/checks/check"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var OffAxis = check.Check{Codes: []rule.Code{rule.Slant}, Run: besideTheAxis}

func besideTheAxis(b *check.Shot) (found []check.Finding) {
	if !rigged(b) {
		return nil
	}
	told := map[*stage.Subject]bool{}
	for _, p := range b.Pulls {
		t := p.Rack.LandS
		for _, u := range p.Rack.Aim.Members() {
			if told[u] || p.Rack.Aim.Offset != 0 {
				continue
			}
			v := b.Plan.ViewOf(u.Subject, t)
			x := b.Plan.FromTape(v.Along, t)
			if b.Plan.Place(v, x, t) == plan.OutOfFrame { // told as out-of-frame
				continue
			}
			lo, hi := b.Plan.Judged(x, t).Window(x)
			if !(v.Tape()-v.Along > min(x-lo, hi-x)) {
				continue
			}
			told[u] = true
			found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "slant", Severity: lang.Note, Time: t,
				Message: fmt.Sprintf("the tape to %s reads %s at %s, and the focus goes to %s: set the second, not the first",
					u.Name, b.Units.Tape(v.Tape()), b.Units.AngleTo(v.OffAxis(), 1), b.Units.Tape(v.Along)),
				Figures: []lang.Figure{check.Figure("slant_m", v.Tape()), check.Figure("distance_m", v.Along)},
			}}))
		}
	}
	return found
}
