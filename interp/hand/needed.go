// The time that a pull needs.

package hand

import "math"

const (
	// timeTolerance is the greatest error of Needed, in seconds.
	timeTolerance = 1e-9
	// enoughBits is a difficulty at which no spread is left: 2^1100 is more than a
	// float64 can hold.
	enoughBits = 1100
)

// Needed returns the shortest Time, in seconds, in which the pull lands with the
// wanted probability (0 to 1) and its peak speed stays within the limit of the hand.
// It ignores the Time of p. ok is false if no time is long enough, because the
// ceiling of the pull is under the wanted probability.
//
// The spread falls as the time grows. So the chance rises, as long as the mean
// landing (the mark plus Bias) lies inside the window. If it lies outside, a careless
// hand hits by luck where a careful one misses. The chance is then always under one
// half. It rises up to a best time and falls after it, so the search ends there.
func (h Hand) Needed(p Pull, wanted float64) (seconds float64, ok bool) {
	p.Time = 0
	still := h.Land(p)
	if p.Travel == 0 {
		return 0, still.Chance >= wanted
	}
	start := -still.Moving // what reaction and re-grips take
	lands := func(t float64) bool {
		p.Time = t
		l := h.Land(p)
		return l.Possible && l.Chance >= wanted && l.Peak <= h.Limit
	}
	end := start + max(h.quickest(p), h.bestMoving(p))
	// Land takes the start off again, which may round the wrong way.
	end += 4 * (math.Nextafter(end, math.Inf(1)) - end)
	if !h.valid() || math.IsInf(end, 1) || !lands(end) {
		return 0, false
	}
	return bisect(start, end, timeTolerance, lands), true
}

// quickest returns the shortest moving time, in seconds, that the limit of the hand
// allows.
func (h Hand) quickest(p Pull) float64 {
	return peakSpeed(p.Travel, 1, p.Even) / h.Limit
}

// bestMoving returns the moving time, in seconds, with the best chance of landing. It
// is practically infinite, except for a hand whose mean landing is outside the
// window.
func (h Hand) bestMoving(p Pull) float64 {
	ages := enoughBits / h.Throughput
	near, far := p.Lo-h.Bias, p.Hi-h.Bias
	if near <= 0 && far >= 0 || p.Stopped {
		return ages
	}
	if far < 0 {
		near, far = -far, -near
	}
	if math.IsInf(far, 1) {
		return 0 // the more care, the worse
	}
	// The chance is greatest where its derivative by the spread s is 0:
	// s^2 = (far^2 - near^2) / (2 ln(far/near)).
	best := math.Sqrt((far - near) * (far + near) / (2 * math.Log(far/near)))
	floor := h.floor(p)
	if !(best > floor) {
		return ages
	}
	motor := math.Sqrt((best - floor) * (best + floor))
	return Difficulty(p.Travel, EffectiveWidth*motor) / h.Throughput
}
