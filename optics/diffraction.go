// Diffraction: what a small stop blurs by itself, and what it leaves of the
// criterion for being out of focus.
//
// A lens that is stopped down blurs every point, in focus or not. Two blurs do
// not add up: here they are put together as the root of the sum of their squares.
// Beside the exact transfer function of a defocused circular pupil (H. H.
// Hopkins, The frequency response of a defocused optical system, 1955) that reads
// at most 13.4 % too large, most of all round a quarter of a wave of defocus, and
// never too small, so it errs on the careful side.
//
// The disc of diffraction is not the airy disc to its first dark ring, most of
// which is faint, but the uniform disc whose contrast falls to one half at the
// same frequency as that of the pattern: 0.7051 over 0.4040 lambda N.

package optics

import "math"

const (
	// halfContrast is the diameter of the uniform disc that does to fine detail
	// what diffraction does, in wavelengths times the f-number.
	halfContrast = 1.745

	// pedestal is how much wider than diffraction alone a blur may be before it
	// shows, where diffraction is wider than the criterion. Our own choice; such
	// fractions are reviewed by Watson & Ahumada, Blur clarified, J Vision 11(5),
	// 2011 (the value itself was not seen there).
	pedestal = 1.15
)

// Diffraction returns the diameter in metres of the disc on the sensor that
// diffraction alone makes of every point with the focus at x in metres, in green
// light. It is +Inf at x <= f.
func (s Setting) Diffraction(x float64) float64 {
	return halfContrast * Green * s.Effective(x)
}

// Judged returns the setting with what diffraction leaves of its criterion with
// the focus at x in metres: a disc of defocus up to that, together with
// diffraction, is as wide as the criterion, or where diffraction alone is wider,
// not seen beside it. It is above 0 wherever the criterion is. At x <= f, where no
// image forms, the setting comes back as it is.
func (s Setting) Judged(x float64) Setting {
	if a := s.Diffraction(x); !math.IsInf(a, 1) {
		s.Criterion = DefocusLeft(s.Criterion, a)
	}
	return s
}

// DefocusLeft returns the widest disc of defocus that stays within a criterion
// beside a disc of diffraction; all are diameters in one unit, the criterion above
// 0 and diffraction not below it.
func DefocusLeft(criterion, diffraction float64) float64 {
	whole := max(criterion, pedestal*diffraction)
	return math.Sqrt((whole - diffraction) * (whole + diffraction))
}

// Blurred returns a disc of defocus and one of diffraction together.
func Blurred(defocus, diffraction float64) float64 { return math.Hypot(defocus, diffraction) }

// FitsJudged reports whether some focus keeps everything from near to far within
// what diffraction leaves of the criterion, metres with near <= far.
func (s Setting) FitsJudged(near, far float64) bool {
	return s.Judged(s.Split(near, far)).Fits(near, far)
}

// StopToFitJudged is StopToFit with diffraction: the widest f-number at which
// FitsJudged holds, +Inf where near <= f.
//
// With the focus split the disc of defocus is B/N and that of diffraction k N. As
// long as the criterion c is the wider, B^2/N^2 + k^2 N^2 <= c^2 is a quadratic
// in N^2. Where it has no root, or where diffraction rules at it already, defocus
// must be under what the pedestal leaves, which is in proportion to N.
func (s Setting) StopToFitJudged(near, far float64) float64 {
	if near <= s.Focal {
		return math.Inf(1)
	}
	x := s.Split(near, far)
	s.Number = 1
	blur, k, c := s.Blur(far, x), s.Diffraction(x), s.Criterion
	if blur == 0 {
		return 0
	}
	if root := (c*c - 2*k*blur) * (c*c + 2*k*blur); root >= 0 {
		n := blur * math.Sqrt(2/(c*c+math.Sqrt(root)))
		if pedestal*k*n <= c {
			return n
		}
	}
	return max(math.Sqrt(blur/k/math.Sqrt((pedestal-1)*(pedestal+1))), c/(pedestal*k))
}

// NearLoss returns how many stops of light a lens that focuses as a unit loses
// with the focus at x in metres, against its focus at infinity: 2 log2(1 + m/p).
// It is 0 at infinity and +Inf at x <= f. Other lenses may lose less.
func (s Setting) NearLoss(x float64) float64 {
	return 2 * math.Log2(1+Magnification(s.Focal, x)/s.pupil())
}
