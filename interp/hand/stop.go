// A landing against the end of the ring.
//
// If the subject is sharp at the end of the ring too, the puller need not find the
// mark, and can turn the ring until it stops. People reach such a target sooner and
// miss it less often: studies show this for the borders of a screen (Walker & Smelcer
// 1990; Farris, Jones & Anders, Human Factors 44(4), 2002, 578-591). The hand aims
// past the stop by three of its spreads, so that it hardly ever falls short of it.
// The ring holds it there: the landing is a normal value censored at the stop (Tobin
// 1958, from memory). A puller may do that or aim at the mark, so the better of the
// two counts, and a stop never lowers a chance.

package hand

import "math"

const (
	// pastStop is how far past the stop the hand aims, in its own spreads. Our own
	// choice.
	pastStop = 3

	// stopSteps is the number of steps in the sum over landings short of the stop.
	// More steps change the chance by under 1e-5.
	stopSteps = 200
)

// againstStop returns the probability, 0 to 1, that a hand ends in the window if it
// turns the ring until it stops. motor is the motor spread of the planned pull, in
// degrees.
func (h Hand) againstStop(p Pull, motor float64) float64 {
	rim := RimDegrees(h.RimSpread, p.Rim)
	past := p.ToStop + pastStop*math.Hypot(motor, rim)
	if p.Travel > 0 {
		motor *= (p.Travel + past) / p.Travel // the spread grows with the way
	}
	spread, aim := math.Hypot(motor, rim), past+h.Bias
	if p.SigmaX == 0 { // every place from the near edge to the stop is sharp
		return 1 - normal(p.Lo-aim, spread)
	}
	sharp := func(at float64) float64 { return Within(p.Lo-at, p.Hi-at, p.SigmaX, 0) }
	chance := (1 - normal(p.ToStop-aim, spread)) * sharp(p.ToStop)
	from := max(p.ToStop, aim) - 8*spread
	if !(from < p.ToStop) || math.IsInf(from, 0) {
		return chance
	}
	step := (p.ToStop - from) / stopSteps
	for i := range stopSteps {
		at := from + (float64(i)+0.5)*step
		z := (at - aim) / spread
		chance += step * math.Exp(-z*z/2) / (spread * math.Sqrt(2*math.Pi)) * sharp(at)
	}
	return min(chance, 1)
}
