// The camera and two people, on the floor.

package staging

import (
	"math"

	"pullscore/interp/plan"
)

// OnTheLine is how near to a line a camera is on neither side of it, metres.
const OnTheLine = 0.2

// A Point is a place on a floor, in metres to the right and upstage.
type Point struct{ X, Y float64 }

// LineSide returns how far a camera stands to the right of the line from a to b, in
// metres; below 0 it stands to its left.
func LineSide(a, b, camera Point) float64 {
	return ((camera.X-a.X)*(b.Y-a.Y) - (camera.Y-a.Y)*(b.X-a.X)) / math.Hypot(b.X-a.X, b.Y-a.Y)
}

// EyeLine returns how far from the lens somebody at a looks who looks at b, in degrees:
// above 0 to the right of the picture, below 0 to its left.
func EyeLine(a, b, camera Point) float64 {
	return plan.Wrapped(bearing(a, camera) - bearing(a, b))
}

// bearing returns the way from one point to another, in degrees from upstage to the right.
func bearing(from, to Point) float64 {
	return math.Atan2(to.X-from.X, to.Y-from.Y) * 180 / math.Pi
}

// LeastApart is how far two people stand apart at least for a line to lie between them,
// metres.
const LeastApart = 0.05

// At returns how the camera of a shot stands to two people at t. ok is false where the
// shot does not have both, or they stand in one place.
func At(s *plan.Shot, a, b string, t float64) (v plan.SightLine, ok bool) {
	from, to := s.Subject(a), s.Subject(b)
	if from == nil || to == nil {
		return v, false
	}
	pose := s.Stands(t)
	p, q, camera := floorOf(s, from, t), floorOf(s, to, t), Point{pose.X, pose.Y}
	if math.Hypot(q.X-p.X, q.Y-p.Y) < LeastApart {
		return v, false
	}
	return plan.SightLine{
		A: a, B: b, EyeLine: plan.Number(EyeLine(p, q, camera)), Side: plan.Number(LineSide(p, q, camera)),
	}, true
}

func floorOf(s *plan.Shot, u *plan.Subject, t float64) Point {
	x, y, _ := s.OnFloor(u, t)
	return Point{x, y}
}

// Views returns how the camera of a shot stands, as the shot starts, to everybody of its
// scene who speaks to another, seen from either of the two.
func Views(sc *plan.Scene, s *plan.Shot) (list []plan.SightLine) {
	if !isPlaced(s) {
		return nil
	}
	for _, p := range pairs(sc) {
		there, ok := At(s, p[0], p[1], 0)
		back, _ := At(s, p[1], p[0], 0)
		if ok {
			list = append(list, there, back)
		}
	}
	return list
}
