// Chances and shares.

package units

import "math"

// A model promises neither 0 nor 100 %: beyond these a chance is only said to
// be over or under.
const (
	mostSure  = 0.995
	leastSure = 0.005
)

// leastRange is from how many points on a range is written at all.
const leastRange = 3

// Chance returns a probability, 0 to 1, in whole percent. Where one is wanted
// (wanted 0: none is), a chance below it never reads as if it were enough:
// "under 90 %".
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

// ChanceRange returns a probability with the least and the most that it may be:
// "84 % (64 to 91)". A range of less than three points is left out.
func (s Style) ChanceRange(p, lo, hi, wanted float64) string {
	text := s.Chance(p, wanted)
	if text == "" || !(percent(hi)-percent(lo) >= leastRange) {
		return text
	}
	to := " to "
	if s.Face == Table {
		to = "–"
	}
	return text + " (" + s.end(lo) + to + s.end(hi) + ")"
}

// end writes one end of a range, without the sign.
func (s Style) end(p float64) string {
	switch {
	case p > mostSure:
		return s.over() + "99"
	case p < leastSure:
		return s.under() + "1"
	}
	return Decimal(percent(p), 0)
}

// Wanted returns the chance that is asked for as it was asked for, to a tenth
// of a percent.
func (s Style) Wanted(p float64) string { return s.Share(p, 1) }

// Share returns a share of what can be counted or measured, 1 being all, in
// percent with at most so many decimals. Here 0 and 100 % are facts.
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
