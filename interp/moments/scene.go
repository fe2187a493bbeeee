// The words of a scene and of a camera that has a place in it.

package moments

import (
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// leastWay is the shortest way on a floor that is written, metres.
const leastWay = 0.0005

// FloorPlace says where a place is on the floor of a scene, such as "60 cm left, 1.6 m
// downstage, 1.4 m high". What is level with the zero point has no height.
func FloorPlace(right, upstage, high float64, in units.Style) string {
	var parts []string
	add := func(v float64, ways [2]string) {
		if math.Abs(v) >= leastWay {
			parts = append(parts, way(in.Tape(math.Abs(v)), v, ways))
		}
	}
	add(right, [2]string{"left", "right"})
	add(upstage, [2]string{"downstage", "upstage"})
	if len(parts) == 0 {
		parts = append(parts, "at the zero point")
	}
	if math.Abs(high) >= leastWay {
		parts = append(parts, in.Tape(high)+" high")
	}
	return strings.Join(parts, ", ")
}

// FloorPoint says where somebody is on the floor of a scene, as FloorPlace does.
func FloorPoint(p *plan.FloorPoint, in units.Style) string {
	return FloorPlace(float64(p.Right), float64(p.Upstage), float64(p.High), in)
}

// Stands says where the camera of a placed shot is at t and where it looks.
func Stands(s *plan.Shot, t float64, in units.Style) string {
	p := s.Stands(t)
	return FloorPlace(p.X, p.Y, p.Z, in) + "; pan " + Heading("pan", plan.Wrapped(p.Pan), in) + ", tilt " + Heading("tilt", p.Tilt, in)
}

// Stages says what a shot has of its scene: how much of it, with which other camera, and
// against which set-up it is to be cut; "" for one that has nothing of a scene.
func Stages(s *plan.Shot, in units.Style) string {
	if s.Staging == nil {
		return ""
	}
	var parts []string
	if s.Scene != "" {
		parts = append(parts, "scene "+s.Scene)
	}
	if s.Action {
		parts = append(parts, "covers "+in.Time(float64(s.Covers[0]))+" to "+in.Time(float64(s.Covers[1]))+" of it")
	}
	if s.RunsWith != "" {
		parts = append(parts, "runs with "+s.RunsWith)
	}
	if s.Matches != "" {
		parts = append(parts, "matches "+s.Matches)
	}
	return strings.Join(parts, ", ")
}

// Sight says how a camera stands to two people: where the one looks to see the other, and on
// which side of their line the camera is.
func Sight(v *plan.SightLine, in units.Style) string {
	text := v.A + " to " + v.B + ": looks " + way(in.AngleTo(math.Abs(float64(v.EyeLine)), 1)+" camera", float64(v.EyeLine), [2]string{"left", "right"})
	if side := float64(v.Side); math.Abs(side) < onTheLine {
		return text + ", the camera on their line"
	} else if side < 0 {
		return text + ", the camera " + in.Tape(-side) + " left of their line"
	}
	return text + ", the camera " + in.Tape(float64(v.Side)) + " right of their line"
}

// onTheLine is how near to the line between two people a camera is on it and on neither
// side, metres.
const onTheLine = 0.2
