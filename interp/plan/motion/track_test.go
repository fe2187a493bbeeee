package motion

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// walked is the value of a track, found by going through all steps one by one.
func walked(tr *Track, t float64) float64 {
	spot := tr.From
	for _, s := range tr.Steps {
		if t <= s.Start {
			break
		}
		if t < s.End {
			a, b := spot.at(t), s.To.at(t)
			return a + (b-a)*Ease((t-s.Start)/(s.End-s.Start), s.Smooth)
		}
		spot = s.To
	}
	return spot.at(t)
}

// A track finds its step by halving; going through all of them gives the same,
// also where steps overlap or start at one time.
func TestTrackFindsItsStep(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	parent := Still(4)
	parent.Add(Step{Start: 2, End: 9, To: Spot{Offset: 1}})
	overlaps := 0
	for range 300 {
		starts := make([]float64, r.IntN(12))
		for i := range starts {
			starts[i] = float64(r.IntN(20)) / 2
		}
		slices.Sort(starts)
		tr := Still(1)
		for i, start := range starts {
			s := Step{Start: start, End: start + float64(1+r.IntN(9))/2, To: Spot{Offset: r.Float64()}, Smooth: i%2 == 0}
			if r.IntN(3) == 0 {
				s.To.Parent = parent
			}
			if i > 0 && start < tr.Steps[i-1].End {
				overlaps++
			}
			tr.Add(s)
		}
		for at := -1.0; at < 16; at += 0.25 {
			if got, want := tr.At(at), walked(tr, at); got-want > 1e-12 || want-got > 1e-12 {
				t.Fatalf("at %v: %v, want %v in %+v", at, got, want, tr)
			}
		}
	}
	if overlaps < 100 {
		t.Errorf("only %d overlaps were tried", overlaps)
	}
}
