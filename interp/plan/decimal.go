// How numbers are written for people.

package plan

import (
	"strconv"
	"strings"
	"unicode"
)

// Percent writes a chance in words; a model promises neither 0 nor 100 %.
func Percent(p float64) string {
	switch {
	case p > 0.995:
		return "over 99 %"
	case p < 0.005:
		return "under 1 %"
	}
	return Decimal(100*p, 0) + " %"
}

// PercentOf writes a chance beside the one that is wanted: below that it does
// not read the same, where whole percents are told at all.
func PercentOf(p, wanted float64) string {
	text := Percent(p)
	if p < wanted && text == Percent(wanted) && unicode.IsDigit(rune(text[0])) {
		return "under " + text
	}
	return text
}

// Decimal writes v with at most that many decimals and no zeros behind them.
func Decimal(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
