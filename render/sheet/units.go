// Numbers as people on a set write them.

package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// Fixed writes v with up to that many decimals, no zeros behind them, and a
// true minus.
func Fixed(v float64, decimals int) string {
	return strings.Replace(plan.Decimal(v, decimals), "-", "−", 1)
}

// Metric writes a length in metres, or in centimetres under one metre.
func Metric(m float64) string {
	switch {
	case math.IsInf(m, 0):
		return "∞"
	case math.Abs(m) < 0.9995:
		return Fixed(m*100, 1) + " cm"
	case math.Abs(m) < 10:
		return Fixed(m, 2) + " m"
	}
	if math.Abs(m) < 100 {
		return Fixed(m, 1) + " m"
	}
	return Fixed(m, 0) + " m"
}

// Imperial writes a length in metres as feet and inches: to the half inch up
// to ten feet, to the inch up to a hundred.
func Imperial(m float64) string {
	if math.IsInf(m, 0) {
		return "∞"
	}
	sign := ""
	if m < 0 {
		sign, m = "−", -m
	}
	if feet := m / plan.Inch / plan.InchesPerFoot; feet >= 100 {
		return sign + Fixed(feet, 0) + "′"
	}
	parts := 2
	if m > 10*plan.InchesPerFoot*plan.Inch {
		parts = 1
	}
	feet, whole, half := plan.FeetInches(m, parts)
	inches := Fixed(whole, 0)
	if half == 1 {
		inches = strings.TrimPrefix(inches+"½", "0")
	}
	switch {
	case feet == 0:
		return sign + inches + "″"
	case inches == "0":
		return fmt.Sprintf("%s%.0f′", sign, feet)
	}
	return fmt.Sprintf("%s%.0f′%s″", sign, feet, inches)
}

// Lengths writes a length in the plan's units and then in the others.
func Lengths(s *plan.Shot, m float64) (first, second string) {
	if math.IsInf(m, 0) {
		return "∞", ""
	}
	if s.Imperial {
		return Imperial(m), Metric(m)
	}
	return Metric(m), Imperial(m)
}

// Length writes a length in the plan's units.
func Length(s *plan.Shot, m float64) string {
	first, _ := Lengths(s, m)
	return first
}

// Degrees writes an angle to a tenth where it is small, else whole.
func Degrees(d float64) string {
	if math.Abs(d) < 10 {
		return Fixed(d, 1) + "°"
	}
	return Fixed(d, 0) + "°"
}

// Seconds writes a time with up to two decimals.
func Seconds(t float64) string { return Fixed(t, 2) + " s" }

// When writes a moment of the shot: its timecode where it has one.
func When(s *plan.Shot, t float64) string {
	if tc := s.Timecode(t); tc != "" {
		return tc
	}
	return Seconds(t)
}

// Plural writes a count of things.
func Plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// Finite reports whether a number can be drawn.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Chance writes a probability; a model does not promise 0 or 100 %.
func Chance(p float64) string {
	switch {
	case p > 0.995:
		return "> 99 %"
	case p < 0.005:
		return "< 1 %"
	}
	return Fixed(100*p, 0) + " %"
}
