// The focus curve as a camera in USD ascii (Universal Scene Description), for
// previsualisation: the camera begins above the origin and looks along -Z, metres are scene
// units, and everybody of the plan is a body on the floor (usda_bodies.go).
//
// Y is up, so (x, y, z) of the floor is (x, z, -y) here, and z counts from the height of
// the lens, which no plan says: it is assumed. The camera pans about Y and then
// tilts about its own X. Both turn to the left and up where they are positive.
//
// The camera of the form is a pinhole, and a lens is none: its front principal plane is
// ahead of the sensor mark, by another length for every distance. So everybody is moved
// along the axis of the lens until they are as far from the mark as they are from the
// lens. The pinhole then sees them where the lens does, and focusDistance is the distance
// at which they are sharp. While the camera turns, that moves who stands still by as much
// as the lens is ahead of the mark, a few centimetres. Whom the lens cannot image at all,
// such as those behind it, are at their place on the floor.

package export

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/lang/timecode"
)

// firstFrame is the time code of a shot's first frame: common practice, no
// source.
const firstFrame = 1001

// farthest stands for infinity, which not every reader takes: metres.
const farthest = 1e6

// tenths turns millimetres into tenths of a scene unit of one metre, which is
// what focal lengths and apertures of a USD camera are in.
const tenths = 10.0 / 1000

// USD writes a camera that racks.
func USD(w io.Writer, p *plan.Plan, s *plan.Shot) error {
	return usdOf(w, sceneOf(p, s), s, Frames(s))
}

// usdInCut is USD of what the cut shows.
func usdInCut(w io.Writer, p *plan.Plan, s *plan.Shot) error {
	return usdOf(w, sceneOf(p, s), s, FramesInCut(s))
}

// usdOf writes a shot; scene is that on whose floor its camera has a place, nil for none.
func usdOf(w io.Writer, scene *plan.Scene, s *plan.Shot, frames []Frame) error {
	u := usd{out: bufio.NewWriter(w), shot: s, frames: frames, first: firstFrame}
	doc := fmt.Sprintf("%s, shot %s. ", s.PlanName, s.ID)
	if hasPlace(s) {
		doc += onItsFloor(scene, s)
	} else {
		doc += inItsShot(s)
	}
	u.head("Shot", doc, s.Rate, len(frames))
	near, far := u.clips()
	u.camera("Camera", near, far)
	u.focus("Focus", far)
	taken := names{"camera": true, "focus": true}
	u.subjects(taken, scene)
	u.marks(taken, scene)
	u.line(0, "}")
	return u.out.Flush()
}

// inItsShot says what the figures of a shot are of which no floor is known.
func inItsShot(s *plan.Shot) string {
	doc := fmt.Sprintf("focusDistance is from the lens, planned and not measured; %s m stands for infinity.", decimal(farthest))
	doc += fmt.Sprintf(" No plan says heights: the camera and things are assumed %s m above the floor, and people %s m tall.", decimal(lensHeight), decimal(tall))
	if text := moments.Provenance(s); text != "" {
		doc += " " + text + "."
	}
	if s.Optics.Rig != nil {
		doc += " Everybody is where a pinhole at the sensor mark sees them as the lens does: moved along its axis to their distance from the lens."
	}
	return doc
}

// head writes what a reader has to know of the whole, and begins the first prim.
func (u *usd) head(name, doc string, rate timecode.Rate, frames int) {
	num, den := rate.Exact()
	fps := decimal(float64(num) / float64(den))
	u.line(0, "#usda 1.0")
	u.line(0, "(")
	u.line(1, "defaultPrim = %q", name)
	u.line(1, "doc = %s", quote(doc))
	u.line(1, "endTimeCode = %d", firstFrame+max(0, frames-1))
	u.line(1, "framesPerSecond = %s", fps)
	u.line(1, "metersPerUnit = 1")
	u.line(1, "startTimeCode = %d", firstFrame)
	u.line(1, "timeCodesPerSecond = %s", fps)
	u.line(1, "upAxis = \"Y\"")
	u.line(0, ")\n")
	u.line(0, "def Xform %q", name)
	u.line(0, "{")
}

// usd writes; bufio keeps the first error for Flush.
type usd struct {
	out    *bufio.Writer
	shot   *plan.Shot
	frames []Frame
	first  int // the time code of the first of them
}

func (u *usd) line(indent int, format string, args ...any) {
	u.out.WriteString(strings.Repeat("    ", indent))
	fmt.Fprintf(u.out, format, args...)
	u.out.WriteByte('\n')
}

