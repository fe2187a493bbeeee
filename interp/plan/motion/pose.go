// Poses: where the camera is and looks, and what its lens sees where.

package motion

import "math"

// A Pose is where the sensor mark of the camera is on the floor, in metres, and where
// the lens looks, in degrees.
type Pose struct{ X, Y, Z, Pan, Tilt float64 }

// A View is where a point is as the lens sees it, in metres: along its axis from the
// sensor mark, across it to the right, and above it.
type View struct{ Along, Across, Above float64 }

// View returns where the camera sees a point of the floor.
func (p Pose) View(x, y, z float64) View {
	x, y, z = x-p.X, y-p.Y, z-p.Z
	sp, cp := math.Sincos(p.Pan * math.Pi / 180)
	st, ct := math.Sincos(p.Tilt * math.Pi / 180)
	level := x*sp + y*cp
	return View{Along: level*ct + z*st, Across: x*cp - y*sp, Above: z*ct - level*st}
}

// Bearing returns at which pan and tilt the camera has a point of the floor in the
// middle of its picture, in degrees.
func (p Pose) Bearing(x, y, z float64) (pan, tilt float64) {
	x, y, z = x-p.X, y-p.Y, z-p.Z
	return math.Atan2(x, y) * 180 / math.Pi, math.Atan2(z, math.Hypot(x, y)) * 180 / math.Pi
}

// Wrapped returns an angle as the shortest turn: over -180 and up to 180 degrees.
func Wrapped(deg float64) float64 { return deg - 360*math.Ceil((deg-180)/360) }

// Tape returns how far a point is from the sensor mark, as a tape laid straight to it
// reads, in metres.
func (v View) Tape() float64 { return math.Hypot(math.Hypot(v.Across, v.Above), v.Along) }

// OffAxis returns the angle between the lens's axis and the way to a point, in degrees.
func (v View) OffAxis() float64 {
	return math.Atan2(math.Hypot(v.Across, v.Above), v.Along) * 180 / math.Pi
}
