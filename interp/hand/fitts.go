// Speed against accuracy: Fitts's law, forwards and backwards.

package hand

import "math"

// EffectiveWidth is the width of a target over the standard deviation of the
// hits on it, where 3.88 % miss: sqrt(2 pi e), rounded as ISO 9241-411 and
// MacKenzie 1992, Human-Computer Interaction 7, print it.
const EffectiveWidth = 4.133

// Difficulty returns the index of difficulty of a movement, in bits: Shannon's
// form log2(A/W + 1) of ISO 9241-411. Travel and width share a unit.
func Difficulty(travel, width float64) float64 {
	return math.Log1p(travel/width) / math.Ln2
}

// MotorSpread returns the standard deviation of where a movement of that travel
// ends when it takes that many seconds at that throughput in bit/s: ISO
// 9241-411 read backwards. What a hand can tell apart in the time is
// throughput x seconds bits; the width of which that is the Difficulty, over
// EffectiveWidth, is the spread. It has the unit of travel, falls as the time
// grows, and is +Inf in no time. No travel has no spread.
func MotorSpread(travel, seconds, throughput float64) float64 {
	if travel == 0 {
		return 0
	}
	// Expm1 keeps the digits of 2^bits - 1 where bits are few.
	width := travel / math.Expm1(throughput*seconds*math.Ln2)
	return width / EffectiveWidth
}
