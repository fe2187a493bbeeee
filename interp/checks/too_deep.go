// too-deep: no setting keeps the whole depth of a subject sharp.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// checkTooDeep tells of a subject once a distance: it comes back as often as
// the focus does.
func checkTooDeep(b Run) {
	type place struct {
		U *stage.Subject
		D float64
	}
	told := map[place]bool{}
	if u := b.Start.Subject; u != nil && !b.Start.Soft() {
		told[place{u, b.Shot.DistanceAt(u.Subject, 0)}] = true
	}
	for _, p := range b.Pulls {
		if p.Aim.Soft() || p.Aim.Split != nil {
			continue
		}
		at := place{p.Aim.Subject, b.Shot.DistanceAt(p.Aim.Subject.Subject, p.LandS)}
		if !told[at] {
			told[at] = true
			b.tooDeep(p.Aim.Subject, p.LandS, func(f shot.Finding) { b.tellPull(p, f) })
		}
	}
	if !b.Start.Soft() && b.Start.Split == nil && b.Start.Subject != nil {
		b.tooDeep(b.Start.Subject, 0, func(f shot.Finding) {
			f.Range = b.Start.At
			b.Tell(f)
		})
	}
}

func (b Run) tooDeep(u *stage.Subject, t float64, tell func(shot.Finding)) {
	if b.Shot.Fits(u.Subject, t) {
		return
	}
	deep, d := float64(u.Deep), b.Shot.DistanceAt(u.Subject, t)
	front, back := b.Shot.FromTape(d-deep/2, t), b.Shot.FromTape(d+deep/2, t)
	set := b.Shot.Setting(t)
	at := b.Shot.LensDistanceAt(u.Subject, t)
	fits, needs := set.Deepest(at), math.Inf(1) // its front is behind the lens
	if front > 0 {
		needs = set.StopToFit(front, back)
	}
	stop := "no stop does"
	if needs < 1000 {
		stop = "f/" + plan.Decimal(inwords.CeilTo(needs, 10), 1) + " would do"
	}
	tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "too-deep", Severity: lang.Warning,
		Message: fmt.Sprintf("%s is %s deep, and at %s only %s of it is sharp: %s", u.Name, inwords.Metres(deep), b.Set.StopText, inwords.Metres(fits), stop),
		Figures: []lang.Figure{shot.Figure("deep_m", deep), shot.Figure("fits_m", fits), shot.Figure("needed_f", needs)},
	}, Tries: func() []change.Change {
		return b.stopTry(true, func() bool { return b.Shot.Fits(u.Subject, t) })
	}})
}
