// Lines and outlines that are cut, and hatches in several directions.

package floor

import (
	"cmp"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// A segment is a straight piece of a line.
type segment struct{ a, b draw.Point }

func (s segment) at(u float64) draw.Point {
	return draw.Point{X: s.a.X + u*(s.b.X-s.a.X), Y: s.a.Y + u*(s.b.Y-s.a.Y)}
}

func (s segment) length() float64 { return distance(s.a, s.b) }

func distance(a, b draw.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// clipped returns what of a segment lies in a box.
func (s segment) clipped(box draw.Box) (segment, bool) {
	from, to := box.Share(s.a, s.b)
	return segment{s.at(from), s.at(to)}, from < to
}

// A circle is a part of the page that lines keep out of.
type circle struct {
	at     draw.Point
	radius float64
}

// outside returns the pieces of a segment that lie in none of the circles, those at least
// a millimetre long.
func (s segment) outside(circles []circle) []segment {
	long := s.length()
	if long == 0 {
		return nil
	}
	var cuts [][2]float64
	for _, c := range circles {
		along := ((c.at.X-s.a.X)*(s.b.X-s.a.X) + (c.at.Y-s.a.Y)*(s.b.Y-s.a.Y)) / long
		off := distance(c.at, s.at(along/long))
		if off < c.radius {
			half := math.Sqrt(c.radius*c.radius - off*off)
			cuts = append(cuts, [2]float64{along - half, along + half})
		}
	}
	slices.SortFunc(cuts, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var left []segment
	at := 0.0
	for _, c := range append(cuts, [2]float64{long, long}) {
		if end := min(c[0], long); end-at >= 1 {
			left = append(left, segment{s.at(at / long), s.at(end / long)})
		}
		at = max(at, c[1])
	}
	return left
}

// off returns how far a point is from the segment.
func (s segment) off(p draw.Point) float64 {
	long := s.length()
	if long == 0 {
		return distance(s.a, p)
	}
	u := ((p.X-s.a.X)*(s.b.X-s.a.X) + (p.Y-s.a.Y)*(s.b.Y-s.a.Y)) / (long * long)
	return distance(s.at(min(max(u, 0), 1)), p)
}

// crosses reports whether two segments cross inside both.
func (s segment) crosses(o segment) bool {
	side := func(a, b, c draw.Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return side(s.a, s.b, o.a)*side(s.a, s.b, o.b) < 0 && side(o.a, o.b, s.a)*side(o.a, o.b, s.b) < 0
}

// segmentsOf returns the segments of a run.
func segmentsOf(run []draw.Point) []segment {
	var list []segment
	for i := 1; i < len(run); i++ {
		list = append(list, segment{run[i-1], run[i]})
	}
	return list
}

// cropped cuts a convex outline to a convex one that runs the same way round, or to a box
// (Sutherland and Hodgman 1974).
func cropped(run, to []draw.Point) []draw.Point {
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

// corners returns the corners of a box, clockwise on the page.
func corners(b draw.Box) []draw.Point {
	return []draw.Point{{X: b.X, Y: b.Y}, {X: b.Right(), Y: b.Y}, {X: b.Right(), Y: b.Bottom()}, {X: b.X, Y: b.Bottom()}}
}

// area returns the area of an outline in square millimetres.
func area(run []draw.Point) float64 {
	sum := 0.0
	for i, p := range run {
		q := run[(i+1)%len(run)]
		sum += p.X*q.Y - p.Y*q.X
	}
	return math.Abs(sum) / 2
}

// hatched returns the lines of a hatch that rise at so many degrees: 45, 135 or 0.
func hatched(outline []draw.Point, degrees float64) [][]draw.Point {
	turn := func(run []draw.Point, by float64) []draw.Point {
		sin, cos := math.Sincos(by * math.Pi / 180)
		out := make([]draw.Point, len(run))
		for i, p := range run {
			out[i] = draw.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
		}
		return out
	}
	lines := draw.Hatch(turn(outline, degrees-45), signs.HatchPitch, signs.HatchLeast)
	for i, l := range lines {
		lines[i] = turn(l, 45-degrees)
	}
	return lines
}

// lengthOf returns the length of a run in millimetres.
func lengthOf(run []draw.Point) (total float64) {
	for _, s := range segmentsOf(run) {
		total += s.length()
	}
	return total
}
