// The law of a ring from its marks.

package ring

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pullscore/optics"
)

// A Mark is a distance mark on a ring.
type Mark struct {
	Distance float64 // metres from the sensor, at least 0.001; +Inf for infinity
	Angle    float64 // degrees from the closest stop, 0 to 100000
	Default  bool    // nobody wrote it: it follows from the closest distance, or from the throw

	// Twice tells that the mark was come to from both sides. Angle is then the mean, and
	// Gap is how much farther the ring stood, in degrees, when the mark was come to from
	// the near side.
	Twice bool
	Gap   float64
}

// Second returns the angle in degrees at which the mark was read when come to from the
// far side, or NaN if it was read once.
func (m Mark) Second() float64 {
	if !m.Twice {
		return math.NaN()
	}
	return m.Angle - m.Gap/2
}

// A Shape is what a law through marks needs beside the marks.
type Shape struct {
	Focal   float64 // the shortest focal length of the lens, metres
	Throw   float64 // the whole turn of the ring, degrees; NaN where nothing says it
	Reading float64 // how well a mark is read, degrees, one standard deviation; not below 0
}

// ErrFewMarks means that there are fewer than two marks.
var ErrFewMarks = errors.New("a ring needs two marks or more")

// ErrThrow means that the throw is not above 0 and finite.
var ErrThrow = errors.New("throw is not above 0 and finite")

// ErrShape means that the focal length is not above 0 and finite, or the reading is not a
// finite number of degrees from 0 on.
var ErrShape = errors.New("focal length or reading is not a number that a lens can have")

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
// both rise. The law is known from the first mark to the last and nowhere else; a throw
// beyond a last mark at infinity is travel beyond infinity. It returns ErrFewMarks,
// ErrThrow, ErrShape, or a *MarkError for the first faulty mark.
//
// Between marks the law is a monotone cubic in q = 1/(D-c), because a ring is nearly even
// in that. For a lens that moves as a unit the ring is even in the extension
// e = f^2/(D - 2f - e), so c is a little more than 2f; a lens that focuses inside stands
// nearer than it focuses in any case. c = min(2f, D0/2), D0 the first distance.
func FromMarks(marks []Mark, shape Shape) (*Law, error) {
	if len(marks) < 2 {
		return nil, fmt.Errorf("ring: %d marks: %w", len(marks), ErrFewMarks)
	}
	throw := shape.Throw
	if throw <= 0 || math.IsInf(throw, 0) {
		return nil, fmt.Errorf("ring: throw %g deg: %w", throw, ErrThrow)
	}
	if !(shape.Focal > 0) || math.IsInf(shape.Focal, 1) || !(shape.Reading >= 0) || math.IsInf(shape.Reading, 1) {
		return nil, fmt.Errorf("ring: focal length %g m, reading %g deg: %w", shape.Focal, shape.Reading, ErrShape)
	}
	for i := range marks {
		if fault, ok := check(marks, i, throw); !ok {
			return nil, &MarkError{Index: i, Mark: marks[i], Fault: fault}
		}
	}
	return through(marks, shape), nil
}

// through returns the law through marks without a fault.
func through(marks []Mark, shape Shape) *Law {
	first, last := marks[0], marks[len(marks)-1]
	origin := optics.Origin(shape.Focal, first.Distance)
	throw := shape.Throw
	if math.IsNaN(throw) || last.Angle > throw { // 0.7 turn is a hair less than 252 deg
		throw = last.Angle
	}
	s := newScale(marks, origin)
	return &Law{
		curve: s, marks: slices.Clone(marks), measured: true,
		throw: throw, stop: !math.IsNaN(shape.Throw) || math.IsInf(last.Distance, 1),
		origin: origin, reading: shape.Reading, secants: s.secants(),
		nearest: end{first.Distance, first.Angle}, farthest: end{last.Distance, last.Angle},
	}
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
