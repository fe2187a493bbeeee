// Cameras on the floor of a scene: where one stands, and where it looks.

package stage

import (
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// Camera returns where a place on the floor puts a camera at t: its sensor mark, which
// looks upstage. said reports whether the place says its height.
func (st *Stage) Camera(f *lang.Floor, in names.Reader, t float64) (p plan.Pose, said, ok bool) {
	g, ok := st.floor(f, in, st.at(t))
	p = plan.Pose{X: g.from.x + g.dx, Y: g.from.y + g.dy, Z: st.stands(&g)}
	if said = g.says != ""; !said {
		p.Z += LensHeight
	}
	ok = ok && st.highEnough(f, p.Z, in)
	return p, said, ok
}

// Aim returns the pan and the tilt, in degrees, at which a camera that stands at p looks
// where a plan says at t: at the middle of the outermost angles, or past it.
func (st *Stage) Aim(a *lang.Aim, p plan.Pose, in names.Reader, t float64) (pan, tilt float64, ok bool) {
	if a == nil || len(a.Of) == 0 {
		return 0, 0, false
	}
	ok = true
	first, least, most, low, high := math.NaN(), math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, n := range a.Of {
		_, s, okBase := st.base(n, in, st.at(t))
		if !okBase {
			ok = false
			continue
		}
		if s.level {
			s.focus = p.Z
		}
		if math.Hypot(math.Hypot(s.x-p.X, s.y-p.Y), s.focus-p.Z) < nowhereToGo {
			in.Fail(n.Range(), "out-of-range", "the camera stands there, and cannot look at it", "")
			ok = false
			continue
		}
		x, z := p.Bearing(s.x, s.y, s.focus)
		if math.IsNaN(first) {
			first = x
		}
		x = first + plan.Wrapped(x-first)
		least, most, low, high = min(least, x), max(most, x), min(low, z), max(high, z)
	}
	turn, okTurn := angle(a.Turn, a.Dir == "left", in)
	lift, okLift := angle(a.Lift, a.LiftDir == "down", in)
	if !ok || !okTurn || !okLift {
		return 0, 0, false
	}
	pan, tilt = plan.Wrapped((least+most)/2+turn), (low+high)/2+lift
	if math.Abs(tilt) > steepest+1e-9 {
		in.Fail(a.Range(), "out-of-range", "the camera tilts to 90 deg up or down at most", "")
		return 0, 0, false
	}
	return pan, tilt, true
}

// steepest is how far up or down a camera looks, degrees.
const steepest = 90

// angle reads an angle by which the lens looks past what it is aimed at.
func angle(x *lang.Expr, minus bool, in names.Reader) (deg float64, ok bool) {
	if x == nil {
		return 0, true
	}
	deg, ok = in.Within(x, names.DimAngle, 0, 180, "the lens looks past by 0 to 180 deg")
	if minus {
		deg = -deg
	}
	return deg, ok
}

// Site returns where a subject is at t on the floor of the stage: to the right, forth and
// up, metres. level tells that no line says its height.
func (st *Stage) Site(u *Subject, t float64) (x, y, z, ground float64, level bool) {
	s, _ := st.at(t)(u)
	return s.x, s.y, s.focus, s.ground, s.level
}

// MarkAt returns where a mark is on the floor of the stage, metres.
func (st *Stage) MarkAt(d *names.Decl) (x, y, z float64, ok bool) {
	s, ok := st.mark(d)
	return s.x, s.y, s.ground, ok
}
