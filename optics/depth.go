// Depth of field in reverse: the stop that gives a blur, or keeps a depth sharp.

package optics

import "math"

// SplitFocus returns the focus in metres at which a symmetric lens blurs planes
// at a and b equally: the harmonic mean 2ab/(a+b). Both are in metres and above 0;
// either may be +Inf.
func SplitFocus(a, b float64) float64 {
	near, far := min(a, b), max(a, b)
	if math.IsInf(far, 1) {
		return 2 * near
	}
	return 2 * near / (1 + near/far)
}

// Split returns the focus in metres at which this lens blurs planes at a and b
// equally: the harmonic mean of their distances from its entrance pupil. Both are
// in metres; either may be +Inf. The result does not depend on the stop.
func (s Setting) Split(a, b float64) float64 {
	z := s.pupilOffset()
	return SplitFocus(a+z, b+z) - z
}

// StopFor returns the f-number at which a plane at d has a blur of exactly the
// criterion, with the focus at x. Both are in metres. It ignores the f-number of
// the setting. It returns 0 for d = x, and +Inf where Blur returns +Inf.
func (s Setting) StopFor(d, x float64) float64 {
	s.Number = 1 // the disc is in inverse proportion to the f-number
	return s.Blur(d, x) / s.Criterion
}

// StopToFit returns the widest f-number at which one focus keeps everything from
// near to far sharp. Both are in metres, near <= far; far may be +Inf. It returns
// +Inf for near <= f, because no stop helps there.
func (s Setting) StopToFit(near, far float64) float64 {
	if near <= s.Focal {
		return math.Inf(1)
	}
	return s.StopFor(far, s.Split(near, far))
}

// Fits reports whether one focus keeps everything from near to far sharp at the
// stop of the setting. Both are in metres, near <= far; far may be +Inf.
func (s Setting) Fits(near, far float64) bool {
	return s.Number >= s.StopToFit(near, far)
}

// Deepest returns the greatest depth in metres that one focus can keep sharp, half
// of it in front of d and half behind. It returns 0 for d <= f, and +Inf for d =
// +Inf. The front plane is never nearer than f.
//
// With the focus split between d-h and d+h both discs are f^2 h / (N q (x-f)),
// where q = d+z and x = d - h^2/q; setting them to c leaves the quadratic
// h^2 + h f^2/(N c) = q (d-f).
func (s Setting) Deepest(d float64) float64 {
	switch {
	case d <= s.Focal:
		return 0
	case math.IsInf(d, 1):
		return d
	}
	b := s.reach() / 2
	r := math.Sqrt(d+s.pupilOffset()) * math.Sqrt(d-s.Focal)
	half := r * (r / (b + math.Hypot(b, r))) // the positive root, without a difference
	return 2 * min(half, d-s.Focal)
}
