// Pupils.

package optics

import "math"

// PupilRatio returns the width of the exit pupil divided by that of the entrance pupil.
// The entrance pupil lies offset in front of the sensor (below 0: behind it), in a lens
// of focal length f that is focused at D from the sensor; all lengths are in metres. It
// returns NaN if the lens cannot focus there, or if no ratio above 0 puts the pupil at
// that place.
//
// An entrance pupil lies z = f (1/p - 1) behind the front principal plane, which a lens
// without space between its principal planes has at the image distance v from the sensor.
// So z = v - offset.
func PupilRatio(offset, D, f float64) float64 {
	x, ok := FromSensor(D, f)
	if !ok {
		return math.NaN()
	}
	p := 1 / (1 + (ImageDistance(f, x)-offset)/f)
	if !(p > 0) || math.IsInf(p, 0) {
		return math.NaN()
	}
	return p
}
