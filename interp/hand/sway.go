// Sway: how often a person who stands, or the camera, leaves the sharp zone.
//
// Nobody stands quite still. The model treats the place along the axis as a
// stationary, critically damped process of second order about the mark. It is normal,
// with the correlation (1 + t/Tau) exp(-t/Tau). The share of the time inside a zone
// depends only on the spread. To find how long a person stays inside, the model
// counts crossings of the edges of the zone (Rice 1944), as a Poisson stream that
// begins inside. This is an approximation; simulated paths lie on either side of it.
// A process of first order would cross an edge infinitely often in no time, which
// nobody would see.
//
// Real sway is not stationary: it drifts, and the first 20 s differ (Carroll &
// Freedman, J. Biomech. 26, 1993, 409-416). Tau is our own choice between the two
// regimes of Collins & De Luca (Exp. Brain Res. 95, 1993).

package hand

import "math"

const (
	// Person is the sway along the axis of a person who stands or sits, in metres RMS.
	// From memory of studies with force plates (4 to 6 mm, standing).
	Person = 0.005

	// Tau is the time scale of sway, in seconds. Our own choice.
	Tau = 1.0
)

// Stays returns the probability, 0 to 1, that a swaying person stays inside a zone
// for a whole time in seconds. lo and hi are the edges in metres from the middle of
// the sway; sway is in metres RMS. The result is never above Within of the same zone,
// and equals it without sway.
func Stays(lo, hi, sway, seconds float64) float64 {
	inside := Within(lo, hi, sway, 0)
	if sway == 0 || inside == 0 {
		return inside
	}
	edge := func(at float64) float64 { // an infinite edge is never crossed
		z := at / sway
		return math.Exp(-z * z / 2)
	}
	crossings := (edge(hi) + edge(lo)) / (2 * math.Pi * Tau) // a second: the speed's RMS is the sway's over Tau
	return inside * math.Exp(-crossings*seconds/inside)
}

// SwayLeft returns the sway, in metres RMS, that remains if a hand corrects the given
// sway one reaction time late.
func SwayLeft(sway float64) float64 {
	const u = Sight / Tau
	return sway * math.Sqrt(2*(1-(1+u)*math.Exp(-u)))
}
