// The fit: whose hand would make these takes. Bias, throughput and rim spread,
// robustly and held to what is known of hands beforehand, or by maximum
// likelihood of the takes alone.

package fit

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/hand"
)

// The parameters of a hand as the fit has them.
const (
	bias       = iota // degrees
	throughput        // logarithm of bit/s
	rim               // logarithm of degrees on ReferenceRim
	parameters
)

// A theta is a hand in parameters.
type theta [parameters]float64

// A prior is a normal distribution of a parameter.
type prior struct{ mean, sd float64 }

// priors are what is taken for known of hands before any take, so that a few
// takes stay near it and a few dozen outweigh it. Nothing else shrinks a fit.
// Throughput is about that of wrist and forearm (Balakrishnan & MacKenzie 1997),
// the rim spread about half a millimetre on a rim of 80 mm, which is assumed.
// Their widths are our own choice.
var priors = [parameters]prior{
	bias:       {0, 0.5},
	throughput: {math.Log(4.1), 0.25},
	rim:        {math.Log(0.7), 0.35},
}

// bounds hold the fit without priors where takes say nothing: a throughput of
// 0.05 to 80 bit/s, a rim spread of a thousandth to 60 degrees.
var bounds = [parameters][2]float64{
	bias:       {-3600, 3600},
	throughput: {math.Log(0.05), math.Log(80)},
	rim:        {math.Log(0.001), math.Log(60)},
}

// An Estimate is a fitted value with its interval. An end of the interval that
// the takes do not bound is infinite, or 0 for what is never negative.
type Estimate struct{ Value, Lo, Hi float64 }

// A Fit is a hand as takes show it.
type Fit struct {
	Bias       Estimate // mean landing error, degrees, positive past the mark
	Throughput Estimate // bit/s
	Rim        Estimate // spread at leisure, degrees on ReferenceRim
	NegLog     float64  // minus the logarithm of the likelihood, nats

	Takes     int     // that it is of, slips among them
	Slipped   int     // of them, slips: they are not in the spread
	Slips     []Slip  // the slips, the farthest first; of a log of over 4096 takes those that can still be told
	SlipShare float64 // of all pulls, slips: what chances are lessened by
}

// RimSpread returns the rim spread in metres of rim. A hand sets a mark to a
// length of the rim that it can see and feel, so that this, and not the angle,
// is what it takes along to another wheel.
func (f *Fit) RimSpread() float64 { return f.Rim.Value / hand.RimDegrees(1, ReferenceRim) }

// Hand returns h with what the fit knows of it: throughput, rim spread, bias and
// share of slips. A fit of no takes knows nothing.
func (f *Fit) Hand(h hand.Hand) hand.Hand {
	if f.Takes == 0 {
		return h
	}
	h.Throughput, h.RimSpread, h.Bias, h.Slips = f.Throughput.Value, f.RimSpread(), f.Bias.Value, f.SlipShare
	return h
}

// Spread returns the standard deviation of landings after a movement of that
// travel and time on a wheel of ReferenceRim.
func (f *Fit) Spread(travel, moving float64) float64 { return f.spread(travel, moving, 1) }

// spread is Spread on a rim that degrees grow by so much on.
func (f *Fit) spread(travel, moving, rim float64) float64 {
	return math.Hypot(hand.MotorSpread(travel, moving, f.Throughput.Value), f.Rim.Value*rim)
}

// fit returns the hand at the best place, with or without its ranges.
func (l *likelihood) fit(best theta, ranges bool) Fit {
	of := func(i int) Estimate {
		if !ranges {
			return Estimate{best[i], best[i], best[i]}
		}
		return l.interval(best, i)
	}
	return Fit{Bias: of(bias), Throughput: of(throughput).exp(), Rim: of(rim).exp(), NegLog: l.at(best, nil, nil)}
}

// exp returns the estimate of what this is the logarithm of.
func (e Estimate) exp() Estimate { return Estimate{math.Exp(e.Value), math.Exp(e.Lo), math.Exp(e.Hi)} }

// global returns where the objective is least of all. The likelihood of a few
// takes can have more than one valley, so it is sought from the two best of
// several places.
func (l *likelihood) global() theta {
	type start struct {
		at    theta
		value float64
	}
	var starts []start
	for _, centre := range l.centres() {
		for _, tp := range []float64{2, 4.1, 8} {
			for _, s0 := range []float64{0.2, 0.7, 2.5} {
				at := theta{centre, math.Log(tp), math.Log(s0)}
				starts = append(starts, start{at, l.objective(at, nil, nil)})
			}
		}
	}
	slices.SortStableFunc(starts, func(a, b start) int { return cmp.Compare(a.value, b.value) })
	best := l.least(starts[0].at, [parameters]bool{})
	other := l.least(starts[1].at, [parameters]bool{})
	if l.objective(other, nil, nil) < l.objective(best, nil, nil)-1e-9 {
		return other
	}
	return best
}

// centres returns where the bias may be sought from: the mean error, and of a
// robust fit the middle one, which slips do not move, and no bias at all.
func (l *likelihood) centres() []float64 {
	sum, list := 0.0, slices.Clone(l.cells)
	for i := range list {
		sum += list[i].sum
	}
	mean := sum / max(l.total, 1)
	if !l.robust {
		return []float64{mean}
	}
	slices.SortFunc(list, func(a, b cell) int { return cmp.Compare(a.sum/a.n, b.sum/b.n) })
	below := 0.0
	for i := range list {
		if below += list[i].n; below >= l.total/2 {
			return []float64{list[i].sum / list[i].n, 0}
		}
	}
	return []float64{mean}
}
