// The distribution of landings that the robust fit goes by: Student's t with 4
// degrees of freedom. It has room for a wild take without widening all others
// (Lange, Little & Taylor 1989, J Am Stat Assoc 84, 881-896; from memory).

package fit

import "math"

// freedom is the number of its degrees of freedom.
const freedom = 4

// consistent is by what the standard deviation of landings is to be multiplied
// so that, of normal landings, the t fit finds just that standard deviation.
const consistent = 0.8310

// peak4 is the density at 0: Gamma(5/2) / (Gamma(2) sqrt(4 pi)).
const peak4 = 0.375

// logDensity4 returns the logarithm of the density at z.
func logDensity4(z float64) float64 {
	return math.Log(peak4) - (freedom+1)/2.0*math.Log1p(z*z/freedom)
}

// pull4 returns by how much the logarithm of the density falls with z.
func pull4(z float64) float64 { return (freedom + 1) * z / (freedom + z*z) }

// tail4 returns the probability of more than z: (2 - 3u + u^3) / 4 with
// u = z / sqrt(z^2 + 4), written so that far out no digit is lost.
func tail4(z float64) float64 {
	root := math.Sqrt(z*z + freedom)
	u := z / root
	rest := 1 - u
	if z > 0 {
		rest = freedom / (root * (root + z))
	}
	return rest * rest * (2 + u) / 4
}

// hazard4 returns the density over the tail at z: how fast minus the logarithm
// of the tail rises.
func hazard4(z float64) float64 { return math.Exp(logDensity4(z)) / tail4(z) }

// farOut is from where on the tail of the normal distribution is taken by the
// first of its series, z^-1 exp(-z^2/2): no number holds it.
const farOut = 30

// logTail returns minus the logarithm of the normal tail beyond z, and how fast
// it rises.
func logTail(z float64) (nll, hazard float64) {
	if z > farOut {
		return z*z/2 + math.Log(z*math.Sqrt(2*math.Pi)), z + 1/z
	}
	tail := 0.5 * math.Erfc(z/math.Sqrt2)
	return -math.Log(tail), math.Exp(-z*z/2) / (math.Sqrt(2*math.Pi) * tail)
}
