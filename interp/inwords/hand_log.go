package inwords

import (
	"fmt"

	"pullscore/interp/plan"
)

func Hundredths(v float64) string { return plan.Decimal(v, 2) }

// Count writes a number of things.
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
