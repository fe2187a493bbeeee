package hand

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A hand that is known has no range; of any other the chance lies within it, and the
// steadier hand lands better on a mark inside its window.
func TestRange(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := Pull{
			Travel: rapid.Float64Range(1, 200).Draw(r, "travel"), Time: rapid.Float64Range(0.4, 4).Draw(r, "time"),
			Lo: rapid.Float64Range(-6, -0.1).Draw(r, "lo"), Hi: rapid.Float64Range(0.1, 6).Draw(r, "hi"), Rim: 0.08,
		}
		chance := func(h Hand) float64 { return h.Land(p).Chance }
		h := Default()
		least, most := h.Range(chance)
		if got := chance(h); got < least || got > most {
			r.Errorf("%v is not within %v to %v", got, least, most)
		}
		steady := h
		steady.RimSpread = h.RimFrom
		if got := chance(steady); math.Abs(got-most) > 1e-12 {
			r.Errorf("the steadiest hand lands %v, at most %v", got, most)
		}
		h.RimFrom, h.RimTo = 0, 0
		if least, most = h.Range(chance); least != most || least != chance(h) {
			r.Errorf("a known hand has %v to %v", least, most)
		}
	})
}

// With another rim spread a moment of a follow is what a follow of that hand has.
func TestSharpWith(t *testing.T) {
	c := Course{
		From: 1, To: 3, Rim: 0.08, Sway: 0.005, Bias: 0.3,
		Angle:    func(t float64) float64 { return 30 * math.Sqrt(max(t, 0)) },
		PerMetre: func(float64) float64 { return 60 }, Distance: func(t float64) float64 { return 4 - t/2 },
		ToMark: func(float64) float64 { return 0.4 }, Room: func(float64) (float64, float64) { return -2, 2.2 },
	}
	h, other := Default(), Default()
	other.RimSpread = 0.0011
	own, with := h.Follow(c), other.Follow(c)
	for i := range own {
		if got := h.SharpWith(c, own[i], other); math.Abs(got-with[i].Sharp) > 1e-12 {
			t.Fatalf("at %v: %v, want %v", own[i].T, got, with[i].Sharp)
		}
	}
}
