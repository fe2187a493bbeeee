// The time that a pull needs.

package hand

import "math"

const (
	// timeTolerance is how close to the shortest time Needed comes, seconds.
	timeTolerance = 1e-9
	// enoughBits of movement leave no spread: 2^1100 is beyond a float64.
	enoughBits = 1100
)

// Needed returns the shortest Time, in seconds, at which the pull lands with
// the wanted probability (0 to 1) and its peak speed is within the hand's
// limit; p's own Time does not count. It is false where no time will do: the
// pull's ceiling is under what is wanted.
//
// The spread falls as the time grows, and with it the chance rises, as long as
// the hand's mean landing (the mark and its Bias) lies inside the window. Where
// it lies outside, a careless hand hits by luck what a careful one misses: the
// chance, always under one half, rises to a best time and then falls, so the
// search goes no farther than that.
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

// quickest returns the time in which the hand's limit lets it move, in seconds.
func (h Hand) quickest(p Pull) float64 {
	return peakSpeed(p.Travel, 1, p.Even) / h.Limit
}

// bestMoving returns the time to move, in seconds, that gives the best chance
// of landing: as good as infinite, except for a hand whose mean landing is
// outside the window.
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
