// Package ring holds the law of a focus ring: the distance that each angle of the ring
// sets. It computes the law from the marks of the lens, or from the way that the lens
// focuses.
//
// Angles are in degrees from the close end of the ring, 0, to its far end, the throw.
// Distances are in metres from the sensor, as on the marks; +Inf is infinity.
package ring

import "math"

// A Law relates the angle of a ring to the distance that it sets. It never changes, and
// several goroutines may use it at once.
type Law struct {
	curve    curve
	marks    []Mark
	throw    float64 // degrees
	closest  float64 // metres at angle 0
	farthest float64 // metres at angle throw
	from, to float64 // metres between which the law is known, not extended
}

// A curve is a law without the stops of the ring. Both of its functions rise.
type curve interface {
	angle(distance float64) float64
	distance(angle float64) float64
}

// newLaw puts the stops of the ring round a curve known from one distance to
// another.
func newLaw(c curve, throw, from, to float64) *Law {
	return &Law{
		curve: c, throw: throw, from: from, to: to,
		closest: c.distance(0), farthest: c.distance(throw),
	}
}

// Angle returns the angle in degrees that sets a distance in metres from the sensor,
// limited to 0 and the throw. inside is false if the distance is beyond the marks, or
// nearer than the ring can focus; the law is then extended.
func (l *Law) Angle(distance float64) (angle float64, inside bool) {
	inside = distance >= l.from && distance <= l.to
	if distance > l.closest {
		return min(max(l.curve.angle(distance), 0), l.throw), inside
	}
	return 0, inside
}

// Distance returns the distance in metres from the sensor that an angle in degrees sets.
// An angle beyond an end of the ring counts as that end. It returns +Inf from the angle
// at which the law reaches infinity.
func (l *Law) Distance(angle float64) float64 {
	switch {
	case angle >= l.throw:
		return l.farthest
	case angle > 0:
		return l.curve.distance(angle)
	}
	return l.closest
}

// Throw returns the whole turn of the ring in degrees.
func (l *Law) Throw() float64 { return l.throw }

// Closest returns the distance in metres from the sensor at the close end of the ring.
func (l *Law) Closest() float64 { return l.closest }

// Marks returns a copy of the marks of the law, or nil if it has none.
func (l *Law) Marks() []Mark { return append([]Mark(nil), l.marks...) }

// reciprocal returns 1/u, or +Inf if u is not above 0.
func reciprocal(u float64) float64 {
	if u <= 0 {
		return math.Inf(1)
	}
	return 1 / u
}
