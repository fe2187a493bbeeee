package bands

import (
	"math"
	"testing"

	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// A follow that starts where the focus is not on its subject makes the focus jump: it is
// drawn where it was until then, and as a step there, not as a slant from the last key.
func TestFocusJumps(t *testing.T) {
	s := plans.New("1", "", 8).Put("ADA", 3, 0.1).Put("BO", 2, 0.1).Start("ADA").Follow("BO", 4, 6).Shot
	w := NewChart(s, sheet.A4).Windows[0]
	jumps := 0
	for i := 1; i < len(w.Curves.T); i++ {
		from, to := w.Curves.T[i-1], w.Curves.T[i]
		if math.Abs(w.Curves.Focus[i]-w.Curves.Focus[i-1]) < 1e-9 {
			continue
		}
		if jumps++; w.X(to)-w.X(from) > 1e-6 || math.Abs(to-4) > 1e-9 {
			t.Errorf("the focus goes from %g to %g m between %g and %g s", w.Curves.Focus[i-1], w.Curves.Focus[i], from, to)
		}
	}
	if jumps != 1 {
		t.Errorf("%d jumps", jumps)
	}
}
