// Free stretches along a tape.

package ring

import (
	"cmp"
	"slices"

	"pullscore/render/draw"
)

// widest returns the widest stretch from lo to hi that no box covers, whatever its height.
func widest(taken []draw.Box, lo, hi float64) (from, to float64) {
	taken = slices.Clone(taken)
	slices.SortFunc(taken, func(a, b draw.Box) int { return cmp.Compare(a.X, b.X) })
	end := lo
	best := func(a, b float64) {
		if b-a > to-from {
			from, to = a, b
		}
	}
	for _, b := range taken {
		best(end, min(b.X, hi))
		end = max(end, b.Right())
	}
	best(end, hi)
	return from, to
}

// sortByPlace sorts marks of the lens from left to right.
func sortByPlace(list []scaleMark) {
	slices.SortFunc(list, func(a, b scaleMark) int { return cmp.Compare(a.at, b.at) })
}
