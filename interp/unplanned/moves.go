// The moves of a curve that no plan belongs to.
//
// What is hard. Nothing says when a move was to begin or where it was to go, how fast
// the hand is, or which lens it turned. Metres are no scale to find it by: half a metre
// is a rack near the lens and nothing far from it. A recorder has noise, or steps that
// are coarser than its noise, and somebody who is followed never stands still.
//
// What is done. The curve is looked at in vergence, one over the distance, in which the
// same turn of a ring is about the same step everywhere, and infinity is 0. A move starts
// at the first frame that is off the median of the 12 frames before it by more than a
// threshold, and ends at the first frame from which 12 frames stay within the threshold
// of their own median. Medians do not mind a frame that is wrong. The threshold is 0.01
// /m, or 4 s where that is more; s is 1.4826 times the median of the changes from frame
// to frame in the file, which is the standard deviation if they are normal. Moves that
// are less than 3 frames apart are one.
//
// What was rejected. A threshold on speed: a recording in steps has either none or all
// of it. To say whom a move went to, whether it was sharp, or what chance it had: the
// curve does not know what was in front of the lens.

package unplanned

import (
	"math"
	"slices"
)

const (
	still = 12   // frames that a rest is known by
	off   = 0.01 // the least threshold, in one over metres
	noisy = 4    // of the noise, the threshold
	joint = 3    // moves that are less frames apart are one
)

// normal turns the median of absolute changes into a standard deviation, if they are
// normal (Hampel 1974, J. Am. Stat. Assoc. 69, 383-393; from memory).
const normal = 1.4826

// A Move is a stretch of a curve in which the focus moves: the numbers of its frames in
// the curve.
type Move struct {
	Start int  // the first frame that is off the rest before
	Land  int  // the first frame of the rest behind
	Rests bool // there is a rest behind it
}

// Moves returns the moves of a curve of distances in metres, which may be infinite.
func Moves(metres []float64) (list []Move) {
	vergence := make([]float64, len(metres))
	for i, m := range metres {
		vergence[i] = 1 / m
	}
	by := max(off, noisy*noise(vergence))
	from := 0 // the rest begins
	for i := 1; i < len(vergence); i++ {
		before := vergence[max(from, i-still):i]
		if math.Abs(vergence[i]-median(before)) <= by {
			continue
		}
		land, rests := restFrom(vergence, i, by)
		if n := len(list); n > 0 && i-list[n-1].Land < joint {
			list[n-1].Land, list[n-1].Rests = land, rests
		} else {
			list = append(list, Move{i, land, rests})
		}
		from, i = land, land
	}
	return list
}

// noise returns the standard deviation of a curve at rest, by its changes.
func noise(v []float64) float64 {
	if len(v) < 2 {
		return 0
	}
	changes := make([]float64, len(v)-1)
	for i := range changes {
		changes[i] = math.Abs(v[i+1] - v[i])
	}
	return normal * median(changes)
}

// restFrom returns the first frame from a place on from which the curve rests; ok is
// false where it ends first.
func restFrom(v []float64, from int, by float64) (at int, ok bool) {
	for at = from; at+still <= len(v); at++ {
		part := v[at : at+still]
		middle := median(part)
		if !slices.ContainsFunc(part, func(x float64) bool { return math.Abs(x-middle) > by }) {
			return at, true
		}
	}
	return len(v) - 1, false
}

// median returns the median of some numbers, which stay in their order.
func median(list []float64) float64 {
	sorted := slices.Sorted(slices.Values(list))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}
