// Chances and shares.

package units

import "math"

// A model promises neither 0 nor 100 %. A chance beyond these limits is written as
// "over 99 %" or "under 1 %".
const (
	mostSure  = 0.995
	leastSure = 0.005
)

// leastRange is the smallest range, in percentage points, that ChanceRange writes.
const leastRange = 3

// Chance returns a probability, 0 to 1, in whole percent. A chance below the wanted
// one never looks as if it were enough: it gives "under 90 %". For wanted 0 there is
// no wanted chance.
func (s Style) Chance(p, wanted float64) string {
	switch {
	case math.IsNaN(p):
		return ""
	case p > mostSure:
		return s.over() + "99 %"
	case p < leastSure:
		return s.under() + "1 %"
	case p < wanted && percent(p) >= percent(wanted):
		return s.under() + s.Wanted(wanted)
	}
	return Decimal(percent(p), 0) + " %"
}

// ChanceRange returns a probability with its lowest and highest value, all from 0 to
// 1, in percent: "84 % (64 to 91)". It omits a range of less than three points.
func (s Style) ChanceRange(p, lo, hi, wanted float64) string {
	text := s.Chance(p, wanted)
	if text == "" || !(percent(hi)-percent(lo) >= leastRange) {
		return text
	}
	return text + " (" + s.end(lo) + s.to() + s.end(hi) + ")"
}

// ChanceSpan returns the range of a probability of which no one value is known, both
// ends from 0 to 1, in percent: "41 to 80 %". It returns one value where both ends
// round to it, and "" for NaN.
func (s Style) ChanceSpan(lo, hi float64) string {
	if math.IsNaN(lo) || math.IsNaN(hi) || percent(lo) == percent(hi) {
		return s.Chance(hi, 0)
	}
	return s.end(lo) + s.to() + s.end(hi) + " %"
}

// to stands between the ends of a range.
func (s Style) to() string {
	if s.Face == Table {
		return "–"
	}
	return " to "
}

// end returns one end of a range, without the percent sign.
func (s Style) end(p float64) string {
	switch {
	case p > mostSure:
		return s.over() + "99"
	case p < leastSure:
		return s.under() + "1"
	}
	return Decimal(percent(p), 0)
}

// Wanted returns the chance that the plan asks for, 0 to 1, in percent to a tenth.
func (s Style) Wanted(p float64) string { return s.Share(p, 1) }

// Share returns a counted or measured share, 0 to 1, in percent with at most the given
// decimals. Unlike Chance, it writes 0 and 100 %, because a share is a fact.
func (s Style) Share(share float64, most int) string {
	if out, ok := s.unwritten(share); ok {
		return out
	}
	return s.Number(100*share, most) + " %"
}

func percent(p float64) float64 { return math.Round(100 * p) }

func (s Style) over() string {
	if s.Face == Table {
		return ">"
	}
	return "over "
}

func (s Style) under() string {
	if s.Face == Table {
		return "<"
	}
	return "under "
}
