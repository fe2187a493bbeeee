// no-time-to-see: the focus leaves before the eye has arrived.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/checks/rig"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var noTimeToSee = Check{Codes: []rule.Code{rule.NoTimeToSee}, Run: leavesTooSoon}

func leavesTooSoon(b *Shot) (found []Finding) {
	for i := 0; i+1 < len(b.Pulls); i++ {
		p, next := b.Pulls[i], b.Pulls[i+1]
		if p.Rack.Follow || next.Rack.Follow || next.Rack.StartS < p.Rack.LandS || b.StaysOn(next) || b.StaysOn(p) {
			continue
		}
		if p.Plan.IsRemoved() {
			continue // nobody sees it land
		}
		angle := b.screenAngle(p)
		at := b.Plan.Speed()
		needs, has := viewer.EyeNeeds(angle), at.Screen(next.Rack.StartS-p.Rack.LandS)
		if has >= needs-1e-9 {
			continue
		}
		found = append(found, b.About(next, Finding{Who: p.Rack.Aim.Name(), Diagnostic: lang.Diagnostic{
			Code: "no-time-to-see", Severity: lang.Warning,
			Message: fmt.Sprintf("the focus leaves %s %s%s after it has landed, and the eye needs %s", p.Rack.ToText(), b.Units.Time(has), b.OnScreen(), b.Units.Time(units.Up(needs, 100))),
			Figures: []lang.Figure{check.Figure("has_s", has), check.Figure("needed_s", needs), check.Figure("screen_deg", angle)},
			Related: []lang.Related{{Message: "it lands here", Range: p.Rack.Stmt.Range()}},
		}, Tries: func() []change.Change { return b.waitTry(next, at.Set(needs-has), at.Set(needs)) }}))
	}
	return found
}

// waitTry offers a hold before a rack that starts when it can, and a later
// moment for one that hangs on one.
func (b *Shot) waitTry(p *shot.Pull, missing, needs float64) []change.Change {
	if p.Rack.Anchored {
		return b.LaterTry(p, missing)
	}
	hold := units.Up(needs, 10)
	return []change.Change{check.Edited(change.Edit{Kind: change.Hold, Item: p.Rack.Item + 1, Seconds: hold})}
}

// screenAngle is how far apart on the screen the one left and the one reached
// stand, degrees at the viewer.
func (b *Shot) screenAngle(p *shot.Pull) float64 {
	from, to := b.GoalBefore(p).Subject, p.Rack.Aim.Subject
	if from == nil || to == nil {
		return 0
	}
	if b.Plan.Optics.Rig != nil {
		return rig.ScreenAngle(&b.Shot, p, from, to)
	}
	t := p.Rack.LandS
	v := optics.ImageDistance(b.Plan.FocalTo(p.Plan.ToLens, t), p.Plan.ToLens)
	angle := func(u *stage.Subject) float64 {
		share := b.Plan.SideAt(u.Subject, t) / b.Plan.LensDistanceAt(u.Subject, t) * v / b.Plan.Optics.PictureW()
		onScreen := min(max(share, -0.5), 0.5) * b.Setup.View.Width
		return math.Atan(onScreen/b.Setup.View.Viewer) * 180 / math.Pi
	}
	apart := math.Abs(angle(from) - angle(to))
	if math.IsNaN(apart) { // nearer than the lens can be set, which is told
		return 0
	}
	return apart
}
