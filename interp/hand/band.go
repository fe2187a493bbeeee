// Bands: how far a chance hangs on what nobody has measured of the hand.
//
// Of a hand without a log, how well it sets a mark at leisure is common practice and
// has no source. Half and twice of it are as likely to be true, and the chance at
// those is the honest way to say how sure a figure is. Of a hand that is fitted to
// takes, the ends of the fit's 90 % range stand in their place.

package hand

import "math"

// The least and the most that RimSpread may be of a hand of which nothing is known,
// metres: half and twice of what is assumed. Our own choice.
const (
	rimFrom = 0.00025
	rimTo   = 0.001
)

// RimAssumed tells whether nothing but common practice says how well the hand sets a
// mark.
func (h Hand) RimAssumed() bool { return h.RimFrom == rimFrom && h.RimTo == rimTo }

// Range returns the least and the most of a figure of the hand over all that its
// RimSpread may be. Both are the figure itself where that is known.
func (h Hand) Range(figure func(Hand) float64) (least, most float64) {
	least = figure(h)
	most = least
	for _, rim := range [2]float64{h.RimFrom, h.RimTo} {
		if rim > 0 {
			other := h
			other.RimSpread = rim
			v := figure(other)
			least, most = min(least, v), max(most, v)
		}
	}
	return least, most
}

// SharpWith returns the probability that the subject of a follow is sharp at one of
// its moments, with the rim spread of other in place of that of h, which made the
// moment.
func (h Hand) SharpWith(c Course, m Moment, other Hand) float64 {
	own, rim := RimDegrees(h.RimSpread, c.Rim), RimDegrees(other.RimSpread, c.Rim)
	spread := math.Hypot(math.Sqrt(max(0, m.Spread*m.Spread-own*own)), rim)
	lo, hi := c.Room(m.T)
	return Within(lo, hi, spread, c.Bias-m.Lag)
}
