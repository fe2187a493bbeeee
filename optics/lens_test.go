// Conjugates and the tape from the sensor.

package optics

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"
	"pgregory.net/rapid"
)

func TestConjugatesKeepTheLensEquation(t *testing.T) {
	// 1/f = 1/x + 1/v, any optics text.
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(0.01, 0.3).Draw(t, "f")
		x := distance(t, f, "x")
		if v := ImageDistance(f, x); !near(1/x+1/v, 1/f, 1e-12) {
			t.Errorf("1/%v + 1/%v is not 1/%v", x, v, f)
		}
	})
}

func TestFromSensorUndoesToSensor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(0.01, 0.3).Draw(t, "f")
		// At 1:1 the tape has its minimum, and the way back a square root.
		x := distance(t, f, "x") * 1.01
		tape := ToSensor(x, f)
		if got, ok := FromSensor(tape, f); !ok || !near(got, x, 1e-9) {
			t.Errorf("FromSensor(%v, %v) = %v, %v, want %v", tape, f, got, ok, x)
		}
	})
}

func TestFromSensorAtItsEdges(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		tape, f, want float64
		ok            bool
	}{
		{0.2, 0.05, 0.1, true}, // 1:1: subject and image at 2f, tape 4f
		{0.1999, 0.05, 0, false},
		{0, 0.05, 0, false},
		{-1, 0.05, 0, false},
		{math.NaN(), 0.05, 0, false},
		{inf, 0.05, inf, true},
	} {
		if got, ok := FromSensor(c.tape, c.f); got != c.want || ok != c.ok {
			t.Errorf("FromSensor(%v, %v) = %v, %v, want %v, %v", c.tape, c.f, got, ok, c.want, c.ok)
		}
	}
}

func TestDepthMagnificationIsTheSquare(t *testing.T) {
	// -dv/dx = m^2, longitudinal magnification (E. Hecht, Optics, 5th ed., 2017,
	// sec. 5.2, from memory); the slope is taken by differences.
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(0.01, 0.3).Draw(t, "f")
		x := f * rapid.Float64Range(2, 50).Draw(t, "x/f")
		slope := fd.Derivative(func(x float64) float64 { return ImageDistance(f, x) }, x,
			&fd.Settings{Formula: fd.Central, Step: 1e-4 * x})
		m := Magnification(f, x)
		if !near(-slope, m*m, 1e-6) {
			t.Errorf("-dv/dx at %v is %v, m^2 is %v", x, -slope, m*m)
		}
	})
}

func TestTapeGrowsBySubjectLessImage(t *testing.T) {
	// d(x+v)/dx = 1 - m^2, by differences.
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(0.01, 0.3).Draw(t, "f")
		x := f * rapid.Float64Range(2.5, 50).Draw(t, "x/f")
		slope := fd.Derivative(func(x float64) float64 { return ToSensor(x, f) }, x,
			&fd.Settings{Formula: fd.Central, Step: 1e-4 * x})
		m := Magnification(f, x)
		if !near(slope, 1-m*m, 1e-6) {
			t.Errorf("dD/dx at %v is %v, want %v", x, slope, 1-m*m)
		}
	})
}

func TestFieldOfView(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ width, f, x, want float64 }{
		{0.100, 0.050, inf, 90},                    // a sensor twice as wide as the focal length: a right angle
		{0.200, 0.050, 0.100, 90},                  // at 1:1 the image lies at 2f
		{0.100, 0.100 * math.Sqrt(3) / 2, inf, 60}, // the equilateral triangle
		{0.036, 0.050, 0.050, 0},
	} {
		if got := FieldOfView(c.width, c.f, c.x); !near(got, c.want, 1e-12) {
			t.Errorf("FieldOfView(%v, %v, %v) = %v, want %v", c.width, c.f, c.x, got, c.want)
		}
	}
}

func TestBreathing(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ f, x1, x2, want float64 }{
		{0.05, 0.1, inf, 100}, // at 1:1 the image lies twice as far away
		{0.05, inf, 0.1, -50}, // and back
		{0.05, 3, 3, 0},
		{12, 36, inf, 50}, // v = 18 for f = 12: row M05 of the published figures
	} {
		if got := Breathing(c.f, c.x1, c.x2); !near(got, c.want, 1e-12) {
			t.Errorf("Breathing(%v, %v, %v) = %v, want %v", c.f, c.x1, c.x2, got, c.want)
		}
	}
}

func TestPlaneDistance(t *testing.T) {
	for _, c := range []struct{ tape, angle, want float64 }{
		{2, 0, 2},
		{2, 60, 1}, // half of an equilateral triangle
		{2, -60, 1},
		{5, math.Atan2(3, 4) * 180 / math.Pi, 4}, // 3, 4, 5
	} {
		if got := PlaneDistance(c.tape, c.angle); !near(got, c.want, 1e-12) {
			t.Errorf("PlaneDistance(%v, %v) = %v, want %v", c.tape, c.angle, got, c.want)
		}
	}
}
