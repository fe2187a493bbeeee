// Blur and depth of field: against a traced ray, textbook forms and themselves.

package optics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// near reports whether two figures agree to a relative tolerance; infinities
// agree with themselves alone.
func near(a, b, tolerance float64) bool {
	return a == b || math.Abs(a-b) <= tolerance*max(math.Abs(a), math.Abs(b))
}

// settings draws lenses from 10 to 300 mm at stops from 0.7 to 32, symmetric
// and not.
func settings(t *rapid.T) Setting {
	return Setting{
		Focal:     rapid.Float64Range(0.010, 0.300).Draw(t, "focal"),
		Number:    rapid.Float64Range(0.7, 32).Draw(t, "number"),
		Criterion: rapid.Float64Range(5e-6, 60e-6).Draw(t, "criterion"),
		Pupil:     rapid.OneOf(rapid.Just(0.0), rapid.Just(1.0), rapid.Float64Range(0.4, 2.5)).Draw(t, "pupil"),
	}
}

// distance draws from two focal lengths to a kilometre, even in its logarithm.
func distance(t *rapid.T, f float64, name string) float64 {
	return math.Exp(rapid.Float64Range(math.Log(2*f), math.Log(1000)).Draw(t, name))
}

// trace sends the ray from a point on the axis at d through the edge of the
// entrance pupil to the sensor of a lens focused at x, by paraxial optics alone:
// straight lines, and a bend of y/f at the principal plane. It returns the
// height at the sensor and the slope behind the lens.
func trace(s Setting, d, x float64) (height, slope float64) {
	p := s.Pupil
	if p == 0 {
		p = 1
	}
	pupilInFront := s.Focal * (1 - 1/p)
	before := s.Focal / s.Number / 2 / (d - pupilInFront)
	atLens := before * d
	slope = before - atLens/s.Focal
	v := 1 / (1/s.Focal - 1/x)
	return atLens + slope*v, slope
}

func TestBlurIsTheTracedDisc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d, x := distance(t, s.Focal, "d"), distance(t, s.Focal, "x")
		height, _ := trace(s, d, x)
		// The trace subtracts two heights of the pupil's size.
		if got, want := s.Blur(d, x), 2*math.Abs(height); math.Abs(got-want) > 1e-11*s.Focal {
			t.Errorf("Blur(%v, %v) = %v, traced %v", d, x, got, want)
		}
	})
}

func TestEffectiveIsTheTracedCone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		x := distance(t, s.Focal, "x")
		_, slope := trace(s, x, x)
		if got, want := s.Effective(x), 1/(2*math.Abs(slope)); !near(got, want, 1e-9) {
			t.Errorf("Effective(%v) = %v, traced %v", x, got, want)
		}
	})
}

func TestPupilRatioIsThatOfThePupils(t *testing.T) {
	// The exit pupil is the lens's image of the entrance pupil.
	for _, p := range []float64{0.5, 0.8, 1.25, 2} {
		s := Setting{Focal: 0.085, Number: 2, Criterion: 25e-6, Pupil: p}
		inFront := -s.pupilOffset()
		if got := s.Focal / (s.Focal - inFront); !near(got, p, 1e-12) {
			t.Errorf("pupil ratio %v: exit over entrance pupil is %v", p, got)
		}
	}
}

func TestBlurAtTheLimitsIsTheCriterion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		x := distance(t, s.Focal, "x")
		if rapid.Bool().Draw(t, "focus at infinity") {
			x = math.Inf(1)
		}
		if got := s.Blur(s.Near(x), x); !near(got, s.Criterion, 1e-9) {
			t.Errorf("blur at Near(%v) = %v is %v, want %v", x, s.Near(x), got, s.Criterion)
		}
		far := s.Far(x)
		got := s.Blur(far, x)
		if beyond := math.IsInf(far, 1) && got <= s.Criterion*(1+1e-9); !beyond && !near(got, s.Criterion, 1e-9) {
			t.Errorf("blur at Far(%v) = %v is %v, want %v", x, far, got, s.Criterion)
		}
	})
}

func TestSymmetricLensHasTheTextbookLimits(t *testing.T) {
	// x(H-f)/(H+x-2f) and x(H-f)/(H-x): S. F. Ray, Applied Photographic Optics,
	// 3rd ed., 2002, ch. 22 (from memory).
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		s.Pupil = 1
		x, h, f := distance(t, s.Focal, "x"), s.Hyperfocal(), s.Focal
		if got, want := s.Near(x), x*(h-f)/(h+x-2*f); !near(got, want, 1e-12) {
			t.Errorf("Near(%v) = %v, want %v", x, got, want)
		}
		if x > 0.999*h {
			return // h-x loses its digits
		}
		if got, want := s.Far(x), x*(h-f)/(h-x); !near(got, want, 1e-9) {
			t.Errorf("Far(%v) = %v, want %v", x, got, want)
		}
	})
}

func TestWindowUndoesTheLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d := distance(t, s.Focal, "d")
		lo, hi := s.Window(d)
		if lo >= d || d >= hi {
			t.Errorf("Window(%v) = %v, %v does not hold it", d, lo, hi)
		}
		if got := s.Far(lo); !near(got, d, 1e-8) {
			t.Errorf("Far(%v) = %v, want %v", lo, got, d)
		}
		switch got := s.Near(hi); {
		case math.IsInf(hi, 1) && got > d*(1+1e-9):
			t.Errorf("infinity is in the window of %v, but is sharp from %v only", d, got)
		case !math.IsInf(hi, 1) && !near(got, d, 1e-8):
			t.Errorf("Near(%v) = %v, want %v", hi, got, d)
		}
	})
}

func TestWindowOfInfinity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		lo, hi := s.Window(math.Inf(1))
		if !near(lo, s.Hyperfocal(), 1e-12) || !math.IsInf(hi, 1) {
			t.Errorf("Window(+Inf) = %v, %v, want %v, +Inf", lo, hi, s.Hyperfocal())
		}
		if got := s.Blur(math.Inf(1), lo); !near(got, s.Criterion, 1e-9) {
			t.Errorf("blur of infinity at %v is %v, want %v", lo, got, s.Criterion)
		}
	})
}

func TestFocusAtHyperfocalIsSharpFromHalfOfIt(t *testing.T) {
	// The Sinclair Handbook of Photography, "Lens Facts" (row H19 of the
	// published figures), here with the focal length kept: a symmetric lens is
	// sharp from H/2 exactly.
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		s.Pupil = 1
		h := s.Hyperfocal()
		if !near(s.Near(h), h/2, 1e-12) || !math.IsInf(s.Far(h), 1) {
			t.Errorf("focus at H = %v: sharp %v to %v", h, s.Near(h), s.Far(h))
		}
	})
}

func TestBlurRunsIntoInfinity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d := distance(t, s.Focal, "d")
		const far = 1e12
		inf := math.Inf(1)
		for _, c := range []struct{ at, limit float64 }{
			{s.Blur(d, far), s.Blur(d, inf)},
			{s.Blur(far, d), s.Blur(inf, d)},
			{s.Near(far), s.Near(inf)},
		} {
			if !near(c.at, c.limit, 1e-6) {
				t.Errorf("%v near infinity, %v at it", c.at, c.limit)
			}
		}
		if got := s.Blur(inf, inf); got != 0 {
			t.Errorf("blur of infinity in focus is %v", got)
		}
	})
}

func TestOutsideTheLens(t *testing.T) {
	s := Setting{Focal: 0.05, Number: 2, Criterion: 25e-6}
	inf := math.Inf(1)
	for _, x := range []float64{-1, 0, 0.05} {
		if s.Near(x) != x || s.Far(x) != x {
			t.Errorf("focus %v: sharp %v to %v, want nothing", x, s.Near(x), s.Far(x))
		}
		if lo, hi := s.Window(x); lo != x || hi != x {
			t.Errorf("Window(%v) = %v, %v, want it empty", x, lo, hi)
		}
		if got := s.Blur(1, x); got != inf {
			t.Errorf("Blur(1, %v) = %v, want +Inf", x, got)
		}
		if got := s.Effective(x); got != inf {
			t.Errorf("Effective(%v) = %v, want +Inf", x, got)
		}
		if got := s.StopToFit(x, 1); got != inf || s.Fits(x, 1) {
			t.Errorf("StopToFit(%v, 1) = %v, want +Inf", x, got)
		}
		if got := s.Deepest(x); got != 0 {
			t.Errorf("Deepest(%v) = %v, want 0", x, got)
		}
	}
	if got := s.Blur(0, 1); got != inf {
		t.Errorf("Blur of a point in the pupil = %v, want +Inf", got)
	}
	if got := s.Deepest(inf); got != inf {
		t.Errorf("Deepest(+Inf) = %v", got)
	}
}

func TestNothingIsNaN(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		lengths := rapid.OneOf(
			rapid.SampledFrom([]float64{-1, 0, s.Focal, s.Hyperfocal(), math.Inf(1), 1e100, 5e-324}),
			rapid.Float64Range(0, 1e6),
		)
		a, b := lengths.Draw(t, "a"), lengths.Draw(t, "b")
		lo, hi := s.Window(a)
		x, _ := FromSensor(a, s.Focal)
		for i, v := range []float64{
			s.Near(a), s.Far(a), lo, hi, s.Blur(a, b), s.StopFor(a, b), s.Effective(a),
			s.StopToFit(min(a, b), max(a, b)), s.Deepest(a), x, ToSensor(a, s.Focal),
			ImageDistance(s.Focal, a), Extension(s.Focal, a), FieldOfView(0.036, s.Focal, a),
		} {
			if math.IsNaN(v) {
				t.Errorf("figure %d of %v, %v is NaN", i, a, b)
			}
		}
	})
}
