// The law of a ring without marks, on a lens that focuses as a unit.

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
	for _, v := range []struct {
		name  string
		value float64
	}{{"focal length", f}, {"closest focus", closest}, {"throw", throw}} {
		if !(v.value > 0) || math.IsInf(v.value, 1) {
			return nil, fmt.Errorf("ring: %s %g is not above 0 and finite", v.name, v.value)
		}
	}
	x, ok := optics.FromSensor(closest, f)
	if !ok {
		return nil, fmt.Errorf("ring: focal length %g m, closest %g m: %w", f, closest, ErrMacro)
	}
	law := newLaw(unit{f: f, most: optics.Extension(f, x), throw: throw}, throw, closest, math.Inf(1))
	law.closest = closest // as given, not as it comes back through the curve
	return law, nil
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
	return 2*u.f + u.f*u.f*reciprocal(e) + e
}
