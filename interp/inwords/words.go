// Numbers in words, for messages.

package inwords

import (
	"fmt"
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

// Seconds writes a time, to the hundredth.
func Seconds(t float64) string { return plan.Decimal(t, 2) + " s" }

// Degrees writes an angle, to the tenth below ten degrees.
func Degrees(a float64) string {
	if math.Abs(a) < 10 {
		return plan.Decimal(a, 1) + " deg"
	}
	return plan.Decimal(a, 0) + " deg"
}

// Sooner says how much later or earlier something is, in whole seconds.
func Sooner(by float64) string {
	way := "later"
	if by < 0 {
		way = "earlier"
	}
	return fmt.Sprintf("%s s %s", plan.Decimal(math.Abs(by), 0), way)
}

// ShareOf writes how many of all frames something is.
func ShareOf(n, of int64) string { return fmt.Sprintf("%d of %d frames", n, of) }

// Hundredths writes a number with two decimals at most.
func Hundredths(v float64) string { return plan.Decimal(v, 2) }

// Count writes a number of things.
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// RoundTo returns v rounded to so many decimals.
func RoundTo(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k) / k
}

// FloorTo returns v rounded down to a whole number of parts of the unit.
func FloorTo(v, perUnit float64) float64 { return math.Floor(v*perUnit+1e-6) / perUnit }

// CeilTo returns v rounded up to a whole number of parts of the unit.
func CeilTo(v, perUnit float64) float64 { return math.Ceil(v*perUnit-1e-6) / perUnit }
