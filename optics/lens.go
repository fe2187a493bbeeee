// Conjugate distances: where the image lies, and the tape from the sensor.

package optics

import "math"

// ImageDistance returns v = f x/(x-f) in metres, from the rear principal plane
// to the image of a plane at x. x may be +Inf, which gives f; at x <= f no real
// image forms and it is +Inf.
func ImageDistance(f, x float64) float64 { return f + Extension(f, x) }

// Extension returns e = f^2/(x-f) in metres: how far a lens that focuses as a
// unit stands out from its infinity stop with the focus at x. x may be +Inf; at
// x <= f it is +Inf.
func Extension(f, x float64) float64 { return f * Magnification(f, x) }

// Magnification returns m = f/(x-f), the size of an image over the size of what
// it shows, with the focus at x in metres. x may be +Inf; at x <= f it is +Inf.
func Magnification(f, x float64) float64 {
	if x <= f {
		return math.Inf(1)
	}
	return f / (x - f)
}

// FromSensor turns a tape from the sensor, D in metres, into the distance from
// the lens: D = x + v with v = f x/(x-f), so x = (D + sqrt(D^2 - 4 f D))/2, the
// root on the subject's side of 1:1. D may be +Inf. Nothing is in focus at
// D < 4f: then ok is false and x is 0. The space between the principal planes
// counts as none.
func FromSensor(D, f float64) (x float64, ok bool) {
	switch {
	case math.IsInf(D, 1):
		return D, true
	case !(D > 0) || D < 4*f:
		return 0, false
	}
	return D / 2 * (1 + math.Sqrt(1-4*f/D)), true
}

// ToSensor turns a focus at x from the lens into the tape from the sensor,
// x + f x/(x-f) in metres. x may be +Inf; at x <= f the image never forms and
// the result is +Inf. It undoes FromSensor for x >= 2f.
func ToSensor(x, f float64) float64 { return x + ImageDistance(f, x) }

// FieldOfView returns the angle in degrees that a sensor of the given width in
// metres sees with the focus at x: 2 atan(w/2v). x may be +Inf; at x <= f it
// is 0.
func FieldOfView(width, f, x float64) float64 {
	return PictureAngle(width, ImageDistance(f, x))
}

// Breathing returns by how many percent the image is larger with the focus at
// x1 than at x2, for a lens that focuses as a unit: 100 (v(x1)/v(x2) - 1).
// Either may be +Inf; both must be above f.
func Breathing(f, x1, x2 float64) float64 {
	return 100 * (ImageDistance(f, x1)/ImageDistance(f, x2) - 1)
}

// PlaneDistance returns the distance in metres of the plane of focus through a
// point that a tape reads at the given length, at an angle in degrees off the
// lens axis: L cos a. Focus lies in planes, so a slanted tape reads too long.
func PlaneDistance(tape, angle float64) float64 {
	return tape * math.Cos(angle*math.Pi/180)
}
