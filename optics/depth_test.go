// The stop and the depth, by going there and looking.

package optics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSplitFocus(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ a, b, want float64 }{
		{1, 3, 1.5}, // the harmonic mean by its definition: 2/(1/1 + 1/3)
		{3, 1, 1.5},
		{2, 2, 2},
		{2, inf, 4},
		{inf, 2, 4},
		{inf, inf, inf},
	} {
		if got := SplitFocus(c.a, c.b); got != c.want {
			t.Errorf("SplitFocus(%v, %v) = %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

func TestSplitOfTheLimitsIsTheFocus(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		x := distance(t, s.Focal, "x")
		near1, far := s.Near(x), s.Far(x)
		if math.IsInf(far, 1) {
			return // beyond the hyperfocal distance the far limit says no more
		}
		if got := s.Split(near1, far); !near(got, x, 1e-9) {
			t.Errorf("Split(%v, %v) = %v, want %v", near1, far, got, x)
		}
		if s.pupil() == 1 && !near(SplitFocus(near1, far), x, 1e-9) {
			t.Errorf("SplitFocus(%v, %v) = %v, want %v", near1, far, SplitFocus(near1, far), x)
		}
	})
}

func TestStopForGivesTheCriterion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d, x := distance(t, s.Focal, "d"), distance(t, s.Focal, "x")
		if d == x {
			return
		}
		s.Number = s.StopFor(d, x)
		if got := s.Blur(d, x); !near(got, s.Criterion, 1e-9) {
			t.Errorf("blur at f/%v is %v, want %v", s.Number, got, s.Criterion)
		}
	})
}

func TestStopToFitClosesTheWindows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		a := distance(t, s.Focal, "a")
		b := a * (1 + rapid.Float64Range(0.001, 10).Draw(t, "depth"))
		if rapid.Bool().Draw(t, "to infinity") {
			b = math.Inf(1)
		}
		s.Number = s.StopToFit(a, b)
		_, hi := s.Window(a)
		lo, _ := s.Window(b)
		if split := s.Split(a, b); !near(lo, split, 1e-9) || !near(hi, split, 1e-9) {
			t.Errorf("%v to %v at f/%v: windows meet at %v and %v, want %v", a, b, s.Number, lo, hi, split)
		}
		stop := s.Number
		if s.Number = stop * 1.001; !s.Fits(a, b) {
			t.Errorf("%v to %v does not fit at f/%v", a, b, s.Number)
		}
		if s.Number = stop / 1.001; s.Fits(a, b) {
			t.Errorf("%v to %v fits at f/%v", a, b, s.Number)
		}
	})
}

func TestDeepestJustFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d := distance(t, s.Focal, "d")
		half := s.Deepest(d) / 2
		if !(half > 0 && d-half > s.Focal) {
			t.Fatalf("half depth %v at %v", half, d)
		}
		if got := s.StopToFit(d-half, d+half); !near(got, s.Number, 1e-6) {
			t.Errorf("depth %v at %v wants f/%v, is at f/%v", 2*half, d, got, s.Number)
		}
	})
}

func TestDeepestIsShortOfTheLimits(t *testing.T) {
	// The depth of field round a focus lies more behind it than before; even
	// halves are held by moving the focus, so they reach no farther than both
	// limits together.
	rapid.Check(t, func(t *rapid.T) {
		s := settings(t)
		d := distance(t, s.Focal, "d")
		deep := s.Deepest(d)
		if before := d - s.Near(d); deep/2 < before*(1-1e-9) {
			t.Errorf("half of the deepest, %v, is less than the %v before the focus", deep/2, before)
		}
		if deep > (s.Far(d)-s.Near(d))*(1+1e-9) {
			t.Errorf("deepest %v is more than the whole depth %v", deep, s.Far(d)-s.Near(d))
		}
	})
}

func TestRackStopsShowing(t *testing.T) {
	// With a normal lens, from 1.7 to 3 m, the subject that is left stops looking
	// soft between f/5.6 and f/11, and sooner on a smaller sensor: common
	// practice, no source. Seen from 18 m on a screen of 12 m, soft is 4.6 arcmin.
	previous := math.Inf(1)
	for _, c := range []struct{ sensor, focal float64 }{
		{36 * mm, 50 * mm},
		{24.89 * mm, 35 * mm},
	} {
		s := Setting{Focal: c.focal, Number: 1, Criterion: Criterion(c.sensor, 12, 18, 4.6)}
		stop := s.StopFor(1.7, 3)
		if stop < ExactStop(5.6) || stop > ExactStop(11) {
			t.Errorf("%v m on %v m: soft up to f/%v", c.focal, c.sensor, stop)
		}
		if stop >= previous {
			t.Errorf("the smaller sensor of %v m stays soft up to f/%v, the larger to f/%v", c.sensor, stop, previous)
		}
		previous = stop
	}
}
