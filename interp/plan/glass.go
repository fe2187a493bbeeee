// What the glass of a shot does beside focusing.

package plan

import "math"

// PictureW returns the width in metres of the sensor that would show as much without a
// squeeze as the picture does with it.
func (o *Optics) PictureW() float64 { return o.SensorW * o.Squeeze() }

// Squeeze returns by how much the picture is stretched across when it is shown: the
// squeeze at infinity, 1 for a lens without one. Near, lenses may squeeze less, and
// nobody stretches a picture by another factor for that.
func (o *Optics) Squeeze() float64 {
	if !o.Glass.Squeeze.Known() {
		return 1
	}
	return o.Glass.Squeeze.At(math.Inf(1))
}

// FocalTo returns the focal length of all the glass at t in metres, with the focus at x
// metres from the lens.
func (s *Shot) FocalTo(x, t float64) float64 { return s.Optics.Glass.FocalTo(s.Focal(t), x) }

// SensorTape returns the distance in metres from the sensor of what is x metres from the
// lens at t. It returns +Inf where no image forms.
func (s *Shot) SensorTape(x, t float64) float64 { return s.Optics.Glass.SensorTape(s.Focal(t), x) }

// FromSensor converts a distance from the sensor at t into the distance from the lens,
// both in metres. ok is false where the lens forms no image.
func (s *Shot) FromSensor(tape, t float64) (x float64, ok bool) {
	return s.Optics.Glass.FromSensor(s.Focal(t), tape)
}

// RingTape returns the distance in metres from the sensor that the ring has to show, to
// focus at x metres from the lens at t; NaN where no place of the ring can do it.
func (s *Shot) RingTape(x, t float64) float64 { return s.Optics.Glass.RingTape(s.Focal(t), x) }

// Farthest returns the farthest distance in metres from the lens that it can focus at: at
// infinity without a close-up lens and a tube.
func (s *Shot) Farthest(t float64) float64 {
	return s.Optics.Glass.Reaches(s.Focal(t), math.Inf(1))
}

// Closest returns the closest distance in metres from the lens that it can focus at, with
// its close-up lens and its tube. It returns NaN where no image forms there.
func (s *Shot) Closest(t float64) float64 {
	return s.Optics.Glass.Reaches(s.Focal(t), s.Optics.Glass.Closest)
}

// NearLoss returns the light lost with the focus at x metres from the lens at t, in stops
// against infinity.
func (s *Shot) NearLoss(x, t float64) float64 {
	return s.Optics.Glass.NearLoss(s.Setting(t), s.Focal(t), x)
}

// LossByUnit reports whether the light lost near is that of a lens that focuses as a
// unit, because nothing else is said of it.
func (o *Optics) LossByUnit() bool { return !o.Glass.Darkens.Known() && !o.Glass.Ratio.Known() }

// Grown returns how much larger the image is with the focus at x metres from the lens than
// at infinity, in percent, where that is said for distances; NaN where it is not.
func (s *Shot) Grown(x, t float64) float64 {
	if g := &s.Optics.Glass; g.Breathing.Known() {
		return g.Breathing.At(s.SensorTape(x, t))
	}
	return math.NaN()
}
