// Numbers in words, for messages.

package interp

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/plan"
	"pullscore/lang"
)

// metres writes a length as a crew says it: mm or cm below a metre.
func metres(v float64) string {
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

func seconds(t float64) string { return plan.Decimal(t, 2) + " s" }

func degrees(a float64) string {
	if math.Abs(a) < 10 {
		return plan.Decimal(a, 1) + " deg"
	}
	return plan.Decimal(a, 0) + " deg"
}

// sourceText is what a range covers, on one line.
func sourceText(src []byte, r lang.Range) string {
	if r.Start.Offset < 0 || r.End.Offset > len(src) || r.Start.Offset > r.End.Offset {
		return ""
	}
	return strings.Join(strings.Fields(string(src[r.Start.Offset:r.End.Offset])), " ")
}

func sortedTimes(list []float64) []float64 {
	slices.Sort(list)
	return slices.Compact(list)
}

// sentence makes a detail of an error's text.
func sentence(s string) string {
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:] + "."
}
