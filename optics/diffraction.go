// Diffraction: the blur that a small stop causes by itself, and the part of the
// criterion that it leaves for defocus.
//
// A lens that is stopped down blurs every point, in focus or not. The two blurs
// combine as the root of the sum of their squares. Compared with the exact transfer
// function of a defocused circular pupil, the root is never too small. It is at most
// 13.4 % too large, near a quarter of a wave of defocus, so it errs on the careful
// side (H. H. Hopkins, The frequency response of a defocused optical system, 1955).
//
// The disc of diffraction is not the airy disc up to its first dark ring, because
// most of that is faint. It is the uniform disc whose contrast falls to one half at
// the same frequency as that of the pattern: 0.7051 over 0.4040 lambda N.

package optics

import "math"

const (
	// halfContrast is the diameter of the uniform disc that blurs fine detail as
	// much as diffraction does, in wavelengths times the f-number.
	halfContrast = 1.745

	// pedestal is how much wider than diffraction alone a blur may be before it
	// shows, where diffraction is wider than the criterion. Our own choice; such
	// fractions are reviewed by Watson & Ahumada, Blur clarified, J Vision 11(5),
	// 2011 (the value itself was not seen there).
	pedestal = 1.15
)

// Diffraction returns the diameter in metres of the disc that diffraction alone
// makes of every point on the sensor. The focus is at x in metres, the light green.
// It returns +Inf for x <= f.
func (s Setting) Diffraction(x float64) float64 {
	return halfContrast * Green * s.Effective(x)
}

// Judged returns the setting with the criterion that diffraction leaves for defocus,
// with the focus at x in metres. A disc of defocus of that size, combined with
// diffraction, is as wide as the full criterion. Where diffraction alone is wider
// than the criterion, nobody sees such a disc beside it. The new criterion is above
// 0 wherever the old one is. For x <= f no image forms, and Judged returns the
// setting unchanged.
func (s Setting) Judged(x float64) Setting {
	if a := s.Diffraction(x); !math.IsInf(a, 1) {
		s.Criterion = DefocusLeft(s.Criterion, a)
	}
	return s
}

// DefocusLeft returns the widest disc of defocus that stays within a criterion
// when combined with a disc of diffraction. All three are diameters in one unit. The
// criterion must be above 0, and diffraction must not be negative.
func DefocusLeft(criterion, diffraction float64) float64 {
	whole := max(criterion, pedestal*diffraction)
	return math.Sqrt((whole - diffraction) * (whole + diffraction))
}

// FitsJudged is Fits with diffraction: it reports whether one focus keeps everything
// from near to far sharp by the criterion of Judged. Both are in metres, near <= far.
func (s Setting) FitsJudged(near, far float64) bool {
	return s.Judged(s.Split(near, far)).Fits(near, far)
}

// StopToFitJudged is StopToFit with diffraction: it returns the widest f-number at
// which FitsJudged is true, and +Inf for near <= f.
//
// With the focus split, the disc of defocus is B/N and that of diffraction k N. As
// long as the criterion c is wider, B^2/N^2 + k^2 N^2 <= c^2 is a quadratic in N^2.
// If it has no root, or if diffraction is already wider there, the pedestal decides:
// defocus must be under the part that it leaves, which is in proportion to N.
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

// NearLoss returns the light that a lens loses with the focus at x in metres,
// compared with its focus at infinity, in stops: 2 log2(1 + m/p). It returns 0 at
// infinity, and +Inf for x <= f. The formula is for a lens that focuses as a unit;
// other lenses may lose less.
func (s Setting) NearLoss(x float64) float64 {
	return LightLost(Magnification(s.Focal, x), s.pupil())
}
