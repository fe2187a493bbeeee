// Hatches: a tint that a black-and-white printer keeps, as lines of their own,
// since not every back end has patterns.

package draw

import (
	"math"
	"slices"
)

// Hatch returns the lines, rising to the right at 45 degrees and pitch
// millimetres apart, that lie inside a closed run of points; those shorter than
// least are left out, since they would only look like dirt. Lines of two
// hatches of the same pitch run on into each other.
func Hatch(run []Point, pitch, least float64) [][]Point {
	// Along such a line x + y is constant; neighbours differ by step.
	step := pitch * math.Sqrt2
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range run {
		lo, hi = min(lo, p.X+p.Y), max(hi, p.X+p.Y)
	}
	var lines [][]Point
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		cuts := crossings(run, k*step)
		for i := 0; i+1 < len(cuts); i += 2 {
			if (cuts[i+1].X-cuts[i].X)*math.Sqrt2 >= least {
				lines = append(lines, []Point{cuts[i], cuts[i+1]})
			}
		}
	}
	return lines
}

// crossings returns where the line x + y = sum crosses the sides of a closed
// run, from left to right.
func crossings(run []Point, sum float64) []Point {
	var cuts []Point
	for i, p := range run {
		q := run[(i+1)%len(run)]
		a, b := p.X+p.Y-sum, q.X+q.Y-sum
		if a < 0 == (b < 0) {
			continue
		}
		u := a / (a - b)
		cuts = append(cuts, Point{p.X + u*(q.X-p.X), p.Y + u*(q.Y-p.Y)})
	}
	slices.SortFunc(cuts, func(p, q Point) int {
		switch {
		case p.X < q.X:
			return -1
		case p.X > q.X:
			return 1
		}
		return 0
	})
	return cuts
}
