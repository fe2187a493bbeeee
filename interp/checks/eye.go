// no-time-to-see: the focus leaves before the eye has arrived.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/viewer"
	"pullscore/lang"
	"pullscore/optics"
)

func checkNoTimeToSee(b Run) {
	for i := 0; i+1 < len(b.Pulls); i++ {
		p, next := b.Pulls[i], b.Pulls[i+1]
		if p.Follow || next.Follow || next.StartS < p.LandS || b.StaysOn(next) || b.StaysOn(p) {
			continue
		}
		angle := b.screenAngle(p)
		needs, has := viewer.EyeNeeds(angle), next.StartS-p.LandS
		if has >= needs-1e-9 {
			continue
		}
		b.tellPull(next, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "no-time-to-see", Severity: lang.Warning,
			Message: fmt.Sprintf("the focus leaves %s %s after it has landed, and the eye needs %s", p.ToText(), inwords.Seconds(has), inwords.Seconds(inwords.CeilTo(needs, 100))),
			Figures: []lang.Figure{shot.Figure("has_s", has), shot.Figure("needed_s", needs), shot.Figure("screen_deg", angle)},
			Related: []lang.Related{{Message: "it lands here", Range: p.Stmt.Range()}},
		}, Tries: func() []change.Change { return b.waitTry(next, needs-has, needs) }})
	}
}

// waitTry offers a hold before a rack that starts when it can, and a later
// moment for one that hangs on one.
func (b Run) waitTry(p *clock.Pull, missing, needs float64) []change.Change {
	if p.Anchored {
		return b.laterTry(p, missing)
	}
	hold := inwords.CeilTo(needs, 10)
	return []change.Change{edited(change.Edit{Kind: change.Hold, Item: p.Item + 1, Seconds: hold})}
}

// laterTry offers a moment later by what is missing, for a rack that hangs on
// one.
func (b Run) laterTry(p *clock.Pull, missing float64) []change.Change {
	wait := inwords.CeilTo(missing, 10)
	switch {
	case p.On != nil && p.Landing == nil && p.On.Offset == nil:
		return []change.Change{edited(change.Edit{Kind: change.Later, Item: p.Item + 1, Seconds: wait, Text: "on " + b.Written(p.On, b.Items[p.Item].Env)})}
	case p.Landing != nil && p.On == nil && p.Landing.Offset == nil:
		return []change.Change{edited(change.Edit{Kind: change.Later, Item: p.Item + 1, Seconds: wait, Text: "landing on " + b.Written(p.Landing, b.Items[p.Item].Env)})}
	}
	return nil
}

// screenAngle is how far apart on the screen the one left and the one reached
// stand, degrees at the viewer.
func (b Run) screenAngle(p *clock.Pull) float64 {
	from, to := b.GoalBefore(p).Subject, p.Aim.Subject
	if from == nil || to == nil {
		return 0
	}
	t := p.LandS
	v := optics.ImageDistance(b.Shot.Focal(t), p.ToLens)
	angle := func(u *stage.Subject) float64 {
		share := u.Across.At(t) / b.Shot.LensDistanceAt(u.Subject, t) * v / b.Set.Camera.SensorW
		onScreen := min(max(share, -0.5), 0.5) * b.Set.View.Width
		return math.Atan(onScreen/b.Set.View.Viewer) * 180 / math.Pi
	}
	apart := math.Abs(angle(from) - angle(to))
	if math.IsNaN(apart) { // nearer than the lens can be set, which is told
		return 0
	}
	return apart
}
