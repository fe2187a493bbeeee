package score

import (
	"fmt"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// racks returns a shot of n racks, each on a word of a line of its own.
func racks(n int) *plan.Shot {
	m := plans.New("7", "There and back", 2*float64(n)+1).Put("ANN", 2, 0).Put("BOB", 3, 0).Start("ANN")
	for i := range n {
		who, to := "ANN", "BOB"
		if i%2 == 1 {
			who, to = to, who
		}
		t := 2 * float64(i)
		m.Line(who, fmt.Sprintf("and so it goes on to number %d", i), t, t+1.8)
		m.Rack(to, "", "", t+0.5, t+1.3)
	}
	return m.Shot
}

// Four times the racks take four times the work, and no more: each sheet looks
// at what it shows. Work is counted in allocations, which no machine changes.
func TestScoreGrowsStraight(t *testing.T) {
	work := func(n int) float64 {
		shot := racks(n)
		return testing.AllocsPerRun(1, func() { Score(shot, sheet.Options{}) })
	}
	small, large := work(60), work(240)
	if large > 4.4*small {
		t.Errorf("60 racks take %.0f allocations, 240 take %.0f", small, large)
	}
}

// BenchmarkManyRacks draws scores of ever more racks.
func BenchmarkManyRacks(b *testing.B) {
	for _, n := range []int{55, 220, 880} {
		shot := racks(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Score(shot, sheet.Options{})
			}
		})
	}
}
