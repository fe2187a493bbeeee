// The viewer's side: discs as angles at the eye, and the airy disc.

package optics

import "math"

// arcmin is one minute of arc in radians.
const arcmin = math.Pi / (180 * 60)

// Criterion returns the disc on the sensor, metres, that a viewer sees under
// the given minutes of arc: sensorWidth * viewer * tan(arcmin) / screenWidth,
// with the picture shown over the whole screenWidth and watched from viewer
// metres away.
func Criterion(sensorWidth, screenWidth, viewer, minutes float64) float64 {
	return sensorWidth * viewer * math.Tan(minutes*arcmin) / screenWidth
}

// ArcminAtViewer returns the minutes of arc under which the viewer sees a disc
// of blur metres on the sensor. It undoes Criterion. An infinite blur gives
// 5400, a right angle.
func ArcminAtViewer(blur, sensorWidth, screenWidth, viewer float64) float64 {
	return math.Atan(blur*screenWidth/(sensorWidth*viewer)) / arcmin
}

// PictureAngle returns the angle in degrees under which a picture of the given
// width is seen from straight before its middle: 2 atan(w/2d). Both are metres;
// the distance may be +Inf.
func PictureAngle(width, distance float64) float64 {
	return 2 * math.Atan(width/2/distance) * 180 / math.Pi
}

// DiagonalWidth returns the width of a 16:9 picture from its diagonal, in the
// same unit.
func DiagonalWidth(diag float64) float64 { return diag * 16 / math.Hypot(16, 9) }

// Green is the wavelength in metres for which the airy disc is given: the
// middle of what the eye sees.
const Green = 550e-9

// Airy returns the diameter in metres of the first dark ring of the airy disc,
// 2.44 lambda N, for a wavelength in metres (G. B. Airy, On the Diffraction of
// an Object-glass with Circular Aperture, 1835).
func Airy(n, lambda float64) float64 { return 2.44 * lambda * n }
