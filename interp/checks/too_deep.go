// too-deep: no setting keeps the whole depth of a subject sharp.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// checkTooDeep tells of a subject once a distance: it comes back as often as
// the focus does.
var tooDeep = Check{Codes: []rule.Code{rule.TooDeep}, Run: deeperThanSharp}

func deeperThanSharp(b *Shot) (found []Finding) {
	type place struct {
		U *stage.Subject
		D float64
	}
	told := map[place]bool{}
	if u := b.Start.Subject; u != nil && !b.Start.Soft() {
		told[place{u, b.Plan.DistanceAt(u.Subject, 0)}] = true
	}
	for _, p := range b.Pulls {
		if p.Rack.Aim.Soft() || p.Rack.Aim.Split != nil {
			continue
		}
		at := place{p.Rack.Aim.Subject, b.Plan.DistanceAt(p.Rack.Aim.Subject.Subject, p.Rack.LandS)}
		if !told[at] {
			told[at] = true
			if f, ok := b.deeper(p.Rack.Aim.Subject, p.Rack.LandS); ok {
				found = append(found, b.About(p, f))
			}
		}
	}
	if !b.Start.Soft() && b.Start.Split == nil && b.Start.Subject != nil {
		if f, ok := b.deeper(b.Start.Subject, 0); ok {
			f.Range = b.Start.At
			found = append(found, f)
		}
	}
	return found
}

func (b *Shot) deeper(u *stage.Subject, t float64) (f Finding, ok bool) {
	if b.Plan.Fits(u.Subject, t) {
		return f, false
	}
	deep, d := float64(u.Deep), b.Plan.DistanceAt(u.Subject, t)
	front, back := b.Plan.FromTape(d-deep/2, t), b.Plan.FromTape(d+deep/2, t)
	at := b.Plan.LensDistanceAt(u.Subject, t)
	set := b.Plan.Setting(t)
	fits, needs := set.Judged(at).Deepest(at), math.Inf(1) // its front is behind the lens
	if front > 0 {
		needs = set.StopToFitJudged(front, back)
	}
	stop := "no stop does"
	if mark := b.FitsFrom(u, t); mark > 0 {
		stop = b.Units.Stop(mark, b.Setup.Spoken.T, units.Exact) + " would do"
	}
	return Finding{Who: u.Name, Diagnostic: lang.Diagnostic{
		Code: "too-deep", Severity: lang.Warning,
		Message: fmt.Sprintf("%s is %s deep, and at %s only %s of it is sharp: %s", u.Name, b.Units.Gap(deep), b.Setup.StopText, b.Units.Gap(fits), stop),
		Figures: []lang.Figure{check.Figure("deep_m", deep), check.Figure("fits_m", fits), check.Figure("needed_f", needs)},
	}, Tries: func() []change.Change {
		return b.StopTry(true, func(at *shot.Built) bool { return at.Plan.Fits(u.Subject, t) })
	}}, true
}
