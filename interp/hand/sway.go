// Sway: how often somebody who stands, or the camera, is out of what is sharp.
//
// Who stands still is never quite still. Place along the axis is taken as a
// stationary, critically damped process of second order about the mark: normal,
// with the correlation (1 + t/Tau) exp(-t/Tau). The share of the time inside a
// zone needs its spread alone. How long it stays inside is counted by crossings of
// the zone's edges (Rice 1944), taken as a Poisson stream that begins inside: an
// approximation, which simulated paths lie on either side of. A process of first
// order would cross infinitely often in no time, and count nothing that one sees.
//
// Sway is not truly stationary (Carroll & Freedman, J. Biomech. 26, 1993, 409-416,
// reject it: it drifts, and the first 20 s differ), and Tau is our own choice
// between the two regimes of Collins & De Luca (Exp. Brain Res. 95, 1993).

package hand

import "math"

const (
	// Person is how much somebody who stands or sits sways along the axis,
	// metres RMS. From memory of studies with force plates (4 to 6 mm, standing).
	Person = 0.005

	// Tau is the time scale of sway, seconds. Our own choice.
	Tau = 1.0
)

// Stays returns the probability that a sway with that RMS, metres, is inside the
// zone from lo to hi, metres from its middle, through all of a time in seconds. It
// is never over Within of the same zone, and that where there is no sway.
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

// SwayLeft returns what is left of a sway, metres RMS, that a hand follows a
// reaction late.
func SwayLeft(sway float64) float64 {
	const u = Sight / Tau
	return sway * math.Sqrt(2*(1-(1+u)*math.Exp(-u)))
}
