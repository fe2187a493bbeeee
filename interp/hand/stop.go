// A landing against the end of the ring.
//
// Where the end of the ring keeps the subject sharp too, a puller need not find
// the mark: the ring is turned until it stops. That such a target is reached
// sooner and missed less is known of borders of a screen (Walker & Smelcer 1990;
// Farris, Jones & Anders, Human Factors 44(4), 2002, 578-591). The hand is aimed
// so far past the stop that it hardly ever falls short of it, by three of its
// spreads, and what would go beyond is held there: a normal value censored at the
// stop (Tobin 1958, from memory). Whether a puller does that or aims at the mark
// is theirs to choose, so the better of the two counts and a stop never costs.

package hand

import "math"

const (
	// pastStop is how far past the stop the hand is aimed, in its own spreads.
	// Our own choice.
	pastStop = 3

	// stopSteps is in how many steps the landings short of the stop are summed
	// up. More change the chance by under 1e-5.
	stopSteps = 200
)

// againstStop returns the probability that a hand which turns the ring until it
// stops ends in the window, with that motor spread of the pull as planned.
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
