// How numbers are written for people.

package plan

import (
	"strconv"
	"strings"
)

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
