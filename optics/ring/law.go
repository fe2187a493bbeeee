// Package ring holds the law of a focus ring: which angle of the ring sets
// which distance, from the lens's marks or from the way that it focuses.
//
// Angles are degrees from the closest stop of the ring, 0, to its far stop, the
// throw. Distances are metres from the sensor, as they are engraved; +Inf is
// infinity.
package ring

import "math"

// A Law ties the angle of a ring to the distance it sets. It never changes
// after it is made, and is safe for use by several goroutines at once.
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

// Angle returns the angle in degrees that sets a distance in metres from the
// sensor, held between 0 and the throw. inside is false where the law had to be
// extended: beyond the marks, or nearer than the ring goes.
func (l *Law) Angle(distance float64) (angle float64, inside bool) {
	inside = distance >= l.from && distance <= l.to
	if distance > l.closest {
		return min(max(l.curve.angle(distance), 0), l.throw), inside
	}
	return 0, inside
}

// Distance returns the distance in metres from the sensor that an angle in
// degrees sets; angles beyond a stop of the ring count as that stop. It is +Inf
// from the angle on at which the law reaches infinity.
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

// Closest returns the distance in metres from the sensor at the closest stop.
func (l *Law) Closest() float64 { return l.closest }

// Marks returns a copy of the marks that the law was made from, or nil for a
// law without marks.
func (l *Law) Marks() []Mark { return append([]Mark(nil), l.marks...) }

// reciprocal is 1/u with infinity for what lies at infinity or beyond it.
func reciprocal(u float64) float64 {
	if u <= 0 {
		return math.Inf(1)
	}
	return 1 / u
}
