// The viewer's side: discs as angles at the eye, and the airy disc.

package optics

import "math"

// arcmin is one minute of arc in radians.
const arcmin = math.Pi / (180 * 60)

// Criterion returns the diameter in metres of the disc on the sensor that a viewer
// sees at the given size in minutes of arc: sensorWidth * viewer * tan(arcmin) /
// screenWidth. The picture fills the screenWidth, and the viewer sits viewer metres
// away.
func Criterion(sensorWidth, screenWidth, viewer, minutes float64) float64 {
	return sensorWidth * viewer * math.Tan(minutes*arcmin) / screenWidth
}

// ArcminAtViewer returns the size in minutes of arc at which the viewer sees a disc
// of blur metres on the sensor. It is the inverse of Criterion. An infinite blur
// gives 5400, a right angle.
func ArcminAtViewer(blur, sensorWidth, screenWidth, viewer float64) float64 {
	return math.Atan(blur*screenWidth/(sensorWidth*viewer)) / arcmin
}

// PictureAngle returns the angle in degrees that a picture of the given width fills,
// seen from straight in front of its middle: 2 atan(w/2d). Both are in metres; the
// distance may be +Inf.
func PictureAngle(width, distance float64) float64 {
	return 2 * math.Atan(width/2/distance) * 180 / math.Pi
}

// DiagonalWidth returns the width of a 16:9 picture with the given diagonal, in the
// unit of the diagonal.
func DiagonalWidth(diag float64) float64 { return diag * 16 / math.Hypot(16, 9) }

// Green is the wavelength in metres that the package uses for diffraction: the
// middle of the visible range.
const Green = 550e-9

// Airy returns the diameter in metres of the first dark ring of the airy disc at
// f-number n: 2.44 lambda N. The wavelength lambda is in metres (G. B. Airy, On the
// Diffraction of an Object-glass with Circular Aperture, 1835).
func Airy(n, lambda float64) float64 { return 2.44 * lambda * n }
