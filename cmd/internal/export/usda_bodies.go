// What can be seen in USD: a body for everybody, a small sphere where the focus is,
// and how near and how far the camera shows anything.
//
// The form's own limits are 1 to 1000000 scene units (clippingRange of UsdGeomCamera in
// the schema of OpenUSD), so that in metres everybody nearer than 1 m would vanish.
//
// A plan says where people stand, and how deep they are for the focus, but not how tall
// they are or what they look like. So bodies are plain: a capsule for a person or for
// something large, a sphere at the height of the lens for something small.

package export

import (
	"math"

	"pullscore/interp/plan"
)

// Sizes in metres that no plan says. Common practice, no source: about a grown person,
// and a lens at the height of their eyes.
const (
	lensHeight = 1.5
	tall       = 1.7
	stout      = 0.22 // radius of a person
	small      = 0.05 // what is less deep is no person
	dot        = 0.03 // radius of the sphere at the focus, and the least of any
)

// Limits of clipping in metres: our own choice.
const (
	clipNear  = 0.1
	clipLeast = 0.01
	clipFar   = 1000.0
)

// clips returns between which distances from the camera, in metres, everybody and the
// focus are.
func (u *usd) clips() (near, far float64) {
	near, far = clipNear, clipFar
	see := func(d float64) {
		if d > 0 && !math.IsInf(d, 1) {
			near, far = min(near, d/2), max(far, 2*d)
		}
	}
	for _, f := range u.frames {
		see(focusFrom(u.shot, f))
		for _, subject := range u.shot.Subjects {
			d := u.shot.LensDistanceAt(subject, f.Time)
			if math.IsNaN(d) || hasPlace(u.shot) { // the lens does not image them, and they are there all the same
				d = u.shot.ViewOf(subject, f.Time).Along
			}
			see(d)
		}
	}
	return max(near, clipLeast), far
}

// focus writes a sphere that rides at the focus on the axis of the lens, hidden where the
// camera shows nothing.
func (u *usd) focus(name string, far float64) {
	u.line(0, "")
	u.line(1, "def Sphere %q", name)
	u.line(1, "{")
	u.line(2, "color3f[] primvars:displayColor = [(1, 0.5, 0)]")
	u.line(2, "double radius = %s", decimal(dot))
	u.value("token", "visibility", func(f Frame) string {
		if focusFrom(u.shot, f) > far {
			return "\"invisible\""
		}
		return "\"inherited\""
	})
	u.place(func(f Frame) point { return u.ahead(f, min(focusFrom(u.shot, f), far)) })
	u.order("\"xformOp:translate\"")
	u.line(1, "}")
}

// ahead returns the point on the axis of the lens that is so many metres away, from the
// floor.
func (u *usd) ahead(f Frame, d float64) point {
	pose, at := u.shot.Stands(f.Time), placeOf(u.shot, f.Time)
	sp, cp := math.Sincos(pose.Pan * math.Pi / 180)
	st, ct := math.Sincos(pose.Tilt * math.Pi / 180)
	return point{at.x + d*sp*ct, at.y + d*cp*ct, at.z + d*st}
}

// subjects writes everybody: a transform on the floor, and a body above it; on the floor
// of a scene a transform where the focus is to be, with a body that has it there.
func (u *usd) subjects(taken names, scene *plan.Scene) {
	for i, subject := range u.shot.Subjects {
		u.named(taken.add(subject.Name), subject.Name)
		u.place(func(f Frame) point { return seen(u.shot, subject, f.Time) })
		u.order("\"xformOp:translate\"")
		u.line(0, "")
		if hasPlace(u.shot) {
			u.staged(u.bodyOf(subject, stagedIn(scene, subject.Name)), grey(i))
		} else {
			u.body(subject, grey(i))
		}
		u.line(1, "}")
	}
}

// named begins a prim by what the plan calls it.
func (u *usd) named(prim, name string) {
	u.line(0, "")
	u.line(1, "def Xform %q (", prim)
	u.line(2, "displayName = %s", quote(name))
	u.line(1, ")")
	u.line(1, "{")
}

// body writes the body of a subject.
func (u *usd) body(subject *plan.Subject, grey float64) {
	deep := float64(subject.Deep)
	radius, up, kind := max(dot, deep/2), lensHeight, "Sphere"
	if !u.isSmall(subject) {
		radius, kind = max(stout, deep/2), "Capsule"
		up = max(tall/2, radius)
	}
	half := up
	if kind == "Sphere" {
		half = radius
	}
	u.solid(kind, radius, half, up, grey)
}

// solid writes a body: a sphere, or a capsule that stands upright and is half as high as
// given, with its middle so far above its prim.
func (u *usd) solid(kind string, radius, half, up, grey float64) {
	u.line(2, "def %s \"Body\"", kind)
	u.line(2, "{")
	if kind == "Capsule" {
		u.line(3, "uniform token axis = \"Y\"")
		u.line(3, "double height = %s", decimal(2*(half-radius))) // without its round ends
	}
	u.line(3, "color3f[] primvars:displayColor = [(%s, %[1]s, %[1]s)]", decimal(grey))
	u.line(3, "double radius = %s", decimal(radius))
	u.line(3, "double3 xformOp:translate = (0, %s, 0)", decimal(up))
	u.line(3, "uniform token[] xformOpOrder = [\"xformOp:translate\"]")
	u.line(2, "}")
}

// isSmall tells whether a subject is a small thing: one that is hardly deep, or that is
// placed by somebody, as a letter in their hand is. Who speaks or moves is a person.
func (u *usd) isSmall(subject *plan.Subject) bool {
	deep := float64(subject.Deep)
	if subject.SwayAssumed || deep >= small {
		return false
	}
	return deep > 0 || subject.Beside != ""
}

// grey returns a grey for the body of a number, far from those before it: steps of the
// golden section.
func grey(i int) float64 {
	const step = 0.618
	_, part := math.Modf(0.5 + step*float64(i))
	return math.Round((0.25+0.6*part)*100) / 100
}
