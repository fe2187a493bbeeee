// How well a law is known.
//
// Between two marks nobody has read the ring, and the cubic only guesses how it runs. How
// wrong the guess may be follows from the marks themselves. A gap whose neighbours rise
// much more or much less steeply is bent, and so is, as a rule, a gap that is a large part
// of the whole scale. K says how bent a gap may be: the larger of 0.005, of a part of the
// logarithm of the ratio of its slope to that of a neighbour (0.06, or 0.12 in the first
// and the last gap, which have one neighbour), and of a quarter of the share that the gap
// has of the scale. The error is nothing at the marks and grows as the square of the gap
// between them: E = 4 t (1-t) K times the degrees of the gap, t the part of the gap.
//
// The constants are our own. They were chosen on laws that were computed, not measured: 96
// of lenses that focus in the ways we could think of, and 69 more, with marks at random. On
// 60 laws that nobody had looked at while choosing, E held at 96 % of all points, and the
// factors of the window at 95.6 %. No real lens stands behind them. So E is a usual bound,
// nineteen times in twenty on smooth rings, and never a certainty: it does not see a kink
// or a wave that is narrower than a gap.

package ring

import "math"

const (
	leastBend    = 0.005 // K of the straightest gap
	innerBend    = 0.06  // K for each unit of the logarithm of the ratio of two slopes
	outerBend    = 0.12  // the same in the first and the last gap
	sharedBend   = 0.25  // K for the share of the scale that a gap has
	windowByBend = 2.5   // how much the width of a window may differ, for each unit of K

	unitLeast, unitMost = 0.62, 1.44 // of a window by the law of unit focusing, at 90 % of the points
)

// Origin returns c in metres: between its marks the law is smooth in 1/(D-c). It is NaN
// for a law without marks.
func (l *Law) Origin() float64 { return l.origin }

// K returns how bent the gap between marks is that holds a distance, as a part of its
// degrees. It returns NaN where the law has no marks or does not know the distance.
func (l *Law) K(distance float64) float64 {
	s, i, ok := l.gapAt(distance)
	if !ok {
		return math.NaN()
	}
	return l.bend(s, i)
}

// bend returns K of a gap.
func (l *Law) bend(s *scale, i int) float64 {
	last := len(s.qs) - 1
	share := (s.qs[i+1] - s.qs[i]) / (s.qs[last] - s.qs[0])
	r := 0.0
	for _, j := range []int{i - 1, i + 1} {
		if j >= 0 && j < last {
			r = max(r, math.Abs(math.Log(l.secants[i]/l.secants[j])))
		}
	}
	by := innerBend
	if i == 0 || i == last-1 {
		by = outerBend
	}
	return max(leastBend, by*r, sharedBend*share)
}

// gapAt returns the scale and the gap that holds a distance; ok is false where there is
// none.
func (l *Law) gapAt(distance float64) (s *scale, i int, ok bool) {
	s, ok = l.curve.(*scale)
	if !ok || math.IsNaN(l.Angle(distance)) {
		return nil, 0, false
	}
	return s, s.gap(coordinate(distance, s.origin)), true
}

// Bound returns E in degrees: how far the angle of a distance may be off between the
// marks, nineteen times in twenty. It is 0 at a mark. It returns NaN where K does.
func (l *Law) Bound(distance float64) float64 {
	s, i, ok := l.gapAt(distance)
	if !ok {
		return math.NaN()
	}
	q := coordinate(distance, s.origin)
	t := min(max((q-s.qs[i])/(s.qs[i+1]-s.qs[i]), 0), 1)
	return 4 * t * (1 - t) * l.bend(s, i) * (s.angles[i] - s.angles[i+1])
}

// Reading returns how well the marks were read, in degrees, one standard deviation. It is
// NaN for a law without marks.
func (l *Law) Reading() float64 { return l.reading }

// Sigma returns how well the angle of a distance is known, in degrees, one standard
// deviation: half of Bound and Reading, as the root of the sum of their squares. It
// returns NaN where Bound does.
func (l *Law) Sigma(distance float64) float64 {
	return math.Hypot(l.Bound(distance)/2, l.reading)
}

// Factors returns between what factors of its computed width the window round a distance
// lies as a rule: 1 - 2.5 K, not below 0, and 1 + 2.5 K; of the law of unit focusing, 0.62
// and 1.44. It returns NaN where the law does not know the distance.
func (l *Law) Factors(distance float64) (least, most float64) {
	if math.IsNaN(l.Angle(distance)) {
		return math.NaN(), math.NaN()
	}
	k := l.K(distance)
	if math.IsNaN(k) {
		return unitLeast, unitMost
	}
	return max(0, 1-windowByBend*k), 1 + windowByBend*k
}

// Between returns the marks on either side of a distance; ok is false where K is NaN.
func (l *Law) Between(distance float64) (near, far Mark, ok bool) {
	_, i, ok := l.gapAt(distance)
	if !ok {
		return Mark{}, Mark{}, false
	}
	n := len(l.marks)
	return l.marks[n-2-i], l.marks[n-1-i], true
}

// Next returns the distance in metres at which one more mark would help most: the middle,
// in 1/(D-c), of the gap with the largest error. It returns NaN for a law without marks.
func (l *Law) Next() float64 {
	s, ok := l.curve.(*scale)
	if !ok {
		return math.NaN()
	}
	worst, at := -1.0, 0
	for i := range l.secants {
		if e := l.bend(s, i) * (s.angles[i] - s.angles[i+1]); e > worst {
			worst, at = e, i
		}
	}
	return s.origin + 2/(s.qs[at]+s.qs[at+1])
}
