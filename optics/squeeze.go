// Anamorphic lenses, and the part of a sensor that is used.
//
// A lens with squeeze S images S times as much across as its focal length says, and the
// picture is stretched by S when it is shown. Its marked focal length f is that of the
// height. So depth and sharpness are those of a lens f on a sensor S times as wide: the
// blur that shows first is the high one (Maxwell, The Aesthetic Role of Depth of Field in
// Anamorphic Cinematography, read: depth is least for the longer focal length. His factor
// S^2 counts on the sensor; ours, derived here, on the picture).
//
// With the squeeze in front the lens looks through a pupil that is S times as narrow as it
// is high, and images across at f/S, so a disc is S^2 times as high as wide on the sensor
// and S times on the picture. With the squeeze at the rear the pupil is round, and so is
// the disc on the picture.

package optics

// SqueezedDisc returns how wide a disc of blur is whose height on the sensor is high, in
// the same unit: on the sensor, and on the picture as it is shown, where the height
// counts as on the sensor. rear says that the squeeze is behind the pupil.
func SqueezedDisc(high, squeeze float64, rear bool) (onSensor, onPicture float64) {
	onSensor = high / (squeeze * squeeze)
	if rear {
		onSensor = high / squeeze
	}
	return onSensor, onSensor * squeeze
}

// SqueezedView returns the angle of view in degrees across a sensor of the given width in
// metres, with the focus at x metres: 2 atan(S w / 2 v). It returns 0 for x <= f.
func SqueezedView(width, f, x, squeeze float64) float64 {
	return FieldOfView(width*squeeze, f, x)
}

// Crop returns the largest part of a sensor that has a shape, width over height, on the
// screen; on the sensor its shape is that over the squeeze. Lengths are in one unit.
func Crop(width, height, shape, squeeze float64) (w, h float64) {
	shape /= squeeze
	if width <= shape*height {
		return width, width / shape
	}
	return height * shape, height
}

// ShapeOnScreen returns the width over the height of a picture as it is shown.
func ShapeOnScreen(width, height, squeeze float64) float64 {
	return width * squeeze / height
}
