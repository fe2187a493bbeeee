// Numbers in words, for messages.

package inwords

import (
	"math"

	"pullscore/interp/plan"
)

// Metres writes a length as a crew says it: mm or cm below a metre.
func Metres(v float64) string {
	switch a := math.Abs(v); {
	case math.IsInf(v, 0):
		return "infinity"
	case a < 0.01:
		return plan.Decimal(v*1000, 1) + " mm"
	case a < 1:
		return plan.Decimal(v*100, 1) + " cm"
	case a < 100:
		return plan.Decimal(v, 2) + " m"
	}
	return plan.Decimal(v, 0) + " m"
}

func Seconds(t float64) string { return plan.Decimal(t, 2) + " s" }

func Degrees(a float64) string {
	if math.Abs(a) < 10 {
		return plan.Decimal(a, 1) + " deg"
	}
	return plan.Decimal(a, 0) + " deg"
}
