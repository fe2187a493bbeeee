// no-time-to-see: the focus leaves before the eye has arrived.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

func checkNoTimeToSee(b run) {
	for i := 0; i+1 < len(b.pulls); i++ {
		p, next := b.pulls[i], b.pulls[i+1]
		if p.follow || next.follow || next.start < p.land || b.staysOn(next) || b.staysOn(p) {
			continue
		}
		angle := b.screenAngle(p)
		needs, has := viewer.EyeNeeds(angle), next.start-p.land
		if has >= needs-1e-9 {
			continue
		}
		b.tellPull(next, finding{Diagnostic: lang.Diagnostic{
			Code: "no-time-to-see", Severity: lang.Warning,
			Message: fmt.Sprintf("the focus leaves %s %s after it has landed, and the eye needs %s", p.to(), seconds(has), seconds(ceilTo(needs, 100))),
			Figures: []lang.Figure{figure("has_s", has), figure("needed_s", needs), figure("screen_deg", angle)},
			Related: []lang.Related{{Message: "it lands here", Range: p.stmt.Range()}},
		}, tries: func() []try { return b.waitTry(next, needs-has, needs) }})
	}
}

// waitTry offers a hold before a rack that starts when it can, and a later
// moment for one that hangs on one.
func (b run) waitTry(p *pull, missing, needs float64) []try {
	if p.anchored {
		return b.laterTry(p, missing)
	}
	hold := ceilTo(needs, 10)
	return []try{{lang.Cure{Text: "hold " + seconds(hold) + " before it", Value: hold, Unit: "s"}, change{Item: p.item + 1, Insert: &lang.Hold{Time: secondsExpr(hold)}}}}
}

// laterTry offers a moment later by what is missing, for a rack that hangs on
// one.
func (b run) laterTry(p *pull, missing float64) []try {
	wait := ceilTo(missing, 10)
	switch {
	case p.on != nil && p.landing == nil && p.on.Offset == nil:
		return []try{{lang.Cure{Text: "on " + b.written(p.on, b.items[p.item].env) + " + " + seconds(wait), Value: wait, Unit: "s"}, change{Item: p.item + 1, Rack: later(wait)}}}
	case p.landing != nil && p.on == nil && p.landing.Offset == nil:
		return []try{{lang.Cure{Text: "landing on " + b.written(p.landing, b.items[p.item].env) + " + " + seconds(wait), Value: wait, Unit: "s"}, change{Item: p.item + 1, Rack: later(wait)}}}
	}
	return nil
}

// screenAngle is how far apart on the screen the one left and the one reached
// stand, degrees at the viewer.
func (b run) screenAngle(p *pull) float64 {
	from, to := b.goalBefore(p).subject, p.goal.subject
	if from == nil || to == nil {
		return 0
	}
	t := p.land
	v := optics.ImageDistance(b.shot.Focal(t), p.ToLens)
	angle := func(u *subject) float64 {
		share := u.Across.At(t) / b.shot.LensDistanceAt(u.Subject, t) * v / b.set.camera.sensorW
		onScreen := min(max(share, -0.5), 0.5) * b.set.view.width
		return math.Atan(onScreen/b.set.view.viewer) * 180 / math.Pi
	}
	apart := math.Abs(angle(from) - angle(to))
	if math.IsNaN(apart) { // nearer than the lens can be set, which is told
		return 0
	}
	return apart
}
