// The law of a ring from its marks.

package ring

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// A Mark is a distance mark on a ring.
type Mark struct {
	Distance float64 // metres from the sensor, at least 0.001; +Inf for infinity
	Angle    float64 // degrees from the closest stop, 0 to 100000
}

// ErrFewMarks means that there are fewer than two marks.
var ErrFewMarks = errors.New("a ring needs two marks or more")

// ErrThrow means that the throw is not above 0 and finite.
var ErrThrow = errors.New("throw is not above 0 and finite")

// A Fault is the kind of mistake in one mark.
type Fault int

// The faults of a mark.
const (
	BadDistance   Fault = iota // not a distance, or under a millimetre
	BadAngle                   // not an angle from 0 on, or more than a ring could turn
	DistanceOrder              // not farther than the mark before it, or too little to tell
	AngleOrder                 // not at a larger angle than the mark before it, or too little to tell
	BeyondThrow                // at a larger angle than the throw
)

var faults = [...]string{
	BadDistance:   "distance is not a length of a millimetre or more",
	BadAngle:      "angle is not a number of degrees from 0 to 100000",
	DistanceOrder: "distance is not farther than that of the mark before it",
	AngleOrder:    "angle is not larger than that of the mark before it",
	BeyondThrow:   "angle is beyond the throw",
}

// String returns the fault in words.
func (f Fault) String() string {
	if f < 0 || int(f) >= len(faults) {
		return fmt.Sprintf("fault %d", int(f))
	}
	return faults[f]
}

// A MarkError is the error for a faulty mark of a ring.
type MarkError struct {
	Index int // of the mark, from 0
	Mark  Mark
	Fault Fault
}

// Error returns the fault in words. It counts marks from 1.
func (e *MarkError) Error() string {
	return fmt.Sprintf("ring: mark %d (%g m at %g deg): %v", e.Index+1, e.Mark.Distance, e.Mark.Angle, e.Fault)
}

const (
	nearest = 0.001 // metres: no mark is nearer
	spacing = 1e-9  // per metre: marks closer together than this in 1/distance are one
	widest  = 1e5   // degrees: no ring turns as far, and beyond it digits run out
	turn    = 1e-6  // degrees: marks closer together than this are one
)

// FromMarks returns the law through two or more marks, whose distances and angles must
// both rise. Between marks the law is a monotone cubic in 1/distance, because a ring is
// nearly even in that. Beyond them it is the line through the last two marks, up to the
// ends of the ring. The throw is in degrees; NaN means the angle of the last mark. It
// returns ErrFewMarks, ErrThrow, or a *MarkError for the first faulty mark.
func FromMarks(marks []Mark, throw float64) (*Law, error) {
	if len(marks) < 2 {
		return nil, fmt.Errorf("ring: %d marks: %w", len(marks), ErrFewMarks)
	}
	last := marks[len(marks)-1]
	if throw <= 0 || math.IsInf(throw, 0) {
		return nil, fmt.Errorf("ring: throw %g deg: %w", throw, ErrThrow)
	}
	for i := range marks {
		if fault, ok := check(marks, i, throw); !ok {
			return nil, &MarkError{Index: i, Mark: marks[i], Fault: fault}
		}
	}
	if math.IsNaN(throw) || last.Angle > throw { // 0.7 turn is a hair less than 252 deg
		throw = last.Angle
	}
	law := newLaw(newScale(marks), throw, marks[0].Distance, last.Distance)
	law.marks = slices.Clone(marks)
	return law, nil
}

// check finds the fault of mark i, given that those before it have none. A
// throw of NaN faults no mark.
func check(marks []Mark, i int, throw float64) (fault Fault, ok bool) {
	m := marks[i]
	switch {
	case !(m.Distance >= nearest):
		return BadDistance, false
	case !(m.Angle >= 0 && m.Angle <= widest):
		return BadAngle, false
	case i > 0 && !(1/marks[i-1].Distance-1/m.Distance > spacing):
		return DistanceOrder, false
	case i > 0 && m.Angle-marks[i-1].Angle < turn:
		return AngleOrder, false
	case m.Angle > throw+turn:
		return BeyondThrow, false
	}
	return 0, true
}

