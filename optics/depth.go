// The question turned round: which stop gives a blur, or holds a depth.

package optics

import "math"

// SplitFocus returns the focus that blurs planes at a and b alike, 2ab/(a+b):
// the harmonic mean, for a symmetric lens. Both are metres above 0; either may
// be +Inf.
func SplitFocus(a, b float64) float64 {
	near, far := min(a, b), max(a, b)
	if math.IsInf(far, 1) {
		return 2 * near
	}
	return 2 * near / (1 + near/far)
}

// Split returns the focus in metres that blurs planes at a and b alike through
// this lens: the harmonic mean of their distances from its entrance pupil. It
// does not depend on the stop. Either may be +Inf.
func (s Setting) Split(a, b float64) float64 {
	z := s.pupilOffset()
	return SplitFocus(a+z, b+z) - z
}

// StopFor returns the f-number at which a plane at d, with the focus at x, is
// blurred to exactly the criterion; the setting's own f-number plays no part.
// It is 0 at d = x and +Inf where Blur is.
func (s Setting) StopFor(d, x float64) float64 {
	s.Number = 1 // the disc is in inverse proportion to the f-number
	return s.Blur(d, x) / s.Criterion
}

// StopToFit returns the widest f-number at which one focus keeps everything
// from near to far sharp, metres with near <= far; far may be +Inf. It is +Inf
// where near <= f, since no stop helps there.
func (s Setting) StopToFit(near, far float64) float64 {
	if near <= s.Focal {
		return math.Inf(1)
	}
	return s.StopFor(far, s.Split(near, far))
}

// Fits reports whether some focus keeps everything from near to far sharp,
// metres with near <= far; far may be +Inf.
func (s Setting) Fits(near, far float64) bool {
	return s.Number >= s.StopToFit(near, far)
}

// Deepest returns the greatest depth in metres, half of it before d and half
// behind, that one focus can keep sharp. It is 0 for d <= f and +Inf for d =
// +Inf; the front plane never comes nearer than f.
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
