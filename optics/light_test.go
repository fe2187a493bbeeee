// The screen, the stops and the light.

package optics

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

func TestCriterionUndoesArcmin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sensor := rapid.Float64Range(0.005, 0.06).Draw(t, "sensor")
		screen := rapid.Float64Range(0.1, 30).Draw(t, "screen")
		viewer := rapid.Float64Range(0.2, 50).Draw(t, "viewer")
		minutes := rapid.Float64Range(0.1, 60).Draw(t, "arcmin")
		c := Criterion(sensor, screen, viewer, minutes)
		if got := ArcminAtViewer(c, sensor, screen, viewer); !near(got, minutes, 1e-12) {
			t.Errorf("a disc of %v is seen under %v, want %v", c, got, minutes)
		}
	})
}

func TestCriterionIsNearThoseInUse(t *testing.T) {
	// Two arcmin on a screen of 12 m watched from 18 m. 0.02 to 0.025 mm are in
	// common use for a sensor of 24.89 mm, and 0.03 mm for 36 mm: common
	// practice, no source.
	for _, c := range []struct{ sensor, lo, hi float64 }{
		{24.89 * mm, 20e-6, 25e-6},
		{36 * mm, 29e-6, 33e-6},
	} {
		if got := Criterion(c.sensor, 12, 18, 2); got < c.lo || got > c.hi {
			t.Errorf("criterion on %v m is %v, want %v to %v", c.sensor, got, c.lo, c.hi)
		}
	}
}

func TestInfiniteBlurIsARightAngle(t *testing.T) {
	if got := ArcminAtViewer(math.Inf(1), 0.036, 12, 18); !near(got, 90*60, 1e-12) {
		t.Errorf("got %v arcmin", got)
	}
}

func TestDiagonalWidth(t *testing.T) {
	// A screen of 55 inches is 121.8 cm wide, as makers state (common practice,
	// no source).
	if got := DiagonalWidth(55 * inch); math.Abs(got-1.218) > 0.0005 {
		t.Errorf("55 inches are %v m wide", got)
	}
}

func TestThirdStops(t *testing.T) {
	stops := ThirdStops()
	if first, last := stops[0].Mark, stops[len(stops)-1].Mark; first != 0.7 || last != 128 {
		t.Errorf("the scale runs from %v to %v", first, last)
	}
	for i, s := range stops {
		if math.Abs(StopsBetween(s.Mark, s.Exact)) > 0.15 { // 1.2 is the coarsest
			t.Errorf("mark %v stands for %v, too far off to be its name", s.Mark, s.Exact)
		}
		if i > 0 && !near(StopsBetween(s.Exact, stops[i-1].Exact), 1.0/3, 1e-12) {
			t.Errorf("mark %v is not a third after the one before", s.Mark)
		}
		if got := ExactStop(s.Mark); got != s.Exact {
			t.Errorf("ExactStop(%v) = %v, want %v", s.Mark, got, s.Exact)
		}
		if got := Mark(s.Exact); got != strconv.FormatFloat(s.Mark, 'f', -1, 64) {
			t.Errorf("Mark(%v) = %s, want %v", s.Exact, got, s.Mark)
		}
		if got := Mark(s.Mark); got != Mark(s.Exact) {
			t.Errorf("Mark(%v) = %s, want itself", s.Mark, got)
		}
	}
	if slices.Reverse(stops); ThirdStops()[0].Mark != 0.7 {
		t.Error("the slice is not the caller's own")
	}
}

func TestStopsOffTheScale(t *testing.T) {
	for _, n := range []float64{0.95, 1.3, 2.3, 200} {
		if got := ExactStop(n); got != n {
			t.Errorf("ExactStop(%v) = %v, want it back", n, got)
		}
	}
	for n, want := range map[float64]string{2.3: "2.2", 200: "200", 0.5: "0.5", 0.123456: "0.123", 7.9: "8", math.Inf(1): "+Inf", 0: "0"} {
		if got := Mark(n); got != want {
			t.Errorf("Mark(%v) = %s, want %s", n, got, want)
		}
	}
}

func TestStopsBetween(t *testing.T) {
	// Each full mark halves the light (ISO 517, from memory).
	for _, c := range []struct{ n, meter, want float64 }{
		{ExactStop(2.8), ExactStop(8), -3},
		{ExactStop(8), ExactStop(2.8), 3},
		{ExactStop(5.6), ExactStop(4.5), 2.0 / 3},
		{4, 4, 0},
	} {
		if got := StopsBetween(c.n, c.meter); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("StopsBetween(%v, %v) = %v, want %v", c.n, c.meter, got, c.want)
		}
	}
}

func TestDensityAndExposureCountTheSameStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stops := rapid.Float64Range(-12, 12).Draw(t, "stops")
		if got := NDStops(NDDensity(stops)); math.Abs(got-stops) > 1e-12 {
			t.Errorf("NDStops(NDDensity(%v)) = %v", stops, got)
		}
		n := rapid.Float64Range(0.7, 32).Draw(t, "n")
		shut := n * math.Exp2(stops/2)
		if got := ExposureValue(shut, 0.02) - ExposureValue(n, 0.02); math.Abs(got-StopsBetween(shut, n)) > 1e-9 {
			t.Errorf("f/%v to f/%v: %v EV, %v stops", n, shut, got, StopsBetween(shut, n))
		}
	})
}
