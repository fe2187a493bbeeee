// The scale of the band of the hand.

package bands

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A TurnScale is the range of degrees at the hand that the band shows.
type TurnScale struct{ Low, High float64 }

func newTurnScale(sc *Chart) TurnScale {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(deg float64) {
		if sheet.Finite(deg) {
			lo, hi = min(lo, deg), max(hi, deg)
		}
	}
	for _, w := range sc.Windows {
		for _, deg := range w.Curves.Hand {
			take(deg)
		}
	}
	for _, u := range sc.Shot.Subjects {
		if HasMark(sc.Shot, u) {
			take(float64(u.RingDeg * sc.Shot.Gear))
		}
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	pad := max(0.1*(hi-lo), 1)
	lo, hi = lo-pad, hi+pad
	for most, p := hi-lo, 0; p < len(sc.Shot.Pulls); p++ { // windows, as far as they do not squeeze the rest
		for _, end := range sc.Shot.Pulls[p].WindowHand {
			if deg := float64(end); sheet.Finite(deg) && max(hi, deg)-min(lo, deg) <= 2*most {
				lo, hi = min(lo, deg-pad/4), max(hi, deg+pad/4)
			}
		}
	}
	return TurnScale{lo, hi}
}

// HasMark reports whether the hand has a mark for a subject: one that always stands where
// it is at the start.
func HasMark(s *plan.Shot, u *plan.Subject) bool { return u.RingDeg.Known() && !sheet.Moves(s, u) }
