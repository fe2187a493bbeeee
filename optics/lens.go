// Conjugate distances: the image of a plane, and the tape from the sensor.

package optics

import "math"

// ImageDistance returns v = f x/(x-f) in metres: the distance from the rear
// principal plane to the image of a plane at x. x may be +Inf, which gives f. For
// x <= f no real image forms, and it returns +Inf.
func ImageDistance(f, x float64) float64 { return f + Extension(f, x) }

// Extension returns e = f^2/(x-f) in metres: how far a lens that focuses as a unit
// has moved out from its infinity position, with the focus at x. x may be +Inf. It
// returns +Inf for x <= f.
func Extension(f, x float64) float64 { return f * Magnification(f, x) }

// Magnification returns m = f/(x-f): the size of an image divided by the size of
// the object, with the focus at x in metres. x may be +Inf. It returns +Inf for
// x <= f.
func Magnification(f, x float64) float64 {
	if x <= f {
		return math.Inf(1)
	}
	return f / (x - f)
}

// FromSensor converts a tape reading D from the sensor into the distance x from the
// lens, both in metres. D = x + v with v = f x/(x-f), so x = (D + sqrt(D^2 - 4 f D))/2,
// the root on the subject's side of 1:1. D may be +Inf. For D < 4f nothing can be
// in focus: ok is false and x is 0. The formula ignores the space between the
// principal planes.
func FromSensor(D, f float64) (x float64, ok bool) {
	switch {
	case math.IsInf(D, 1):
		return D, true
	case !(D > 0) || D < 4*f:
		return 0, false
	}
	return D / 2 * (1 + math.Sqrt(1-4*f/D)), true
}

// ToSensor converts a focus at x from the lens into the tape reading from the
// sensor, x + f x/(x-f), both in metres. x may be +Inf. For x <= f no image forms,
// and it returns +Inf. It is the inverse of FromSensor for x >= 2f.
func ToSensor(x, f float64) float64 { return x + ImageDistance(f, x) }

// FromSensorApart is FromSensor for a lens whose principal planes lie apart metres apart,
// below 0 where they cross: D - apart = x + f x/(x-f).
func FromSensorApart(D, f, apart float64) (x float64, ok bool) { return FromSensor(D-apart, f) }

// ToSensorApart is the inverse of FromSensorApart for x >= 2f, and +Inf for x <= f.
func ToSensorApart(x, f, apart float64) float64 { return ToSensor(x, f) + apart }

// FieldOfView returns the angle of view in degrees of a sensor of the given width
// in metres, with the focus at x: 2 atan(w/2v). x may be +Inf. It returns 0 for
// x <= f.
func FieldOfView(width, f, x float64) float64 {
	return PictureAngle(width, ImageDistance(f, x))
}

// Breathing returns how much larger the image is with the focus at x1 than at x2,
// in percent: 100 (v(x1)/v(x2) - 1). Both are in metres and above f; either may be
// +Inf. The formula is for a lens that focuses as a unit.
func Breathing(f, x1, x2 float64) float64 {
	return 100 * (ImageDistance(f, x1)/ImageDistance(f, x2) - 1)
}

// PlaneDistance returns the distance in metres of the plane of focus through a
// point: L cos a. L is the tape reading to the point in metres, a the angle of the
// tape to the lens axis in degrees. Focus lies in planes, so a slanted tape reads
// too long.
func PlaneDistance(tape, angle float64) float64 {
	return tape * math.Cos(angle*math.Pi/180)
}
