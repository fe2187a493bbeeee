package render

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

func TestOverheadsAreClean(t *testing.T) {
	for name, s := range madeShots() {
		for size, paper := range map[string]Paper{"A4": A4, "Letter": Letter} {
			for i, p := range Overhead(s, Options{Paper: paper}) {
				checkPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				svgOf(t, p)
			}
		}
	}
}

func TestGeneratedOverheadsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShot(t)
		paper := rapid.SampledFrom([]Paper{A4, Letter}).Draw(t, "paper")
		for i, p := range Overhead(s, Options{Paper: paper}) {
			checkPage(t, fmt.Sprintf("page %d", i+1), p)
			svgOf(t, p)
		}
	})
}
