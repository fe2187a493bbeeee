package render

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestStripsAreClean(t *testing.T) {
	for name, s := range madeShots() {
		for size, paper := range map[string]Paper{"A4": A4, "Letter": Letter} {
			for i, p := range Strip(s, Options{Paper: paper}) {
				checkPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				svgOf(t, p)
			}
		}
	}
}

func TestGeneratedStripsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShot(t)
		s.Optics.Diameter = rapid.SampledFrom([]float64{0.02, 0.05, 0.08, 0.114, 0.3, math.NaN()}).Draw(t, "diameter")
		s.Optics.TurnsTo = rapid.SampledFrom([]string{"", "left", "right"}).Draw(t, "turns")
		s.Optics.Marked = rapid.Bool().Draw(t, "marked")
		paper := rapid.SampledFrom([]Paper{A4, Letter}).Draw(t, "paper")
		for i, p := range Strip(s, Options{Paper: paper}) {
			checkPage(t, fmt.Sprintf("page %d", i+1), p)
			svgOf(t, p)
		}
	})
}
