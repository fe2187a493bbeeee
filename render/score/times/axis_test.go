package times

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
)

// drawAxis draws an axis with stretches of any length, narrowed or not.
func drawAxis(t *rapid.T) (a Axis, removed []plan.Stretch, seconds float64) {
	for range rapid.IntRange(0, 4).Draw(t, "removed") {
		from := seconds + rapid.Float64Range(0, 5).Draw(t, "shown")
		seconds = from + rapid.Float64Range(0.01, 60).Draw(t, "long")
		removed = append(removed, plan.Stretch{From: from, To: seconds})
	}
	seconds += rapid.Float64Range(0.5, 40).Draw(t, "rest")
	return NewAxis(rapid.SampledFrom(ladder).Draw(t, "scale"), removed), removed, seconds
}

// From time to place and back is the same time; time never runs back; what is shown is to
// scale, and what is removed is at most as wide as a stretch that is narrowed.
func TestAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, removed, seconds := drawAxis(t)
		at := rapid.Float64Range(0, seconds).Draw(t, "at")
		if back := a.Time(a.At(at)); math.Abs(back-at) > 1e-6 {
			t.Fatalf("%v s is at %v mm, where %v s is", at, a.At(at), back)
		}
		if later := at + rapid.Float64Range(0, 3).Draw(t, "later"); a.At(later) < a.At(at) {
			t.Fatalf("%v s lies before %v s", later, at)
		}
		from := 0.0
		for _, s := range append(removed, plan.Stretch{From: seconds, To: seconds}) {
			if shown := a.At(s.From) - a.At(from); math.Abs(shown-(s.From-from)*a.PerSecond()) > 1e-6 {
				t.Fatalf("%v to %v s is %v mm wide", from, s.From, shown)
			}
			if wide := a.At(s.To) - a.At(s.From); wide > Narrowed+1e-6 || wide > (s.To-s.From)*a.PerSecond()+1e-6 {
				t.Fatalf("%v to %v s is narrowed to %v mm", s.From, s.To, wide)
			}
			from = s.To
		}
	})
}

// Windows of a long shot go on where the one before ends, none is wider than its room, and
// none but the first begins inside of what is narrowed.
func TestAxisWindows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _, seconds := drawAxis(t)
		if !a.Broken() {
			t.Skip("nothing is narrowed")
		}
		each := rapid.SampledFrom([]float64{0.3, 3, 10}).Draw(t, "each")
		cuts := a.Windows(seconds, each)
		if cuts[0] != 0 || cuts[len(cuts)-1] != seconds {
			t.Fatalf("%v of %v s", cuts, seconds)
		}
		for i := 1; i < len(cuts); i++ {
			wide := a.At(cuts[i]) - a.At(cuts[i-1])
			if most := each*a.PerSecond() + max(Narrowed, Lap*a.PerSecond()); !(cuts[i] > cuts[i-1]) || wide > most+1e-6 {
				t.Fatalf("a window from %v to %v s is %v mm wide", cuts[i-1], cuts[i], wide)
			}
			if _, inside := a.Within(cuts[i]); inside && i < len(cuts)-1 {
				t.Fatalf("a window begins at %v s", cuts[i])
			}
		}
	})
}
