// Package hand is the landing model: what a hand on a focus ring or wheel can
// do, in degrees at the hand and seconds.
//
// The model is our own, put together from published parts: minimum-jerk
// movement (Flash & Hogan 1985), the speed and accuracy of aimed movement
// (Fitts 1954; ISO 9241-411) at the throughput of wrist and forearm
// (Balakrishnan & MacKenzie 1997). No study of focus pulling stands behind its
// probabilities.
package hand

import "math"

const (
	// Reaction is the time from a sound to the first movement, seconds: the
	// simple reaction to sound (0.14 to 0.16 s: Galton 1899 and Welford 1980,
	// as reviewed by Kosinski; from memory).
	Reaction = 0.16

	// Regrip is the time that letting go and taking hold again costs, seconds.
	// Common practice, no source.
	Regrip = 0.39

	// regripOnset is the travel past the last grip, degrees, over which a
	// re-grip comes to cost its whole time: for a few degrees more a hand
	// stretches instead. Common practice, no source.
	regripOnset = 40

	// maxRegrips bounds the count of re-grips, so that absurd travel cannot
	// overflow it. Such a pull takes over an hour.
	maxRegrips = 10_000

	// Wheel is the diameter of a follow-focus wheel where none is said,
	// metres. Common practice, no source.
	Wheel = 0.080
)

// A Hand is whose hand it is. Throughput, Grip and Limit are positive,
// RimSpread is not negative; a hand without these lands nothing.
type Hand struct {
	Throughput float64 // of the movement, bit/s
	RimSpread  float64 // spread of setting a mark at leisure, metres of rim
	Bias       float64 // mean landing error, degrees, positive past the mark
	Grip       float64 // what one grip can turn, degrees
	Limit      float64 // peak speed that the hand can reach, deg/s

	// RimSpread may be as little as RimFrom and as much as RimTo, metres of rim; 0:
	// it is known.
	RimFrom, RimTo float64

	// Slips is the share of its pulls that slip away and land nowhere near the
	// mark, 0 to under 1: they are not in the spread.
	Slips float64
}

// Default returns a hand of which nothing is known. Throughput is that of
// wrist and forearm (Balakrishnan & MacKenzie 1997, CHI'97, 303-310). A grip of
// 120 degrees lies between the arc that daily tasks use (100: Morrey et al.
// 1981, J Bone Joint Surg 63-A) and the forearm's whole range (158: Boone &
// Azen 1979). Rim spread and limit are common practice, no source.
func Default() Hand {
	return Hand{Throughput: 4.1, RimSpread: 0.0005, RimFrom: rimFrom, RimTo: rimTo, Grip: 120, Limit: 1000}
}

// valid reports whether the hand can move at all.
func (h Hand) valid() bool {
	return h.Throughput > 0 && h.RimSpread >= 0 && h.Grip > 0 && h.Limit > 0 &&
		h.Slips >= 0 && h.Slips < 1 && !math.IsNaN(h.Bias)
}

// A Pull is one turn of the ring or wheel, from rest to rest.
type Pull struct {
	Travel float64 // degrees at the hand, not negative
	Time   float64 // from the moment it hangs on to the landing, seconds
	Reacts bool    // it hangs on a sound or sight, so Reaction passes first
	Even   bool    // constant speed; else minimum jerk

	// Lo and Hi are the edges of the window that keeps the subject sharp,
	// degrees from the mark in the direction of travel: Lo is negative and Hi
	// positive where the mark lies inside. Where a stop of the ring holds the
	// hand, the edge is open: -Inf or +Inf.
	Lo, Hi float64

	Rim    float64 // diameter under the hand, metres; not positive: Wheel
	SigmaX float64 // spread of the distance itself, degrees at the hand

	// Stopped says that the end of the ring in the direction of travel keeps the
	// subject sharp itself, ToStop degrees past the mark: the hand may turn until
	// the ring stops.
	Stopped bool
	ToStop  float64
}

// A Landing is what comes of a Pull.
type Landing struct {
	Regrips int     // how often the hand lets go on the way
	Lost    float64 // seconds that this costs
	Moving  float64 // seconds left to move in; not positive: none
	Peak    float64 // fastest speed at the hand, deg/s; +Inf where it cannot move
	Spread  float64 // standard deviation of where it lands, degrees; +Inf likewise
	Chance  float64 // probability that it lands in the window
	Ceiling float64 // that probability with all the time in the world

	// Possible reports whether there is time to move, or nothing to move.
	Possible bool
	ByStop   bool // turning until the ring stops is what lands best
}

