// Package ring holds the law of a focus ring: the distance that each angle of the ring
// sets, and how well that is known. It computes the law from the marks of the lens, or
// from the way that the lens focuses. It also turns the positions of marks, in every
// form that people have them, into degrees.
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
	measured bool    // the law goes through marks that somebody gave
	throw    float64 // degrees; of a law that does not know it, the angle of the last mark
	stop     bool    // the ring ends at throw
	origin   float64 // c in metres: the law is even in 1/(D-c)
	reading  float64 // degrees, one standard deviation
	secants  []float64
	nearest  end
	farthest end
}

// An end is one of the two places between which a law is known.
type end struct{ distance, angle float64 }

// A curve is a law between its ends. Both of its functions rise.
type curve interface {
	angle(distance float64) float64
	distance(angle float64) float64
}

// hair is how far beyond an end, as a part of it, a distance still counts as the end:
// conversions of a distance lose the last digits.
const hair = 1e-9

// Angle returns the angle in degrees that sets a distance in metres from the sensor. It
// returns NaN where the law does not know it: nearer than the nearest distance of the
// law, and farther than its farthest.
func (l *Law) Angle(distance float64) float64 {
	switch {
	case distance >= l.nearest.distance*(1-hair) && distance <= l.nearest.distance:
		return l.nearest.angle
	case distance >= l.farthest.distance && distance <= l.farthest.distance*(1+hair):
		return l.farthest.angle
	case distance > l.nearest.distance && distance < l.farthest.distance:
		return min(max(l.curve.angle(distance), l.nearest.angle), l.farthest.angle)
	}
	return math.NaN()
}

// Held is like Angle, but where the law ends it returns the angle of that end: a ring
// that is turned on and on comes to rest there. Whether a stop of the ring is what holds
// it, Stops says. It is for the edges of windows, never for the mark of a subject. It
// returns NaN for NaN alone.
func (l *Law) Held(distance float64) float64 {
	switch {
	case distance < l.nearest.distance:
		return l.nearest.angle
	case distance > l.farthest.distance:
		return l.farthest.angle
	}
	return l.Angle(distance)
}

// Stops reports whether the ring is known to end at the angle 0, and at the throw. The
// close end is not known if no mark lies there, the far end if nothing says the throw and
// no mark lies at infinity.
func (l *Law) Stops() (near, far bool) { return l.nearest.angle <= turn, l.stop }

// Distance returns the distance in metres from the sensor that an angle in degrees sets.
// An angle beyond a known stop of the ring counts as that stop. From the mark at infinity
// on it returns +Inf. Where the law does not know the distance it returns NaN.
func (l *Law) Distance(angle float64) float64 {
	near, far := l.Stops()
	far = far && l.farthest.angle >= l.throw-turn || math.IsInf(l.farthest.distance, 1)
	switch {
	case angle > l.nearest.angle && angle < l.farthest.angle:
		return l.curve.distance(angle)
	case angle >= l.farthest.angle && (far || angle <= l.farthest.angle+turn):
		return l.farthest.distance
	case angle <= l.nearest.angle && (near || angle >= l.nearest.angle-turn):
		return l.nearest.distance
	}
	return math.NaN()
}

// Throw returns the whole turn of the ring in degrees. Where nothing says it, that is
// the angle of the last mark; Stops tells.
func (l *Law) Throw() float64 { return l.throw }

// Closest returns the nearest distance of the law in metres from the sensor.
func (l *Law) Closest() float64 { return l.nearest.distance }

// Farthest returns the farthest distance of the law in metres from the sensor.
func (l *Law) Farthest() float64 { return l.farthest.distance }

// Measured reports whether the law goes through marks of the lens. If not, it is computed
// from the way that lenses focus.
func (l *Law) Measured() bool { return l.measured }

// Marks returns a copy of the marks of the law, from near to far, or nil if it has none.
func (l *Law) Marks() []Mark { return append([]Mark(nil), l.marks...) }
