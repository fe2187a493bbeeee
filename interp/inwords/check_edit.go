package inwords

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
)

// Sooner says how much later or earlier something is, in whole seconds.
func Sooner(by float64) string {
	way := "later"
	if by < 0 {
		way = "earlier"
	}
	return fmt.Sprintf("%s s %s", plan.Decimal(math.Abs(by), 0), way)
}

func ShareOf(n, of int64) string { return fmt.Sprintf("%d of %d frames", n, of) }
