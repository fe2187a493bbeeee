// Numbers as people on a set write them.

package render

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// fixed writes v with up to that many decimals, no zeros behind them, and a
// true minus.
func fixed(v float64, decimals int) string {
	return strings.Replace(plan.Decimal(v, decimals), "-", "−", 1)
}

// metric writes a length in metres, or in centimetres under one metre.
func metric(m float64) string {
	switch {
	case math.IsInf(m, 0):
		return "∞"
	case math.Abs(m) < 0.9995:
		return fixed(m*100, 1) + " cm"
	case math.Abs(m) < 10:
		return fixed(m, 2) + " m"
	}
	if math.Abs(m) < 100 {
		return fixed(m, 1) + " m"
	}
	return fixed(m, 0) + " m"
}

// imperial writes a length in metres as feet and inches: to the half inch up
// to ten feet, to the inch up to a hundred.
func imperial(m float64) string {
	if math.IsInf(m, 0) {
		return "∞"
	}
	sign := ""
	if m < 0 {
		sign, m = "−", -m
	}
	if feet := m / plan.Inch / plan.InchesPerFoot; feet >= 100 {
		return sign + fixed(feet, 0) + "′"
	}
	parts := 2
	if m > 10*plan.InchesPerFoot*plan.Inch {
		parts = 1
	}
	feet, whole, half := plan.FeetInches(m, parts)
	inches := fixed(whole, 0)
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

// lengths writes a length in the plan's units and then in the others.
func lengths(s *plan.Shot, m float64) (first, second string) {
	if math.IsInf(m, 0) {
		return "∞", ""
	}
	if s.Imperial {
		return imperial(m), metric(m)
	}
	return metric(m), imperial(m)
}

// length writes a length in the plan's units.
func length(s *plan.Shot, m float64) string {
	first, _ := lengths(s, m)
	return first
}

// degrees writes an angle to a tenth where it is small, else whole.
func degrees(d float64) string {
	if math.Abs(d) < 10 {
		return fixed(d, 1) + "°"
	}
	return fixed(d, 0) + "°"
}

// seconds writes a time with up to two decimals.
func seconds(t float64) string { return fixed(t, 2) + " s" }

// when writes a moment of the shot: its timecode where it has one.
func when(s *plan.Shot, t float64) string {
	if tc := s.Timecode(t); tc != "" {
		return tc
	}
	return seconds(t)
}

// plural writes a count of things.
func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// finite reports whether a number can be drawn.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// chance writes a probability; a model does not promise 0 or 100 %.
func chance(p float64) string {
	switch {
	case p > 0.995:
		return "> 99 %"
	case p < 0.005:
		return "< 1 %"
	}
	return fixed(100*p, 0) + " %"
}
