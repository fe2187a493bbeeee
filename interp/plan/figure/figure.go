// Package figure holds numbers that can be missing or infinite, and their form in JSON.
package figure

import (
	"math"
	"strconv"
)

// A Number is a figure of the plan. NaN means that the figure does not apply; JSON
// omits it (with omitzero). JSON writes an infinite Number as null.
type Number float64

// None returns the Number that means "does not apply".
func None() Number { return Number(math.NaN()) }

// IsZero reports whether the number does not apply, for omitzero.
func (n Number) IsZero() bool { return math.IsNaN(float64(n)) }

// Known reports whether the number applies.
func (n Number) Known() bool { return !n.IsZero() }

// IsInf reports whether the number is infinite, in either direction.
func (n Number) IsInf() bool { return math.IsInf(float64(n), 0) }

// MarshalJSON returns the number with nine significant digits. A tape or ring has
// fewer digits, and rounding errors of the computation do not show.
func (n Number) MarshalJSON() ([]byte, error) {
	f := float64(n)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	short, err := strconv.ParseFloat(strconv.FormatFloat(f, 'g', 9, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, short+0, 'f', -1, 64), nil // +0: no -0
}

// An Interval is a pair of Numbers, the lower first.
type Interval [2]Number

// IsZero reports whether the interval does not apply, for omitzero.
func (i Interval) IsZero() bool { return i[0].IsZero() && i[1].IsZero() }

// NoInterval returns the Interval that means "does not apply".
func NoInterval() Interval { return Interval{None(), None()} }
