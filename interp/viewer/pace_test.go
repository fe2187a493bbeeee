package viewer

import (
	"math"
	"testing"
)

// A change that nobody sees wants no time, a whole one all of it, and more blur
// never wants less; what is twice as much never wants twice the time.
func TestWants(t *testing.T) {
	if Wants(Seen) != 0 || Wants(0) != 0 || Wants(WholeChange) != 1 {
		t.Errorf("%v, %v, %v", Wants(Seen), Wants(0), Wants(WholeChange))
	}
	for blur := Seen + 0.1; blur < 1000; blur *= 1.1 {
		if Wants(blur*1.1) <= Wants(blur) || Wants(2*blur) >= 2*Wants(blur) {
			t.Errorf("%v arcmin wants %v, twice that %v", blur, Wants(blur), Wants(2*blur))
		}
	}
}

func TestSoftest(t *testing.T) {
	outside := func(stretches ...[2]float64) func(float64) bool {
		return func(t float64) bool {
			for _, s := range stretches {
				if s[0] < t && t < s[1] {
					return false
				}
			}
			return true
		}
	}
	for _, c := range []struct {
		sharp    func(float64) bool
		from, to float64
	}{
		{outside(), 0, 0},
		{outside([2]float64{2, 3.5}), 2, 3.5},
		{outside([2]float64{1.2, 2}, [2]float64{2.5, 4.4}), 2.5, 4.4},
		{outside([2]float64{3.9, 9}), 3.9, 5},
		{outside([2]float64{2, 2.9}), 0, 0},
		{outside([2]float64{0, 9}), 1, 5},
	} {
		from, to := Softest(1, 5, c.sharp)
		if math.Abs(from-c.from) > 0.05 || math.Abs(to-c.to) > 0.05 {
			t.Errorf("%v to %v, want %v to %v", from, to, c.from, c.to)
		}
	}
}

func TestPace(t *testing.T) {
	for _, c := range []struct {
		places string // of the focus, the first its start
		rests  []float64
		want   Pace
	}{
		{"A", []float64{5}, Pace{0, 0, 1}},
		{"ABA", []float64{1, 1, 1}, Pace{1, 1, 0}},
		{"ABABA", []float64{1, 1, 1, 1, 1}, Pace{3, 1, 0}},
		{"ABABA", []float64{1, 1, 2, 1, 1}, Pace{2, 1, 1}},
		{"ABCABC", []float64{1, 1, 1, 1, 1, 1}, Pace{3, 2, 0}},
		{"ABCABC", []float64{1, 1, 2, 1, 1, 1}, Pace{1, 4, 1}},
		{"ABCDABCD", []float64{1, 1, 1, 1, 1, 1, 1, 1}, Pace{0, 0, 0}},
		{"ABABABA", []float64{1.5, 1.5, 1.5, 1.5, 1.5, 1.5, 1.5}, Pace{0, 0, 7}},
	} {
		got := PaceOf(c.rests, func(i, left int) bool { return c.places[i+1] == c.places[left] })
		if got != c.want {
			t.Errorf("%s with rests of %v: %+v, want %+v", c.places, c.rests, got, c.want)
		}
	}
}
