// Dashes: a run of points cut into those of its pieces that are drawn. The
// stroker's own dashes are counted in 64ths of a pixel, and what that cuts off
// adds up along a line.

package png

import (
	"math"

	"pullscore/render/draw"
)

// dashes reports whether a pattern breaks a line at all.
func dashes(pattern []float64) bool {
	sum := 0.0
	for _, d := range pattern {
		sum += max(d, 0)
	}
	return sum > 0
}

// dashed returns the pieces of a run that a pattern of lengths on and off
// draws, from the run's first point on.
func dashed(run []draw.Point, pattern []float64) [][]draw.Point {
	if len(run) == 0 {
		return nil
	}
	var pieces [][]draw.Point
	piece := []draw.Point{run[0]}
	next, left := 0, max(pattern[0], 0) // which length of the pattern, and what is left of it
	for i := 1; i < len(run); i++ {
		from, to := run[i-1], run[i]
		length, at := math.Hypot(to.X-from.X, to.Y-from.Y), 0.0
		for length-at > left {
			at += left
			cut := draw.Point{X: from.X + at/length*(to.X-from.X), Y: from.Y + at/length*(to.Y-from.Y)}
			if next%2 == 0 {
				pieces = append(pieces, append(piece, cut))
			}
			piece = []draw.Point{cut}
			next++
			left = max(pattern[next%len(pattern)], 0)
		}
		left -= length - at
		piece = append(piece, to)
	}
	if next%2 == 0 {
		pieces = append(pieces, piece)
	}
	return pieces
}
