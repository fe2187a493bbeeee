// Chords for curves: as few as stay within draw.Chord of what was sampled.

package render

import (
	"math"

	"pullscore/render/draw"
)

// simplify leaves out the points of a run that lie within draw.Chord of the
// chord past them (Douglas & Peucker 1973, Cartographica 10(2)).
func simplify(run []draw.Point) []draw.Point {
	if len(run) < 3 {
		return run
	}
	first, last := run[0], run[len(run)-1]
	far, at := draw.Chord, 0
	for i := 1; i < len(run)-1; i++ {
		if d := offChord(run[i], first, last); d > far {
			far, at = d, i
		}
	}
	if at == 0 {
		return []draw.Point{first, last}
	}
	head := simplify(run[:at+1])
	return append(head[:len(head)-1:len(head)-1], simplify(run[at:])...)
}

// offChord returns how far p lies from the chord between a and b.
func offChord(p, a, b draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := math.Hypot(dx, dy)
	if length == 0 {
		return math.Hypot(p.X-a.X, p.Y-a.Y)
	}
	along := ((p.X-a.X)*dx + (p.Y-a.Y)*dy) / (length * length)
	along = min(max(along, 0), 1)
	return math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy)
}

// band closes the region between an upper and a lower run of the same length.
func band(upper, lower []draw.Point) []draw.Point {
	upper, lower = simplify(upper), simplify(lower)
	closed := append([]draw.Point(nil), upper...)
	for i := len(lower) - 1; i >= 0; i-- {
		closed = append(closed, lower[i])
	}
	return closed
}
