// Depth of field: the blur disc of a plane, and the zone within a criterion.

package optics

import "math"

// A Setting is a lens at a stop, with a criterion of sharpness. Focal, Number and
// Criterion must be above 0 and finite.
type Setting struct {
	Focal     float64 // focal length, metres
	Number    float64 // f-number, which decides the depth; a T-number decides the light
	Criterion float64 // largest disc on the sensor that looks sharp, metres
	Pupil     float64 // exit over entrance pupil diameter; 0 means 1, a symmetric lens
}

// Hyperfocal returns H = f^2/(N c) + f: the nearest focus in metres that still keeps
// infinity sharp. It does not depend on the pupil ratio.
func (s Setting) Hyperfocal() float64 { return s.reach() + s.Focal }

// Near returns the nearest distance in metres that is sharp with the focus at x:
// x(H-f)/(H+x-2f) for a symmetric lens. x may be +Inf. For x <= f no real image
// forms and nothing is sharp; it then returns x itself.
func (s Setting) Near(x float64) float64 {
	z := s.pupilOffset()
	switch {
	case x <= s.Focal:
		return x
	case math.IsInf(x, 1):
		return s.reach() - z
	}
	g := (x - s.Focal) / s.reach()
	return (x - z*g) / (1 + g)
}

// Far returns the farthest distance in metres that is sharp with the focus at x:
// x(H-f)/(H-x) for a symmetric lens. It returns +Inf if x is the hyperfocal distance
// or more. For x <= f it returns x, as Near does.
func (s Setting) Far(x float64) float64 {
	switch {
	case x <= s.Focal:
		return x
	case x >= s.Hyperfocal():
		return math.Inf(1)
	}
	g := (x - s.Focal) / s.reach()
	if g >= 1 {
		return math.Inf(1)
	}
	return (x + s.pupilOffset()*g) / (1 - g)
}

// Window returns the nearest and the farthest focus in metres that keep a plane at
// d sharp: Far(lo) = d and Near(hi) = d. d may be +Inf; its window begins at the
// hyperfocal distance. hi is +Inf if the plane is still sharp with the lens at
// infinity. The lens cannot focus on a plane at d <= f; its window is the empty
// (d, d).
func (s Setting) Window(d float64) (lo, hi float64) {
	switch {
	case d <= s.Focal:
		return d, d
	case math.IsInf(d, 1):
		return s.Hyperfocal(), d
	}
	h := (d + s.pupilOffset()) / s.reach()
	lo = (d + s.Focal*h) / (1 + h)
	if h >= 1 {
		return lo, math.Inf(1)
	}
	return lo, (d - s.Focal*h) / (1 - h)
}

// Blur returns the diameter in metres of the disc that a point at d makes on the
// sensor with the focus at x: (f^2/N)|d-x| / ((d+z)(x-f)). Here d+z is the distance
// from the entrance pupil. Both d and x are in metres and may be +Inf. It returns
// +Inf for x <= f, where no real image forms, and for a point in the entrance pupil
// or behind it. It does not include diffraction.
func (s Setting) Blur(d, x float64) float64 {
	fromPupil := d + s.pupilOffset()
	if x <= s.Focal || fromPupil <= 0 {
		return math.Inf(1)
	}
	square := s.Focal * s.Focal / s.Number
	switch {
	case math.IsInf(d, 1) && math.IsInf(x, 1):
		return 0
	case math.IsInf(d, 1):
		return square / (x - s.Focal)
	case math.IsInf(x, 1):
		return square / fromPupil
	}
	return square / fromPupil * math.Abs(d-x) / (x - s.Focal)
}

// Effective returns the effective f-number at the sensor with the focus at x in
// metres: N (1 + m/p) at magnification m. It returns +Inf for x <= f.
func (s Setting) Effective(x float64) float64 {
	return s.Number * (1 + Magnification(s.Focal, x)/s.pupil())
}

// reach is f^2/(N c), the hyperfocal distance counted from the front focus.
func (s Setting) reach() float64 {
	return s.Focal * s.Focal / (s.Number * s.Criterion)
}

// pupil is the pupil ratio, with the zero value read as symmetric.
func (s Setting) pupil() float64 {
	if s.Pupil == 0 {
		return 1
	}
	return s.Pupil
}

// pupilOffset is z = f(1/p - 1), how far the entrance pupil lies behind the
// front principal plane; below 0 it lies in front. The disc of a point out of
// focus is the entrance pupil seen from that point, so it is the distance from
// the pupil, d+z, that counts.
func (s Setting) pupilOffset() float64 {
	return s.Focal * (1/s.pupil() - 1)
}
