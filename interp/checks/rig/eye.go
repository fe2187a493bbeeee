// How far the eye goes on the screen while the camera turns, for no-time-to-see.

package rig

import (
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/optics"
)

// ScreenAngle returns how far apart on the screen the one whom a rack leaves is as it
// starts and the one whom it reaches is as it lands, in degrees at the viewer. A turn
// meanwhile takes the picture along, and the eye with it.
func ScreenAngle(b *check.Shot, p *shot.Pull, from, to *stage.Subject) float64 {
	a := onScreen(b, from, p.Plan.FromLens, p.Rack.StartS)
	z := onScreen(b, to, p.Plan.ToLens, p.Rack.LandS)
	viewer := b.Setup.View.Viewer
	dot := a[0]*z[0] + a[1]*z[1] + viewer*viewer
	cross := math.Hypot(math.Hypot(viewer*(a[1]-z[1]), viewer*(a[0]-z[0])), a[0]*z[1]-a[1]*z[0])
	if apart := math.Atan2(cross, dot) * 180 / math.Pi; !math.IsNaN(apart) {
		return apart
	}
	return 0 // nearer than the lens can be set, which is told
}

// onScreen returns where on the screen a subject is at t with the focus at x metres from
// the lens, in metres to the right and up from its middle; at the edge where it is out of
// the picture.
func onScreen(b *check.Shot, u *stage.Subject, x, t float64) [2]float64 {
	v := b.Plan.ViewOf(u.Subject, t)
	magnified := optics.ImageDistance(b.Plan.FocalTo(x, t), x) / b.Plan.FromTape(v.Along, t) * b.Setup.View.Width / b.Plan.Optics.PictureW()
	half := [2]float64{b.Setup.View.Width / 2, b.Setup.View.Width / 2 * b.Plan.Optics.SensorH / b.Plan.Optics.PictureW()}
	return [2]float64{
		min(max(v.Across*magnified, -half[0]), half[0]), min(max(v.Above*magnified, -half[1]), half[1]),
	}
}
