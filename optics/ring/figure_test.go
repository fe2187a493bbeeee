// Figures along the ring, and play.

package ring

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFigureGoesThroughItsValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		marks := markings(t)
		var values []Value
		for _, m := range marks {
			values = append(values, Value{m.Distance, rapid.Float64Range(-3, 8).Draw(t, "value")})
		}
		origin := marks[0].Distance / 2
		for _, f := range []Figure{Straight(values, origin), Smooth(rapid.Permutation(values).Draw(t, "order"), origin)} {
			for i, v := range values {
				if got := f.At(v.Distance); math.Abs(got-v.Value) > 1e-9 {
					t.Errorf("%v at %v m, want %v", got, v.Distance, v.Value)
				}
				if i == 0 {
					continue
				}
				q := (coordinate(values[i-1].Distance, origin) + coordinate(v.Distance, origin)) / 2
				between := f.At(origin + 1/q)
				if lo, hi := min(values[i-1].Value, v.Value), max(values[i-1].Value, v.Value); between < lo-1e-9 || between > hi+1e-9 {
					t.Errorf("%v between %v and %v", between, lo, hi)
				}
			}
			last := values[len(values)-1]
			if got := f.At(last.Distance * 2); got != last.Value {
				t.Errorf("beyond the farthest %v, want %v", got, last.Value)
			}
		}
	})
}

func TestFigureBeyondTheNearest(t *testing.T) {
	values := []Value{{1, 2}, {inf, 0}}
	if got := Straight(values, 0.1).At(0.5); got != 2 {
		t.Errorf("straight: %v", got)
	}
	if got, want := Smooth(values, 0.1).At(0.5), 2*0.9/0.4; !agree(got, want, 1e-12) {
		t.Errorf("smooth: %v, want %v", got, want)
	}
	if got := Smooth(values[:1], 0.1).At(0.5); got != 2 {
		t.Errorf("one value: %v", got)
	}
	var none Figure
	if got := Straight(values, 0.1).At(math.NaN()); !math.IsNaN(got) {
		t.Errorf("nowhere it is %v", got)
	}
	if none.Known() || none.At(1) != 0 || !math.IsNaN(none.Most()) || Smooth(values, 0.1).Most() != 2 {
		t.Error("the zero figure has a value")
	}
}

func TestNoPlayShiftsNothing(t *testing.T) {
	for way := WayUnknown; way <= BothWays; way++ {
		for _, towards := range []bool{true, false} {
			if got := PlayShift(0, towards, way); got != 0 {
				t.Errorf("way %v: %v", way, got)
			}
		}
	}
}
