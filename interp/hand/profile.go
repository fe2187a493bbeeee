// Profiles: the shape of a movement in time.

package hand

const (
	// PeakSpeed is the fastest speed of a minimum-jerk movement, as a multiple of
	// travel/time: 15/8, at the middle (Flash & Hogan 1985, J Neurosci 5(7),
	// 1688-1703).
	PeakSpeed = 1.875

	// PeakAcceleration is the greatest acceleration of such a movement, as a multiple
	// of travel/time^2: 10/sqrt(3), at (3 - sqrt 3)/6 of its time.
	PeakAcceleration = 10 / 1.7320508075688772935274463415058723669428
)

// MinJerk returns the share of a minimum-jerk movement that is done after the share u
// of its time: 10 u^3 - 15 u^4 + 6 u^5 (Flash & Hogan 1985). People turn knobs this
// way (Novak, Miller & Houk 2000, Exp Brain Res 132, 419-433). It returns 0 before
// u = 0, and 1 after u = 1.
func MinJerk(u float64) float64 {
	u = min(max(u, 0), 1)
	return u * u * u * (10 + u*(-15+6*u))
}

// MinJerkSpeed returns the first derivative of MinJerk at u. It is 0 outside 0 to 1.
func MinJerkSpeed(u float64) float64 {
	u = min(max(u, 0), 1)
	return 30 * u * u * (1 - u) * (1 - u)
}

// MinJerkAcceleration returns the second derivative of MinJerk at u. It is 0 outside
// 0 to 1.
func MinJerkAcceleration(u float64) float64 {
	u = min(max(u, 0), 1)
	return 60 * u * (1 - u) * (1 - 2*u)
}

// MinJerkTime is the inverse of MinJerk: it returns the share of the time after which
// the share x of the travel is done. It returns 0 for x below 0, and 1 for x above 1.
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

// bisect returns the lowest value in (lo, hi] that fulfils a condition. The condition
// must hold at hi, and must hold for every value above one that fulfils it. The
// result is exact to within tolerance, or to the last bit if that is 0. It always
// fulfils the condition.
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
