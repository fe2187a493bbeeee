// How well a law is known.

package ring

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBoundIsNothingAtMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		law, err := FromMarks(marks, shape(math.NaN()))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range marks {
			if e := law.Bound(m.Distance); !(e >= 0 && e <= 1e-9*law.Throw()) {
				t.Errorf("E of %v m is %v deg", m.Distance, e)
			}
			if sigma := law.Sigma(m.Distance); !agree(sigma, 0.5, 1e-9) {
				t.Errorf("sigma of %v m is %v deg", m.Distance, sigma)
			}
		}
		for i := 1; i < len(marks); i++ {
			d := law.Distance((marks[i-1].Angle + marks[i].Angle) / 2)
			e, k := law.Bound(d), law.K(d)
			least, most := law.Factors(d)
			if !(e > 0) || !(k >= 0.005) || !(e <= k*(marks[i].Angle-marks[i-1].Angle)*(1+1e-12)) {
				t.Errorf("at %v m: E %v, k %v", d, e, k)
			}
			if !agree(most, 1+2.5*k, 1e-12) || !agree(least, max(0, 1-2.5*k), 1e-12) {
				t.Errorf("at %v m: factors %v %v, k %v", d, least, most, k)
			}
			near, far, ok := law.Between(d)
			if !ok || near != marks[i-1] || far != marks[i] {
				t.Errorf("%v m lies between %v and %v", d, near, far)
			}
		}
	})
}

func TestNextIsInTheWorstGap(t *testing.T) {
	law := mustFromMarks(t, longThrow, math.NaN())
	next := law.Next()
	for d := 0.75; d < 100; d *= 1.01 {
		if law.Bound(d) > law.Bound(next)*(1+1e-9) {
			t.Errorf("E of %v m is %v, more than %v of %v m", d, law.Bound(d), law.Bound(next), next)
		}
	}
}

func TestDoubtOfComputedLaws(t *testing.T) {
	unit, err := Unit(0.05, 0.5, 200)
	if err != nil {
		t.Fatal(err)
	}
	least, most := unit.Factors(1)
	if least != 0.62 || most != 1.44 {
		t.Errorf("factors of unit focusing are %v %v", least, most)
	}
	for _, v := range []float64{unit.K(1), unit.Bound(1), unit.Sigma(1), unit.Reading(), unit.Origin(), unit.Next()} {
		if !math.IsNaN(v) {
			t.Errorf("unit focusing has a figure of marks: %v", v)
		}
	}
	if least, most = unit.Factors(0.4); !math.IsNaN(least) || !math.IsNaN(most) {
		t.Errorf("factors nearer than closest: %v %v", least, most)
	}
	macro, err := Macro(0.1, 0.3, 270)
	if err != nil {
		t.Fatal(err)
	}
	if macro.Measured() || macro.K(0.5) != 0.25 || macro.Angle(0.3) != 0 || macro.Angle(inf) != 270 {
		t.Errorf("macro: measured %v, k %v, from %v to %v deg", macro.Measured(), macro.K(0.5), macro.Angle(0.3), macro.Angle(inf))
	}
	// c is half of 30 cm: even in 1/(D-15 cm).
	if want := 270 * (1 - 0.15/(0.5-0.15)); !agree(macro.Angle(0.5), want, 1e-12) {
		t.Errorf("macro: 50 cm at %v deg, want %v", macro.Angle(0.5), want)
	}
}

func TestScalingARingChangesNoPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		k := rapid.Float64Range(0.2, 5).Draw(t, "scale")
		throw := marks[len(marks)-1].Angle + rapid.Float64Range(0, 20).Draw(t, "more throw")
		law, err := FromMarks(marks, shape(throw))
		if err != nil {
			t.Fatal(err)
		}
		for i := range marks {
			marks[i].Angle *= k
		}
		scaled, err := FromMarks(marks, shape(throw*k))
		if err != nil {
			t.Fatal(err)
		}
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		d := law.Distance(law.nearest.angle + part*(law.farthest.angle-law.nearest.angle))
		if a, b := law.Angle(d)/law.Throw(), scaled.Angle(d)/scaled.Throw(); math.Abs(a-b) > 1e-9 {
			t.Errorf("%v m lies at %v of the throw, scaled at %v", d, a, b)
		}
		if a, b := law.Bound(d)/law.Throw(), scaled.Bound(d)/scaled.Throw(); math.Abs(a-b) > 1e-9 {
			t.Errorf("E of %v m is %v of the throw, scaled %v", d, a, b)
		}
		if a, b := law.K(d), scaled.K(d); !agree(a, b, 1e-9) {
			t.Errorf("k of %v m is %v, scaled %v", d, a, b)
		}
	})
}
