// Speed against accuracy: Fitts's law, forwards and backwards.

package hand

import "math"

// EffectiveWidth is the width of a target divided by the standard deviation of the
// hits on it, if 3.88 % miss: sqrt(2 pi e). It is rounded as in ISO 9241-411 and in
// MacKenzie 1992, Human-Computer Interaction 7.
const EffectiveWidth = 4.133

// Difficulty returns the index of difficulty of a movement, in bits: log2(A/W + 1),
// Shannon's form in ISO 9241-411. Travel A and width W must have the same unit.
func Difficulty(travel, width float64) float64 {
	return math.Log1p(travel/width) / math.Ln2
}

// MotorSpread returns the standard deviation of the end of a movement, in the unit
// of travel. The movement takes the given seconds, at a throughput in bit/s. It
// solves ISO 9241-411 for the width: throughput x seconds is a Difficulty in bits,
// and the width of that difficulty divided by EffectiveWidth is the spread. The
// spread falls as the time grows. It is +Inf for a time of 0, and 0 for a travel of
// 0.
func MotorSpread(travel, seconds, throughput float64) float64 {
	if travel == 0 {
		return 0
	}
	// Expm1 keeps the digits of 2^bits - 1 where bits are few.
	width := travel / math.Expm1(throughput*seconds*math.Ln2)
	return width / EffectiveWidth
}
