// Numbers as people on a set read them.

package lists

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
)

// Length writes metres in the shot's units: three digits or more, as fine as a
// tape is read; "" for what does not apply.
func Length(s *plan.Shot, n plan.Number) string {
	m := float64(n)
	switch {
	case !n.Known():
		return ""
	case n.IsInf():
		return "inf"
	case s.Imperial:
		return imperial(m)
	case math.Abs(m) < 0.9995:
		return plan.Decimal(m*100, 1) + " cm"
	case math.Abs(m) < 99.995:
		return plan.Decimal(m, 2) + " m"
	}
	return plan.Decimal(m, 0) + " m"
}

// imperial writes metres as feet and inches, to the quarter inch within ten
// feet and to the inch beyond, as plans are written: 5'6 1/2".
func imperial(m float64) string {
	sign := ""
	if m < 0 {
		sign, m = "-", -m
	}
	parts := 4
	if m > 10*plan.InchesPerFoot*plan.Inch {
		parts = 1
	}
	feet, inches, part := plan.FeetInches(m, parts)
	text := fmt.Sprintf("%s%.0f'%.0f", sign, feet, inches)
	if part != 0 {
		text += [...]string{"", " 1/4", " 1/2", " 3/4"}[part]
	}
	return text + `"`
}

// Degrees writes an angle, to a tenth where it is small; "" for what does not
// apply.
func Degrees(n plan.Number) string {
	switch {
	case !n.Known() || n.IsInf():
		return ""
	case math.Abs(float64(n)) < 9.95:
		return plan.Decimal(float64(n), 1) + "°"
	}
	return plan.Decimal(float64(n), 0) + "°"
}

// Seconds writes a time to the hundredth.
func Seconds(n plan.Number) string { return plan.Decimal(float64(n), 2) + " s" }

// Chance writes a probability; a model does not promise 0 or 100 %.
func Chance(n plan.Number) string {
	switch p := float64(n); {
	case !n.Known():
		return ""
	case p > 0.995:
		return ">99 %"
	case p < 0.005:
		return "<1 %"
	default:
		return fmt.Sprintf("%.0f %%", p*100)
	}
}
