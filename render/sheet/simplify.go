// Chords for curves: as few as stay within draw.Chord of what was sampled.

package sheet

import "pullscore/render/draw"

// Simplify returns a run without the points that lie within draw.Chord of the chord
// past them (Douglas & Peucker 1973, Cartographica 10(2)).
func Simplify(run []draw.Point) []draw.Point {
	if len(run) < 3 {
		return run
	}
	out := append(make([]draw.Point, 0, 32), run[0])
	return keepFar(out, run)
}

// keepFar appends what is kept of a run after its first point.
func keepFar(out, run []draw.Point) []draw.Point {
	last := len(run) - 1
	far, at := draw.Chord*draw.Chord, 0
	c := newChord(run[0], run[last])
	for i := 1; i < last; i++ {
		if d := c.off(run[i]); d > far {
			far, at = d, i
		}
	}
	if at == 0 {
		return append(out, run[last])
	}
	return keepFar(keepFar(out, run[:at+1]), run[at:])
}

// A chord is a straight piece of a path, with what off needs of it.
type chord struct {
	from    draw.Point
	dx, dy  float64
	inverse float64 // of its length squared; 0 for a chord without length
}

func newChord(a, b draw.Point) chord {
	c := chord{from: a, dx: b.X - a.X, dy: b.Y - a.Y}
	if square := c.dx*c.dx + c.dy*c.dy; square > 0 {
		c.inverse = 1 / square
	}
	return c
}

// off returns the square of how far p lies from the chord.
func (c chord) off(p draw.Point) float64 {
	x, y := p.X-c.from.X, p.Y-c.from.Y
	along := min(max((x*c.dx+y*c.dy)*c.inverse, 0), 1)
	x, y = x-along*c.dx, y-along*c.dy
	return x*x + y*y
}

// Between returns the closed outline of the region between an upper and a lower run.
func Between(upper, lower []draw.Point) []draw.Point {
	closed := append(make([]draw.Point, 0, len(upper)+len(lower)), upper...)
	for i := len(lower) - 1; i >= 0; i-- {
		closed = append(closed, lower[i])
	}
	return closed
}

// Within returns the parts of a run between two heights.
func Within(run []draw.Point, low, high float64) (parts [][]draw.Point) {
	var part []draw.Point
	flush := func() {
		if len(part) > 1 {
			parts = append(parts, part)
		}
		part = nil
	}
	for i := 1; i < len(run); i++ {
		p, q := run[i-1], run[i]
		if max(p.Y, q.Y) < low || min(p.Y, q.Y) > high {
			flush()
			continue
		}
		from, to := heldTo(p, q, low, high), heldTo(q, p, low, high)
		if len(part) == 0 || from != p {
			flush()
			part = append(part, from)
		}
		if part = append(part, to); to != q {
			flush()
		}
	}
	flush()
	return parts
}

// heldTo returns p, or where the chord from it to q comes between two heights.
func heldTo(p, q draw.Point, low, high float64) draw.Point {
	edge := min(max(p.Y, low), high)
	if edge == p.Y || p.Y == q.Y {
		return p
	}
	u := (edge - p.Y) / (q.Y - p.Y)
	return draw.Point{X: p.X + u*(q.X-p.X), Y: edge}
}

// CutRun returns what of a run lies before from and what lies after to.
func CutRun(run []draw.Point, from, to float64) (head, tail []draw.Point) {
	for i, p := range run {
		if i > 0 {
			q := run[i-1]
			if q.X < from && p.X > from {
				head = append(head, PointAt(q, p, from))
			}
			if q.X < to && p.X > to {
				tail = append(tail, PointAt(q, p, to))
			}
		}
		if p.X <= from {
			head = append(head, p)
		}
		if p.X >= to {
			tail = append(tail, p)
		}
	}
	return head, tail
}

// PointAt returns where the line from p to q is at x.
func PointAt(p, q draw.Point, x float64) draw.Point {
	return draw.Point{X: x, Y: p.Y + (q.Y-p.Y)*(x-p.X)/(q.X-p.X)}
}
