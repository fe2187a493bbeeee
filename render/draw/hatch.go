// Hatches: a tint that a black-and-white printer can show. They are separate lines,
// because some back ends have no patterns.

package draw

import (
	"cmp"
	"math"
	"slices"
)

// Hatch returns the lines of a hatch inside a closed run of points. They rise to the
// right at 45 degrees and are pitch millimetres apart. It omits lines shorter than
// least millimetres, because they would look like dirt. The lines of two hatches of the
// same pitch continue each other.
func Hatch(run []Point, pitch, least float64) [][]Point {
	// Along such a line x + y is constant; neighbours differ by step.
	step := pitch * math.Sqrt2
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range run {
		lo, hi = min(lo, p.X+p.Y), max(hi, p.X+p.Y)
	}
	first := math.Ceil(lo / step)
	if !(first*step <= hi) {
		return nil
	}
	var lines [][]Point
	for _, cuts := range crossings(run, first, step, int((hi-lo)/step)+2) {
		for i := 0; i+1 < len(cuts); i += 2 {
			if (cuts[i+1].X-cuts[i].X)*math.Sqrt2 >= least {
				lines = append(lines, []Point{cuts[i], cuts[i+1]})
			}
		}
	}
	return lines
}

// crossings returns where the lines x + y = k * step cross the sides of a closed
// run, from left to right, for n of them from k = first. Each side is looked at
// once, whatever the lines.
func crossings(run []Point, first, step float64, n int) [][]Point {
	cuts := make([][]Point, n)
	for i, p := range run {
		q := run[(i+1)%len(run)]
		lo, hi := min(p.X+p.Y, q.X+q.Y), max(p.X+p.Y, q.X+q.Y)
		// A line more at either end, for the rounding.
		for j := max(0, int(lo/step-first)-1); j < n && (first+float64(j)-1)*step <= hi; j++ {
			sum := (first + float64(j)) * step
			a, b := p.X+p.Y-sum, q.X+q.Y-sum
			if a < 0 == (b < 0) {
				continue
			}
			u := a / (a - b)
			cuts[j] = append(cuts[j], Point{p.X + u*(q.X-p.X), p.Y + u*(q.Y-p.Y)})
		}
	}
	for _, list := range cuts {
		slices.SortFunc(list, func(p, q Point) int { return cmp.Compare(p.X, q.X) })
	}
	return cuts
}
