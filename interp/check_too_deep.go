// too-deep: no setting keeps the whole depth of a subject sharp.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// checkTooDeep tells of a subject once a distance: it comes back as often as
// the focus does.
func checkTooDeep(b run) {
	type place struct {
		u *subject
		d float64
	}
	told := map[place]bool{}
	if u := b.start.subject; u != nil && !b.start.soft() {
		told[place{u, b.shot.DistanceAt(u.Subject, 0)}] = true
	}
	for _, p := range b.pulls {
		if p.goal.soft() || p.goal.split != nil {
			continue
		}
		at := place{p.goal.subject, b.shot.DistanceAt(p.goal.subject.Subject, p.land)}
		if !told[at] {
			told[at] = true
			b.tooDeep(p.goal.subject, p.land, func(f finding) { b.tellPull(p, f) })
		}
	}
	if !b.start.soft() && b.start.split == nil && b.start.subject != nil {
		b.tooDeep(b.start.subject, 0, func(f finding) {
			f.Range = b.start.at
			b.tell(f)
		})
	}
}

func (b run) tooDeep(u *subject, t float64, tell func(finding)) {
	if b.shot.Fits(u.Subject, t) {
		return
	}
	deep, d := float64(u.Deep), b.shot.DistanceAt(u.Subject, t)
	front, back := b.shot.FromTape(d-deep/2, t), b.shot.FromTape(d+deep/2, t)
	set := b.shot.Setting(t)
	at := b.shot.LensDistanceAt(u.Subject, t)
	fits, needs := set.Deepest(at), math.Inf(1) // its front is behind the lens
	if front > 0 {
		needs = set.StopToFit(front, back)
	}
	stop := "no stop does"
	if needs < 1000 {
		stop = "f/" + plan.Decimal(ceilTo(needs, 10), 1) + " would do"
	}
	tell(finding{Diagnostic: lang.Diagnostic{
		Code: "too-deep", Severity: lang.Warning,
		Message: fmt.Sprintf("%s is %s deep, and at %s only %s of it is sharp: %s", u.Name, metres(deep), b.set.stopText, metres(fits), stop),
		Figures: []lang.Figure{figure("deep_m", deep), figure("fits_m", fits), figure("needed_f", needs)},
	}, tries: func() []try {
		return b.stopTry(true, func() bool { return b.shot.Fits(u.Subject, t) })
	}})
}