// camera writes the camera, with the distances between which it shows anything.
func (u *usd) camera(name string, near, far float64) {
	o, s := &u.shot.Optics, u.shot
	u.line(1, "def Camera %q", name)
	u.line(1, "{")
	u.line(2, "float2 clippingRange = (%s, %s)", decimal(near), decimal(far))
	u.value("float", "focalLength", func(f Frame) string { return decimal(f.Focal * 1000 * tenths) })
	u.value("float", "focusDistance", func(f Frame) string { return decimal(min(focusFrom(s, f), farthest)) })
	u.value("float", "fStop", func(f Frame) string { return decimal(f.Stop) })
	u.line(2, "float horizontalAperture = %s", decimal(o.PictureW()*1000*tenths))
	u.line(2, "token projection = \"perspective\"")
	u.line(2, "float verticalAperture = %s", decimal(o.SensorH*1000*tenths))
	u.place(func(f Frame) point { return placeOf(s, f.Time) })
	order := "\"xformOp:translate\""
	if o.Turns() || hasPlace(s) {
		u.value("double", "xformOp:rotateY", func(f Frame) string { return decimal(-s.Stands(f.Time).Pan) })
		u.value("double", "xformOp:rotateX", func(f Frame) string { return decimal(s.Stands(f.Time).Tilt) })
		order += ", \"xformOp:rotateY\", \"xformOp:rotateX\""
	}
	u.order(order)
	u.line(1, "}")
}

// placeOf returns where the camera is at t. Without a floor of a scene, its height is
// assumed.
func placeOf(s *plan.Shot, t float64) point {
	p := s.Stands(t)
	if !hasPlace(s) {
		p.Z += lensHeight
	}
	return point{p.X, p.Y, p.Z}
}

// focusFrom returns how far the focus is from what the pinhole sees: from the lens, as
// everybody is moved to their distance from it; on the floor of a scene, where nobody is
// moved, from where the camera stands.
func focusFrom(s *plan.Shot, f Frame) float64 {
	if hasPlace(s) {
		return s.ToTape(f.Lens, f.Time)
	}
	return f.Lens
}

// A point is a place in metres: on the floor to the right and forth, and up from the
// height of the lens, or from the floor of a scene.
type point struct{ x, y, z float64 }

// seen returns the point at which a pinhole at the sensor mark sees a subject as the lens
// does at t; on the floor of a scene, where the subject is.
func seen(s *plan.Shot, u *plan.Subject, t float64) point {
	if hasPlace(s) {
		x, y, z := s.OnFloor(u, t)
		return point{x, y, z}
	}
	o, lens := &s.Optics, s.LensDistanceAt(u, t)
	at := point{x: u.Across.At(t), y: u.Along.At(t)}
	switch {
	case math.IsNaN(lens):
		return at
	case o.Rig == nil:
		return point{x: at.x, y: o.Camera.At(t) + lens}
	}
	pose := o.Pose(t)
	ahead := lens - s.ViewOf(u, t).Along
	sp, cp := math.Sincos(pose.Pan * math.Pi / 180)
	st, ct := math.Sincos(pose.Tilt * math.Pi / 180)
	return point{at.x + ahead*sp*ct, at.y + ahead*cp*ct, at.z + ahead*st}
}

// place writes where a thing is, at a height from the floor.
func (u *usd) place(at func(Frame) point) {
	u.value("double3", "xformOp:translate", func(f Frame) string { return triple(at(f)) })
}

// triple writes a point with Y up.
func triple(p point) string {
	return fmt.Sprintf("(%s, %s, %s)", decimal(p.x), decimal(p.z), decimal(-min(p.y, farthest)))
}

// order writes in which order a thing is placed and turned.
func (u *usd) order(ops string) { u.line(2, "uniform token[] xformOpOrder = [%s]", ops) }

// value writes an attribute: one value where it never changes, else samples.
// Readers go in a straight line from one sample to the next, so of a stretch
// that stays the same the first and the last are enough.
func (u *usd) value(kind, name string, of func(Frame) string) {
	values := make([]string, len(u.frames))
	same := true
	for i, f := range u.frames {
		values[i] = of(f)
		same = same && values[i] == values[0]
	}
	if len(values) == 0 {
		return
	}
	if same {
		u.line(2, "%s %s = %s", kind, name, values[0])
		return
	}
	u.line(2, "%s %s.timeSamples = {", kind, name)
	for i, v := range values {
		if i > 0 && i < len(values)-1 && v == values[i-1] && v == values[i+1] {
			continue
		}
		u.line(3, "%d: %s,", u.first+i, v)
	}
	u.line(2, "}")
}

// quote writes a string of USD: like one of C, without line ends and control
// characters.
func quote(s string) string {
	clean := strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(clean) + `"`
}
