// The words of a scene and of a camera that has a place in it.

package moments

import (
	"math"
	"slices"
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

// Sights says how a camera stands to the people of a scene, a sentence a pair of them: where
// the one looks to see the other, and back, and on which side of their line the camera is.
func Sights(views []plan.SightLine, in units.Style) (list []string) {
	for i := range views {
		v := &views[i]
		mirrored := func(o plan.SightLine) bool { return o.A == v.B && o.B == v.A }
		if slices.ContainsFunc(views[:i], mirrored) {
			continue // told with the other
		}
		text := v.A + " to " + v.B + ": looks " + eyeLine(v, in)
		if back := slices.IndexFunc(views[i:], mirrored); back > 0 {
			text += ", back " + eyeLine(&views[i+back], in)
		}
		list = append(list, text+"; the camera "+lineSide(float64(v.Side), in))
	}
	return list
}

// eyeLine says where somebody looks to see another, as the camera has it.
func eyeLine(v *plan.SightLine, in units.Style) string {
	return way(in.AngleTo(math.Abs(float64(v.EyeLine)), 1)+" camera", float64(v.EyeLine), [2]string{"left", "right"})
}

// lineSide says on which side of the line of two people a camera is, so many metres to the
// right of it.
func lineSide(right float64, in units.Style) string {
	if math.Abs(right) < onTheLine {
		return "on their line"
	}
	return way(in.Tape(math.Abs(right)), right, [2]string{"left", "right"}) + " of their line"
}

// onTheLine is how near to the line between two people a camera is on it and on neither
// side, metres.
const onTheLine = 0.2
