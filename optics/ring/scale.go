// The cubic through the marks, and its inverse.

package ring

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// A scale is the curve through marks, as angles over q = 1/(distance - origin). In q a
// ring runs backwards: infinity is q = 0, and the angle falls as q rises.
type scale struct {
	cubic  interp.PiecewiseCubic
	qs     []float64 // of the marks, rising
	angles []float64 // of the same marks, falling
	origin float64   // metres
}

// newScale fits the cubic with the slopes of Fritsch and Butland (A method for
// constructing local monotone piecewise cubic interpolants, 1984). They may be
// flat at the outer marks, where the inverse would lose its digits, so there
// they are kept to a third of the secant or more. Slopes between 0 and 3 times
// the secants keep the cubic monotone (Fritsch and Carlson, Monotone piecewise
// cubic interpolation, 1980).
func newScale(marks []Mark, origin float64) *scale {
	s := &scale{origin: origin}
	for _, m := range slices.Backward(marks) {
		s.qs = append(s.qs, coordinate(m.Distance, origin))
		s.angles = append(s.angles, m.Angle)
	}
	n := len(marks)
	secants := s.secants()
	var plain interp.FritschButland
	if err := plain.Fit(s.qs, s.angles); err != nil {
		panic(err) // it returns none: bad points, which check keeps out, are its panics
	}
	slopes := make([]float64, n)
	for i, q := range s.qs {
		slopes[i] = plain.PredictDerivative(q)
	}
	slopes[0] = min(slopes[0], secants[0]/3) // both are below 0
	slopes[n-1] = min(slopes[n-1], secants[n-2]/3)
	s.cubic.FitWithDerivatives(s.qs, s.angles, slopes)
	return s
}

// coordinate returns q = 1/(D-c) in 1/m, 0 for infinity. D must be above c.
func coordinate(distance, origin float64) float64 { return 1 / (distance - origin) }

// secants returns the slope between each mark and the next, in degrees per 1/m, the
// farthest first.
func (s *scale) secants() []float64 {
	list := make([]float64, len(s.qs)-1)
	for i := range list {
		list[i] = (s.angles[i+1] - s.angles[i]) / (s.qs[i+1] - s.qs[i])
	}
	return list
}

// gap returns the number of the gap that holds a q, counted from the far end. A q beyond
// the marks counts to the outer gap.
func (s *scale) gap(q float64) int {
	i, _ := slices.BinarySearch(s.qs, q)
	return min(max(i-1, 0), len(s.qs)-2)
}

func (s *scale) angle(distance float64) float64 {
	return s.cubic.Predict(coordinate(distance, s.origin))
}

func (s *scale) distance(angle float64) float64 {
	// The first mark at a smaller angle ends the span that holds this one.
	i, _ := slices.BinarySearchFunc(s.angles, angle, func(a, target float64) int {
		if a > target {
			return -1
		}
		return 1
	})
	i = min(max(i, 1), len(s.qs)-1)
	q := s.root(angle, s.qs[i-1], s.qs[i])
	if q <= 0 {
		return math.Inf(1)
	}
	return s.origin + 1/q
}

// root finds the q between lo and hi, neighbouring marks, where the cubic takes
// an angle: Newton's steps, and a halving of the bracket whenever a step would
// leave it. It ends where the angle is right to its last bit, or q moves no more.
func (s *scale) root(angle, lo, hi float64) float64 {
	q := (lo + hi) / 2
	for range steps {
		miss := s.cubic.Predict(q) - angle
		switch {
		case math.Abs(miss) <= ulp*angle:
			return q
		case miss > 0: // the angle falls as q rises, so the root lies farther on
			lo = q
		default:
			hi = q
		}
		next := q - miss/s.cubic.PredictDerivative(q)
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-q) <= ulp*q {
			return next
		}
		q = next
	}
	return q
}

const (
	steps = 100     // enough for halving alone to use up a float64
	ulp   = 0x1p-52 // relative spacing of float64
)
