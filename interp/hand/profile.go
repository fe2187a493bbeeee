// Profiles: how a movement goes in time.

package hand

import "math"

const (
	// PeakSpeed is the fastest speed of a minimum-jerk movement, times its
	// travel over its time: 15/8, at its middle (Flash & Hogan 1985, J
	// Neurosci 5(7), 1688-1703).
	PeakSpeed = 1.875

	// PeakAcceleration is its greatest acceleration, times travel over time
	// squared: 10/sqrt(3), at (3 - sqrt 3)/6 of its time.
	PeakAcceleration = 10 / 1.7320508075688772935274463415058723669428
)

// MinJerk is the share of a minimum-jerk movement done at the share u of its
// time: 10 u^3 - 15 u^4 + 6 u^5 (Flash & Hogan 1985). Knob turning follows it
// (Novak, Miller & Houk 2000, Exp Brain Res 132, 419-433). Before 0 it is 0,
// after 1 it is 1.
func MinJerk(u float64) float64 {
	u = min(max(u, 0), 1)
	return u * u * u * (10 + u*(-15+6*u))
}

// MinJerkSpeed is the first derivative of MinJerk; 0 outside 0 to 1.
func MinJerkSpeed(u float64) float64 {
	u = min(max(u, 0), 1)
	return 30 * u * u * (1 - u) * (1 - u)
}

// MinJerkAcceleration is the second derivative of MinJerk; 0 outside 0 to 1.
func MinJerkAcceleration(u float64) float64 {
	u = min(max(u, 0), 1)
	return 60 * u * (1 - u) * (1 - 2*u)
}

// MinJerkTime is the inverse of MinJerk: the share of the time at which the
// share x of the travel is done. Shares outside 0 to 1 count as its ends.
func MinJerkTime(x float64) float64 {
	lo, hi := 0.0, 1.0
	if !(x > 0) {
		return lo
	}
	if x >= 1 {
		return hi
	}
	return bisect(lo, hi, 0, func(u float64) bool { return MinJerk(u) >= x })
}

// bisect returns the least value in (lo, hi] at which a condition holds that
// holds at hi and, once it holds, holds on; to within tolerance, or to the last
// bit where that is 0. The value returned fulfils the condition.
func bisect(lo, hi, tolerance float64, holds func(float64) bool) float64 {
	for hi-lo > tolerance {
		mid := lo + (hi-lo)/2
		if mid <= lo || mid >= hi {
			break
		}
		if holds(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// RegripTimes returns the times from the start of a pull, in seconds, at which
// the hand has used up a grip on the planned curve, which runs over all of
// Time. There are as many as Land counts re-grips, none where Time is not a
// positive number.
func (h Hand) RegripTimes(p Pull) []float64 {
	n := h.Land(p).Regrips
	if !(p.Time > 0) || math.IsInf(p.Time, 1) || n == 0 {
		return nil
	}
	times := make([]float64, n)
	for i := range times {
		u := float64(i+1) * h.Grip / p.Travel
		if !p.Even {
			u = MinJerkTime(u)
		}
		times[i] = u * p.Time
	}
	return times
}
