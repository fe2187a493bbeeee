package render

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
)

func TestDialsAreClean(t *testing.T) {
	for name, s := range madeShots() {
		s.WheelMM, s.Gear = 80, 1.5
		for size, paper := range map[string]Paper{"A4": A4, "Letter": Letter} {
			for i, p := range Dial(s, Options{Paper: paper}) {
				checkPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				svgOf(t, p)
			}
		}
	}
}

func TestGeneratedDialsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShot(t)
		s.WheelMM = plan.Number(rapid.SampledFrom([]float64{10, 40, 80, 110, 1000}).Draw(t, "wheel"))
		s.Gear = plan.Number(rapid.SampledFrom([]float64{0.05, 0.5, 1, 1.5, 4, 20}).Draw(t, "gear"))
		paper := rapid.SampledFrom([]Paper{A4, Letter}).Draw(t, "paper")
		for i, p := range Dial(s, Options{Paper: paper}) {
			checkPage(t, fmt.Sprintf("page %d", i+1), p)
			svgOf(t, p)
		}
	})
}
