// The law of a ring without marks.

package ring

import (
	"errors"
	"fmt"
	"math"

	"pullscore/optics"
)

// ErrMacro means that a lens focuses nearer than four focal lengths from the sensor.
// No unit-focusing lens forms an image there.
var ErrMacro = errors.New("closest focus is nearer than four focal lengths from the sensor")

// Unit returns the law of a lens that moves as a unit, in proportion to the turn of the
// ring: angle = throw (1 - e/e_closest), where e is optics.Extension. f is the focal
// length in metres, closest the nearest focus in metres from the sensor, throw the whole
// turn in degrees. It returns ErrMacro for closest < 4f, and another error if a value is
// not above 0 and finite.
func Unit(f, closest, throw float64) (*Law, error) {
	if err := sound(f, closest, throw); err != nil {
		return nil, err
	}
	x, ok := optics.FromSensor(closest, f)
	if !ok {
		return nil, fmt.Errorf("ring: focal length %g m, closest %g m: %w", f, closest, ErrMacro)
	}
	return &Law{
		curve: unit{f: f, most: optics.Extension(f, x), throw: throw},
		throw: throw, stop: true, origin: math.NaN(), reading: math.NaN(),
		nearest: end{closest, 0}, farthest: end{math.Inf(1), throw},
	}, nil
}

// Macro returns the law of a lens that focuses nearer than four focal lengths, so that it
// cannot move as a unit. Nothing is known of its ring, and the law is even in 1/(D-c), as
// one through two marks, the closest stop at 0 and infinity at the throw; its K is that of
// one gap alone. It is not measured. The values are as in Unit.
func Macro(f, closest, throw float64) (*Law, error) {
	if err := sound(f, closest, throw); err != nil {
		return nil, err
	}
	marks := []Mark{{Distance: closest, Default: true}, {Distance: math.Inf(1), Angle: throw, Default: true}}
	law, err := FromMarks(marks, Shape{Focal: f, Throw: throw})
	if err != nil {
		return nil, err
	}
	law.measured = false
	return law, nil
}

// sound returns an error if one of the values is not above 0 and finite.
func sound(f, closest, throw float64) error {
	for _, v := range []struct {
		name  string
		value float64
	}{{"focal length", f}, {"closest focus", closest}, {"throw", throw}} {
		if !(v.value > 0) || math.IsInf(v.value, 1) {
			return fmt.Errorf("ring: %s %g is not above 0 and finite", v.name, v.value)
		}
	}
	return nil
}

// unit is the curve of Unit: most is the extension in metres at the closest
// focus.
type unit struct{ f, most, throw float64 }

func (u unit) angle(distance float64) float64 {
	x, ok := optics.FromSensor(distance, u.f)
	if !ok {
		return 0
	}
	return u.throw * (1 - optics.Extension(u.f, x)/u.most)
}

// distance needs no search: D = x + v with x = f + f^2/e and v = f + e.
func (u unit) distance(angle float64) float64 {
	e := u.most * (1 - angle/u.throw)
	if e <= 0 {
		return math.Inf(1)
	}
	return 2*u.f + u.f*u.f/e + e
}