// A scale is the curve through marks, as angles over u = 1/distance. In u a
// ring runs backwards: infinity is u = 0, and the angle falls as u rises.
type scale struct {
	cubic     interp.PiecewiseCubic
	us        []float64 // 1/distance of the marks, rising
	angles    []float64 // of the same marks, falling
	far, near float64   // slopes of the lines beyond us[0] and beyond the last
}

// newScale fits the cubic with the slopes of Fritsch and Butland (A method for
// constructing local monotone piecewise cubic interpolants, 1984). They may be
// flat at the outer marks, where the inverse would lose its digits, so there
// they are kept to a third of the secant or more. Slopes between 0 and 3 times
// the secants keep the cubic monotone (Fritsch and Carlson, Monotone piecewise
// cubic interpolation, 1980).
func newScale(marks []Mark) *scale {
	s := &scale{}
	for _, m := range slices.Backward(marks) {
		s.us = append(s.us, 1/m.Distance)
		s.angles = append(s.angles, m.Angle)
	}
	n := len(marks)
	s.far = (s.angles[1] - s.angles[0]) / (s.us[1] - s.us[0])
	s.near = (s.angles[n-1] - s.angles[n-2]) / (s.us[n-1] - s.us[n-2])

	var plain interp.FritschButland
	if err := plain.Fit(s.us, s.angles); err != nil {
		panic(err) // it returns none: bad points, which check keeps out, are its panics
	}
	slopes := make([]float64, n)
	for i, u := range s.us {
		slopes[i] = plain.PredictDerivative(u)
	}
	slopes[0] = min(slopes[0], s.far/3) // both are below 0
	slopes[n-1] = min(slopes[n-1], s.near/3)
	s.cubic.FitWithDerivatives(s.us, s.angles, slopes)
	return s
}

func (s *scale) angle(distance float64) float64 {
	u := 1 / distance
	switch last := len(s.us) - 1; {
	case u < s.us[0]:
		return s.angles[0] + s.far*(u-s.us[0])
	case u > s.us[last]:
		return s.angles[last] + s.near*(u-s.us[last])
	}
	return s.cubic.Predict(u)
}

func (s *scale) distance(angle float64) float64 {
	last := len(s.us) - 1
	switch {
	case angle >= s.angles[0]:
		return reciprocal(s.us[0] + (angle-s.angles[0])/s.far)
	case angle <= s.angles[last]:
		return reciprocal(s.us[last] + (angle-s.angles[last])/s.near)
	}
	// The first mark at a smaller angle ends the span that holds this one.
	i, _ := slices.BinarySearchFunc(s.angles, angle, func(a, target float64) int {
		if a > target {
			return -1
		}
		return 1
	})
	return reciprocal(s.root(angle, s.us[i-1], s.us[i]))
}

// root finds the u between lo and hi, neighbouring marks, where the cubic takes
// an angle: Newton's steps, and a halving of the bracket whenever a step would
// leave it. It ends where the angle is right to its last bit, or u moves no more.
func (s *scale) root(angle, lo, hi float64) float64 {
	u := (lo + hi) / 2
	for range steps {
		miss := s.cubic.Predict(u) - angle
		switch {
		case math.Abs(miss) <= ulp*angle:
			return u
		case miss > 0: // the angle falls as u rises, so the root lies farther on
			lo = u
		default:
			hi = u
		}
		next := u - miss/s.cubic.PredictDerivative(u)
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-u) <= ulp*u {
			return next
		}
		u = next
	}
	return u
}

const (
	steps = 100     // enough for halving alone to use up a float64
	ulp   = 0x1p-52 // relative spacing of float64
)
