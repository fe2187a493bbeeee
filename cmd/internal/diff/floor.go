// Places on the floor of a scene, in words.

package diff

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// leastMove is the least in metres by which somebody or something has moved on a floor.
const leastMove = 0.005

// A spot is a place on the floor of a scene, in metres.
type spot struct{ right, upstage, high float64 }

func spotOf(p plan.FloorPoint) spot {
	return spot{float64(p.Right), float64(p.Upstage), known(p.High)}
}

// known returns a number, 0 where it does not apply.
func known(n plan.Number) float64 {
	if n.Known() {
		return float64(n)
	}
	return 0
}

func (s spot) to(other spot) spot {
	return spot{other.right - s.right, other.upstage - s.upstage, other.high - s.high}
}

// moves reports whether a way leads anywhere.
func (s spot) moves() bool {
	return max(math.Abs(s.right), math.Abs(s.upstage), math.Abs(s.high)) >= leastMove
}

// ways says a way from a place to another, such as "20 cm left, 1 m upstage"; "" for none.
func (s spot) ways(in units.Style) string {
	var parts []string
	for _, w := range []struct {
		v          float64
		over, less string
	}{{s.right, "right", "left"}, {s.upstage, "upstage", "downstage"}, {s.high, "up", "down"}} {
		switch {
		case w.v >= leastMove:
			parts = append(parts, in.Gap(w.v)+" "+w.over)
		case w.v <= -leastMove:
			parts = append(parts, in.Gap(-w.v)+" "+w.less)
		}
	}
	return strings.Join(parts, ", ")
}

// level says where a spot is on the floor: at a mark, or by its ways from the zero point.
func (s spot) level(scene *plan.Scene, in units.Style) string {
	for _, m := range scene.Marks {
		if math.Hypot(float64(m.Right)-s.right, float64(m.Upstage)-s.upstage) < leastMove {
			return m.Name
		}
	}
	s.high = 0
	return s.full(in)
}

// full says where a spot is and how high.
func (s spot) full(in units.Style) string {
	return moments.FloorPlace(s.right, s.upstage, s.high, in)
}

// moved adds to a list that something has moved by so much.
func (l *list) moved(from, to spot, in units.Style) {
	if by := from.to(to); by.moves() {
		l.details = append(l.details, Detail{
			Name: "mark-moved", Before: word(from.full(in)), After: word(to.full(in)), Says: "moved " + by.ways(in), Metres: by.length(),
		})
	}
}

// length is how long a way is, to a tenth of a millimetre.
func (s spot) length() float64 {
	const tenths = 1e4
	return math.Round(math.Hypot(math.Hypot(s.right, s.upstage), s.high)*tenths) / tenths
}

// stands says where a camera is and looks as its shot starts.
func stands(p plan.Pose, in units.Style) string {
	return spot{p.X, p.Y, p.Z}.full(in) + ", pan " + moments.Heading("pan", plan.Wrapped(p.Pan), in) + ", tilt " + moments.Heading("tilt", p.Tilt, in)
}

// turnedBy says by how much a camera is turned from one pose to another; "" for nothing.
func turnedBy(from, to plan.Pose, in units.Style) string {
	var parts []string
	if deg := plan.Wrapped(to.Pan - from.Pan); math.Abs(deg) >= leastDeg {
		parts = append(parts, moments.Heading("pan", deg, in))
	}
	if deg := to.Tilt - from.Tilt; math.Abs(deg) >= leastDeg {
		parts = append(parts, moments.Heading("tilt", deg, in))
	}
	return strings.Join(parts, ", ")
}

// angle returns the angle between the axes of two poses, in degrees to a thousandth.
func angle(a, b plan.Pose) float64 {
	axis := func(p plan.Pose) (x, y, z float64) {
		sp, cp := math.Sincos(p.Pan * math.Pi / 180)
		st, ct := math.Sincos(p.Tilt * math.Pi / 180)
		return sp * ct, cp * ct, st
	}
	ax, ay, az := axis(a)
	bx, by, bz := axis(b)
	cross := math.Hypot(math.Hypot(ay*bz-az*by, az*bx-ax*bz), ax*by-ay*bx)
	deg := math.Atan2(cross, ax*bx+ay*by+az*bz) * 180 / math.Pi
	return math.Round(deg*1000) / 1000
}

// cameraMoved compares where a camera is and looks as its shot starts.
func (l *list) cameraMoved(from, to plan.Pose, in units.Style) {
	by := spot{from.X, from.Y, from.Z}.to(spot{to.X, to.Y, to.Z})
	turn := turnedBy(from, to, in)
	if !by.moves() && turn == "" {
		return
	}
	var parts []string
	if by.moves() {
		parts = append(parts, "moved "+by.ways(in))
	}
	if turn != "" {
		parts = append(parts, "turned "+turn)
	}
	l.details = append(l.details, Detail{
		Name: "camera-moved", Before: word(stands(from, in)), After: word(stands(to, in)),
		Says: fmt.Sprintf("camera %s", strings.Join(parts, " and ")), Metres: by.length(), Degrees: angle(from, to),
	})
}
