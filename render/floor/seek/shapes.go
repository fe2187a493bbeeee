// Lines and outlines that are cut, and hatches in several directions.

package seek

import (
	"cmp"
	"math"
	"slices"

	"pullscore/render/draw"
)

// A Segment is a straight piece of a line.
type Segment struct{ A, B draw.Point }

// Between returns the segment from a point to another.
func Between(a, b draw.Point) Segment { return Segment{a, b} }

// At returns the point after a share of its length.
func (s Segment) At(u float64) draw.Point {
	return draw.Point{X: s.A.X + u*(s.B.X-s.A.X), Y: s.A.Y + u*(s.B.Y-s.A.Y)}
}

// Length returns how long it is, in millimetres.
func (s Segment) Length() float64 { return Distance(s.A, s.B) }

// Distance returns how far two points are apart, in millimetres.
func Distance(a, b draw.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// Clipped returns what of a segment lies in a box.
func (s Segment) Clipped(box draw.Box) (Segment, bool) {
	from, to := box.Share(s.A, s.B)
	return Segment{s.At(from), s.At(to)}, from < to
}

// A Circle is a part of the page that lines keep out of.
type Circle struct {
	At     draw.Point
	Radius float64
}

// Round returns the circle round a point.
func Round(at draw.Point, radius float64) Circle { return Circle{at, radius} }

// Outside returns the pieces of a segment that lie in none of the circles, those at least
// a millimetre long.
func (s Segment) Outside(circles []Circle) []Segment {
	long := s.Length()
	if long == 0 {
		return nil
	}
	var cuts [][2]float64
	for _, c := range circles {
		along := ((c.At.X-s.A.X)*(s.B.X-s.A.X) + (c.At.Y-s.A.Y)*(s.B.Y-s.A.Y)) / long
		off := Distance(c.At, s.At(along/long))
		if off < c.Radius {
			half := math.Sqrt(c.Radius*c.Radius - off*off)
			cuts = append(cuts, [2]float64{along - half, along + half})
		}
	}
	slices.SortFunc(cuts, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var left []Segment
	at := 0.0
	for _, c := range append(cuts, [2]float64{long, long}) {
		if end := min(c[0], long); end-at >= 1 {
			left = append(left, Segment{s.At(at / long), s.At(end / long)})
		}
		at = max(at, c[1])
	}
	return left
}

// Off returns how far a point is from the segment.
func (s Segment) Off(p draw.Point) float64 {
	long := s.Length()
	if long == 0 {
		return Distance(s.A, p)
	}
	u := ((p.X-s.A.X)*(s.B.X-s.A.X) + (p.Y-s.A.Y)*(s.B.Y-s.A.Y)) / (long * long)
	return Distance(s.At(min(max(u, 0), 1)), p)
}

// Crosses reports whether two segments cross inside both.
func (s Segment) Crosses(o Segment) bool {
	side := func(a, b, c draw.Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return side(s.A, s.B, o.A)*side(s.A, s.B, o.B) < 0 && side(o.A, o.B, s.A)*side(o.A, o.B, s.B) < 0
}

// SegmentsOf returns the segments of a run.
func SegmentsOf(run []draw.Point) []Segment {
	var list []Segment
	for i := 1; i < len(run); i++ {
		list = append(list, Segment{run[i-1], run[i]})
	}
	return list
}

// Cropped cuts a convex outline to a convex one that runs the same way round, or to a box
// (Sutherland and Hodgman 1974).
func Cropped(run, to []draw.Point) []draw.Point {
	for k := range to {
		a, b := to[k], to[(k+1)%len(to)]
		inside := func(p draw.Point) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
		var out []draw.Point
		for i, p := range run {
			q := run[(i+1)%len(run)]
			in, next := inside(p), inside(q)
			if in >= 0 {
				out = append(out, p)
			}
			if in < 0 != (next < 0) {
				u := in / (in - next)
				out = append(out, draw.Point{X: p.X + u*(q.X-p.X), Y: p.Y + u*(q.Y-p.Y)})
			}
		}
		run = out
	}
	return run
}

// Corners returns the Corners of a box, clockwise on the page.
func Corners(b draw.Box) []draw.Point {
	return []draw.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Y}, {X: b.Right(), Y: b.Bottom()}, {X: b.X, Y: b.Bottom()}}
}

// Area returns the area of an outline in square millimetres.
func Area(run []draw.Point) float64 {
	sum := 0.0
	for i, p := range run {
		q := run[(i+1)%len(run)]
		sum += p.X*q.Y - p.Y*q.X
	}
	return math.Abs(sum) / 2
}

// Hatched returns the lines of a hatch that rise at so many degrees: 45, 135, 0 or 90. They
// are pitch millimetres apart, and at least least long.
func Hatched(outline []draw.Point, degrees, pitch, least float64) [][]draw.Point {
	turn := func(run []draw.Point, by float64) []draw.Point {
		sin, cos := math.Sincos(by * math.Pi / 180)
		out := make([]draw.Point, len(run))
		for i, p := range run {
			out[i] = draw.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
		}
		return out
	}
	lines := draw.Hatch(turn(outline, degrees-45), pitch, least)
	for i, l := range lines {
		lines[i] = turn(l, 45-degrees)
	}
	return lines
}

// LengthOf returns the length of a run in millimetres.
func LengthOf(run []draw.Point) (total float64) {
	for _, s := range SegmentsOf(run) {
		total += s.Length()
	}
	return total
}
