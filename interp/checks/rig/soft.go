// What of a loss of focus is the camera's, for goes-soft: a camera that turns takes the
// plane of focus along.

package rig

import (
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/stage"
)

// looks is how often the time in which somebody is soft is looked at.
const looks = 200

// TakesOff returns what has turned the plane of focus off somebody on whom it landed, while
// they are soft from one time to another: the pan, the tilt or both in words, and by how
// many metres at most; "" where less than half of the change is theirs.
func TakesOff(b *check.Shot, u *stage.Subject, landed, from, to float64) (what string, by float64) {
	if !rigged(b) {
		return "", 0
	}
	t, most := from, -1.0
	for k := range looks + 1 {
		at := from + (to-from)*float64(k)/looks
		if off := math.Abs(b.Plan.DistanceAt(u.Subject, at) - b.Plan.DistanceAt(u.Subject, landed)); off > most {
			t, most = at, off
		}
	}
	return turnedOff(b, u, landed, t)
}

// turnedOff is TakesOff at one time.
func turnedOff(b *check.Shot, u *stage.Subject, from, t float64) (what string, by float64) {
	before, at := b.Plan.Optics.Pose(from), b.Plan.Optics.Pose(t)
	along := func(pan, tilt float64) float64 {
		p := at
		p.Pan, p.Tilt = pan, tilt
		return p.View(u.Across.At(t), u.Along.At(t), u.Height(t)).Along
	}
	if u.Deltas != nil { // a tape corrects it
		raw, computed := along, b.Plan.DistanceAt(u.Subject, t)/along(at.Pan, at.Tilt)
		along = func(pan, tilt float64) float64 { return raw(pan, tilt) * computed }
	}
	off := along(at.Pan, at.Tilt) - b.Plan.DistanceAt(u.Subject, from)
	if by = along(at.Pan, at.Tilt) - along(before.Pan, before.Tilt); math.Abs(by) < math.Abs(off)/2 || by == 0 {
		return "", 0
	}
	pan, tilt := math.Abs(along(at.Pan, at.Tilt)-along(before.Pan, at.Tilt)), math.Abs(along(at.Pan, at.Tilt)-along(at.Pan, before.Tilt))
	switch {
	case tilt < 0.1*pan:
		return "the pan takes", by
	case pan < 0.1*tilt:
		return "the tilt takes", by
	}
	return "the pan and the tilt take", by
}
