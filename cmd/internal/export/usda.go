// The focus curve as a camera in USD ascii (Universal Scene Description), for
// previsualisation: the camera looks along -Z from the origin, metres are scene
// units, and everybody of the plan is a transform at their place.

package export

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
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
func USD(w io.Writer, s *plan.Shot) error {
	u := usd{out: bufio.NewWriter(w), shot: s, frames: Frames(s)}
	num, den := s.Rate.Exact()
	fps := decimal(float64(num) / float64(den))
	u.line(0, "#usda 1.0")
	u.line(0, "(")
	u.line(1, "defaultPrim = \"Shot\"")
	doc := fmt.Sprintf("%s, shot %s. focusDistance is from the lens, planned and not measured; %s m stands for infinity.", s.PlanName, s.ID, decimal(farthest))
	if text := moments.Provenance(s); text != "" {
		doc += " " + text + "."
	}
	u.line(1, "doc = %s", quote(doc))
	u.line(1, "endTimeCode = %d", firstFrame+max(0, len(u.frames)-1))
	u.line(1, "framesPerSecond = %s", fps)
	u.line(1, "metersPerUnit = 1")
	u.line(1, "startTimeCode = %d", firstFrame)
	u.line(1, "timeCodesPerSecond = %s", fps)
	u.line(1, "upAxis = \"Y\"")
	u.line(0, ")\n")
	u.line(0, "def Xform \"Shot\"")
	u.line(0, "{")
	u.camera()
	u.subjects()
	u.line(0, "}")
	return u.out.Flush()
}

// usd writes; bufio keeps the first error for Flush.
type usd struct {
	out    *bufio.Writer
	shot   *plan.Shot
	frames []Frame
}

func (u *usd) line(indent int, format string, args ...any) {
	u.out.WriteString(strings.Repeat("    ", indent))
	fmt.Fprintf(u.out, format, args...)
	u.out.WriteByte('\n')
}

func (u *usd) camera() {
	o := u.shot.Optics
	u.line(1, "def Camera \"Camera\"")
	u.line(1, "{")
	u.value("float", "focalLength", func(f Frame) string { return decimal(f.Focal * 1000 * tenths) })
	u.value("float", "focusDistance", func(f Frame) string { return decimal(min(f.Lens, farthest)) })
	u.value("float", "fStop", func(f Frame) string { return decimal(f.Stop) })
	u.line(2, "float horizontalAperture = %s", decimal(o.PictureW()*1000*tenths))
	u.line(2, "token projection = \"perspective\"")
	u.line(2, "float verticalAperture = %s", decimal(o.SensorH*1000*tenths))
	u.place(func(f Frame) (side, along float64) { return 0, o.Camera.At(f.Time) })
	u.line(1, "}")
}

func (u *usd) subjects() {
	o, taken := u.shot.Optics, map[string]bool{"Camera": true}
	for _, subject := range u.shot.Subjects {
		name := identifier(subject.Name, taken)
		u.line(0, "")
		u.line(1, "def Xform %q (", name)
		u.line(2, "displayName = %s", quote(subject.Name))
		u.line(1, ")")
		u.line(1, "{")
		u.place(func(f Frame) (side, along float64) {
			// The camera of the form is a pinhole, so distances are the lens's.
			return subject.Across.At(f.Time), o.Camera.At(f.Time) + u.shot.LensDistanceAt(subject, f.Time)
		})
		u.line(1, "}")
	}
}

// place writes where a thing is.
func (u *usd) place(at func(Frame) (side, along float64)) {
	u.value("double3", "xformOp:translate", func(f Frame) string {
		side, along := at(f)
		return fmt.Sprintf("(%s, 0, %s)", decimal(side), decimal(-min(along, farthest)))
	})
	u.line(2, "uniform token[] xformOpOrder = [\"xformOp:translate\"]")
}

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
		u.line(3, "%d: %s,", firstFrame+i, v)
	}
	u.line(2, "}")
}

// identifier makes a name of a prim that is not taken: letters of ASCII, digits
// and _.
func identifier(name string, taken map[string]bool) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '_':
			return r
		}
		return '_'
	}, name)
	if clean == "" || clean[0] >= '0' && clean[0] <= '9' {
		clean = "_" + clean
	}
	unique := clean
	for n := 2; taken[unique]; n++ {
		unique = clean + "_" + strconv.Itoa(n)
	}
	taken[unique] = true
	return unique
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
