// Values that change along the ring, such as breathing and squeeze.

package ring

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// A Value is a figure of a lens at a distance.
type Value struct {
	Distance float64 // metres from the sensor, +Inf for infinity
	Value    float64
}

// A Figure is a figure of a lens over the distance. The zero Figure is 0 everywhere.
type Figure struct {
	origin float64
	qs     []float64 // rising: from far to near
	values []float64
	smooth *interp.FritschButland // nil: straight between the values
}

// Straight returns the figure that is straight in 1/(D-c) between values, and beyond them
// stays as it is at the nearest and the farthest. origin is c in metres.
func Straight(values []Value, origin float64) Figure { return newFigure(values, origin) }

// Smooth returns the figure that is a monotone cubic in 1/(D-c) through values, as the
// angle of a ring is; two values make a line. Nearer than the nearest value it goes on as
// the line through the nearest two, beyond the farthest it stays. origin is c in metres.
func Smooth(values []Value, origin float64) Figure {
	a := newFigure(values, origin)
	if len(a.qs) >= 2 {
		a.smooth = new(interp.FritschButland)
		if err := a.smooth.Fit(a.qs, a.values); err != nil {
			panic(err) // it returns none: two points in one place are left out
		}
	}
	return a
}

// newFigure sorts the values from far to near; of two at one distance the first counts.
func newFigure(values []Value, origin float64) Figure {
	list := slices.Clone(values)
	slices.SortStableFunc(list, func(a, b Value) int { return cmp.Compare(b.Distance, a.Distance) })
	a := Figure{origin: origin}
	for _, v := range list {
		q := coordinate(v.Distance, origin)
		if n := len(a.qs); n > 0 && q-a.qs[n-1] <= spacing {
			continue
		}
		a.qs, a.values = append(a.qs, q), append(a.values, v.Value)
	}
	return a
}

// At returns the figure at a distance in metres from the sensor, which may be +Inf. At a
// distance that is not known it is NaN.
func (a Figure) At(distance float64) float64 {
	n := len(a.qs)
	if n == 0 {
		return 0
	}
	q, last := coordinate(distance, a.origin), n-1
	switch {
	case math.IsNaN(q):
		return q
	case q <= a.qs[0]:
		return a.values[0]
	case q >= a.qs[last] && (a.smooth == nil || distance <= a.origin):
		return a.values[last]
	case q >= a.qs[last]:
		slope := (a.values[last] - a.values[last-1]) / (a.qs[last] - a.qs[last-1])
		return a.values[last] + slope*(q-a.qs[last])
	case a.smooth != nil:
		return a.smooth.Predict(q)
	}
	i, _ := slices.BinarySearch(a.qs, q)
	t := (q - a.qs[i-1]) / (a.qs[i] - a.qs[i-1])
	return a.values[i-1] + t*(a.values[i]-a.values[i-1])
}

// Known reports whether there is a value.
func (a Figure) Known() bool { return len(a.qs) > 0 }

// Most returns the largest of the values, or NaN without one.
func (a Figure) Most() float64 {
	if len(a.values) == 0 {
		return math.NaN()
	}
	return slices.Max(a.values)
}
