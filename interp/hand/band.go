// Bands: how much a chance depends on a value that nobody has measured.
//
// For a hand without a log, the spread of setting a mark is common practice and has
// no source. Half and twice of it are as likely to be true. The chances at those two
// values show honestly how sure a figure is. For a hand fitted to takes, we use the
// ends of the 90 % range of the fit instead.

package hand

import "math"

// rimFrom and rimTo are the lowest and the highest RimSpread of an unknown hand, in
// metres: half and twice the assumed value. Our own choice.
const (
	rimFrom = 0.00025
	rimTo   = 0.001
)

// RimAssumed reports whether the spread of setting a mark is assumed from common
// practice, and not known for this hand.
func (h Hand) RimAssumed() bool { return h.RimFrom == rimFrom && h.RimTo == rimTo }

// Range returns the lowest and the highest value of a figure of the hand, over all
// values that its RimSpread may have. If RimSpread is known, both are the figure
// itself.
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

// SharpWith returns the probability, 0 to 1, that the subject of a follow is sharp at
// a moment. It replaces the rim spread of h, which made the moment, by that of other.
func (h Hand) SharpWith(c Course, m Moment, other Hand) float64 {
	own, rim := RimDegrees(h.RimSpread, c.Rim), RimDegrees(other.RimSpread, c.Rim)
	spread := math.Hypot(math.Sqrt(max(0, m.Spread*m.Spread-own*own)), rim)
	lo, hi := c.Room(m.T)
	return Within(lo, hi, spread, c.Bias-m.Lag)
}
