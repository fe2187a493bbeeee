// The law of a unit-focusing lens, against the lens equation.

package ring

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// agree reports whether two figures agree to a relative tolerance; infinities
// agree with themselves alone.
func agree(a, b, tolerance float64) bool {
	return a == b || math.Abs(a-b) <= tolerance*max(math.Abs(a), math.Abs(b))
}

// units draws a lens from 10 to 300 mm with its closest focus and throw.
func units(t *rapid.T) (f, closest, throw float64) {
	f = rapid.Float64Range(0.010, 0.300).Draw(t, "f")
	closest = f * rapid.Float64Range(4.01, 40).Draw(t, "closest/f")
	throw = rapid.Float64Range(30, 330).Draw(t, "throw")
	return f, closest, throw
}

func TestUnitKeepsTheLensEquation(t *testing.T) {
	// 1/f = 1/s + 1/s' with D = s + s', any optics text: the extension s' - f
	// shrinks in proportion to the angle.
	rapid.Check(t, func(t *rapid.T) {
		f, closest, throw := units(t)
		law, err := Unit(f, closest, throw)
		if err != nil {
			t.Fatal(err)
		}
		s := closest/2 + math.Sqrt(closest*closest/4-f*closest)
		most := closest - s - f
		angle := throw * rapid.Float64Range(0.01, 0.99).Draw(t, "part")
		image := f + most*(1-angle/throw)
		subject := law.Distance(angle) - image
		if !agree(1/subject+1/image, 1/f, 1e-9) {
			t.Errorf("at %v deg: 1/%v + 1/%v is not 1/%v", angle, subject, image, f)
		}
	})
}

func TestUnitRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, closest, throw := units(t)
		law, err := Unit(f, closest, throw)
		if err != nil {
			t.Fatal(err)
		}
		checkRoundTrip(t, law, closest, 1000)
	})
}

func TestUnitAtTheStops(t *testing.T) {
	law, err := Unit(0.05, 0.45, 180)
	if err != nil {
		t.Fatal(err)
	}
	inf := math.Inf(1)
	nan := math.NaN()
	for _, c := range []struct{ distance, angle, held float64 }{
		{0.45, 0, 0},
		{inf, 180, 180},
		{0.44, nan, 0},
		{0.1, nan, 0}, // nearer than 4f, where nothing focuses
		{0, nan, 0},
		{-1, nan, 0},
		{nan, nan, nan},
	} {
		if angle, held := law.Angle(c.distance), law.Held(c.distance); !alike(angle, c.angle) || !alike(held, c.held) {
			t.Errorf("Angle(%v) = %v, held %v, want %v, %v", c.distance, angle, held, c.angle, c.held)
		}
	}
	if near, far := law.Stops(); !near || !far || law.Measured() {
		t.Errorf("stops %v %v, measured %v", near, far, law.Measured())
	}
	for angle, want := range map[float64]float64{-5: 0.45, 0: 0.45, 180: inf, 200: inf} {
		if got := law.Distance(angle); got != want {
			t.Errorf("Distance(%v) = %v, want %v", angle, got, want)
		}
	}
	if law.Throw() != 180 || law.Closest() != 0.45 || law.Marks() != nil {
		t.Errorf("throw %v, closest %v, marks %v", law.Throw(), law.Closest(), law.Marks())
	}
}

func TestUnitFaults(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct{ f, closest, throw float64 }{
		{0, 1, 90}, {-0.05, 1, 90}, {nan, 1, 90}, {inf, 1, 90},
		{0.05, 0, 90}, {0.05, inf, 90}, {0.05, nan, 90},
		{0.05, 1, 0}, {0.05, 1, -90}, {0.05, 1, nan}, {0.05, 1, inf},
	} {
		if law, err := Unit(c.f, c.closest, c.throw); err == nil || errors.Is(err, ErrMacro) || law != nil {
			t.Errorf("Unit(%v, %v, %v) = %v, %v", c.f, c.closest, c.throw, law, err)
		}
	}
	if _, err := Unit(0.1, 0.39, 90); !errors.Is(err, ErrMacro) {
		t.Errorf("a lens closer than 4f gives %v", err)
	}
}

// checkRoundTrip goes from an angle and from a distance, and back.
func checkRoundTrip(t *rapid.T, law *Law, from, to float64) {
	t.Helper()
	least := law.Angle(law.Closest())
	angle := least + (law.Angle(law.Farthest())-least)*rapid.Float64Range(0, 1).Draw(t, "part of throw")
	if d := law.Distance(angle); !math.IsInf(d, 1) {
		if got := law.Angle(d); !(math.Abs(got-angle) <= 1e-9*law.Throw()) {
			t.Errorf("Angle(Distance(%v) = %v) = %v", angle, d, got)
		}
	}
	d := math.Exp(rapid.Float64Range(math.Log(from), math.Log(to)).Draw(t, "log distance"))
	d = min(max(d, from), to) // the logarithm and back loses a digit
	if got := law.Distance(law.Angle(d)); !agree(got, d, 1e-9) {
		t.Errorf("Distance(Angle(%v) = %v) = %v", d, law.Angle(d), got)
	}
}