// Land returns how a pull lands. It never returns NaN, except as the Moving of
// a pull without a Time: a pull that makes no sense (travel negative, infinite
// or NaN, a hand that is not valid) has no chance. A pull of no travel has
// landed: its chance is its ceiling in any time.
func (h Hand) Land(p Pull) Landing {
	l := Landing{Peak: math.Inf(1), Spread: math.Inf(1)}
	if !h.valid() || !(p.Travel >= 0) || math.IsInf(p.Travel, 1) {
		return l
	}
	l.Regrips, l.Lost = h.regrips(p.Travel)
	l.Moving = p.Time - l.Lost
	if p.Reacts {
		l.Moving -= Reaction
	}
	l.Ceiling, _ = h.chance(p, 0)
	l.Possible = l.Moving > 0 || p.Travel == 0
	if !l.Possible {
		return l
	}
	l.Peak = peakSpeed(p.Travel, l.Moving, p.Even)
	motor := MotorSpread(p.Travel, l.Moving, h.Throughput)
	l.Spread = math.Hypot(motor, h.floor(p))
	l.Chance, l.ByStop = h.chance(p, motor)
	return l
}

// regrips returns how often the hand lets go over a travel, and the time that
// this costs: whole re-grips but for the last, which comes in by degrees so
// that time lost has no jumps.
func (h Hand) regrips(travel float64) (n int, lost float64) {
	count := math.Ceil(travel/h.Grip) - 1
	if count <= 0 {
		return 0, 0
	}
	last := min(1, (travel-h.Grip*count)/regripOnset)
	return int(min(count, maxRegrips)), Regrip * (count - 1 + max(0, last))
}

// peakSpeed returns the fastest speed of a movement, in degrees a second.
func peakSpeed(travel, seconds float64, even bool) float64 {
	if travel == 0 {
		return 0
	}
	if even {
		return travel / seconds
	}
	return PeakSpeed * (travel / seconds)
}

// floor returns the spread that no amount of time takes away, in degrees: that
// of setting a mark at leisure, and that of the distance itself.
func (h Hand) floor(p Pull) float64 {
	return math.Hypot(RimDegrees(h.RimSpread, p.Rim), p.SigmaX)
}

// RimDegrees returns the angle that a length along the rim of a ring or wheel
// subtends, in degrees. Length and diameter are in metres; a diameter that is
// not positive stands for Wheel.
func RimDegrees(length, diameter float64) float64 {
	if !(diameter > 0) {
		diameter = Wheel
	}
	return 360 * length / (math.Pi * diameter)
}

// chance returns the probability that a movement with that motor spread, degrees,
// ends in the window and is no slip, and whether the ring's stop helps it to.
func (h Hand) chance(p Pull, motor float64) (chance float64, byStop bool) {
	chance = Within(p.Lo, p.Hi, math.Hypot(motor, h.floor(p)), h.Bias)
	if p.Stopped && p.ToStop >= 0 && p.ToStop <= p.Hi && p.Hi > p.Lo {
		if against := h.againstStop(p, motor); against > chance {
			chance, byStop = against, true
		}
	}
	return chance * (1 - h.Slips), byStop
}

// Within returns the probability that a normal value with that mean and spread
// lies between lo and hi: from 0 to 1, 0 where nothing lies between them, and
// never NaN. An open edge is infinite.
func Within(lo, hi, spread, mean float64) float64 {
	if spread == 0 && lo <= mean && mean <= hi {
		return 1
	}
	c := normal(hi-mean, spread) - normal(lo-mean, spread)
	if !(c > 0) { // an empty window, or one with an edge that is NaN
		return 0
	}
	return c
}

// normal is the cumulative normal distribution of mean 0 and standard deviation
// sigma at x. Its limits are those of a spread that vanishes or has no bound; a
// landing without spread counts as inside at the edge.
func normal(x, sigma float64) float64 {
	switch {
	case math.IsInf(x, 0) || sigma == 0 && x != 0:
		x = math.Copysign(math.Inf(1), x)
	case sigma == 0:
		return 0.5
	default:
		x /= sigma
	}
	return 0.5 * math.Erfc(-x/math.Sqrt2)
}
