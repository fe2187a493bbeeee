// Package hand is the landing model: how fast and how well a hand turns a focus
// ring or wheel. Angles are in degrees at the hand, times in seconds.
//
// The model is our own and combines published parts: minimum-jerk movement (Flash &
// Hogan 1985), and the speed and accuracy of aimed movement (Fitts 1954; ISO
// 9241-411) at the throughput of wrist and forearm (Balakrishnan & MacKenzie 1997).
// No study of focus pulling has tested its probabilities.
package hand

import "math"

const (
	// Reaction is the time from a sound to the first movement, in seconds: the
	// simple reaction to sound (0.14 to 0.16 s: Galton 1899 and Welford 1980,
	// as reviewed by Kosinski; from memory).
	Reaction = 0.16

	// Regrip is the time to let go of the ring and take hold again, in seconds.
	// Common practice, no source.
	Regrip = 0.39

	// regripOnset is the travel past the last grip, in degrees, after which a
	// re-grip costs its whole time. For a few degrees more, a hand stretches
	// instead. Common practice, no source.
	regripOnset = 40

	// maxRegrips limits the count of re-grips, so that an absurd travel cannot
	// overflow it. A pull with that many takes over an hour.
	maxRegrips = 10_000

	// Wheel is the default diameter of a follow-focus wheel, in metres. Common
	// practice, no source.
	Wheel = 0.080
)

// A Hand holds the figures of a puller's hand. Throughput, Grip and Limit must be
// positive, and RimSpread must not be negative; otherwise every chance is 0.
type Hand struct {
	Throughput float64 // of the movement, bit/s
	RimSpread  float64 // spread of setting a mark without haste, metres of rim
	Bias       float64 // mean landing error, degrees, positive past the mark
	Grip       float64 // how far the hand turns in one grip, degrees
	Limit      float64 // peak speed that the hand can reach, deg/s

	// RimFrom and RimTo are the lowest and the highest value that RimSpread may have,
	// in metres of rim. Both are 0 if RimSpread is known.
	RimFrom, RimTo float64

	// Slips is the share of pulls that go wrong and land nowhere near the mark, from
	// 0 to under 1. The spread does not include them.
	Slips float64
}

// Default returns the hand to assume if nothing is known of the puller. Throughput
// is that of wrist and forearm (Balakrishnan & MacKenzie 1997, CHI'97, 303-310). A
// grip of 120 degrees lies between the arc that daily tasks use (100: Morrey et al.
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
	Time   float64 // from its cue to the landing, seconds
	Reacts bool    // its cue is a sound or sight, so Reaction passes first
	Even   bool    // constant speed; else minimum jerk

	// Lo and Hi are the edges of the window that keeps the subject sharp, in degrees
	// from the mark in the direction of travel. If the mark lies inside, Lo is
	// negative and Hi positive. If a stop of the ring holds the hand, that edge is
	// open: -Inf or +Inf.
	Lo, Hi float64

	Rim    float64 // diameter under the hand, metres; if not positive, Wheel
	SigmaX float64 // spread of the subject's distance, degrees at the hand

	// Stopped is true if the subject is also sharp at the end of the ring in the
	// direction of travel, ToStop degrees past the mark. The hand may then turn
	// until the ring stops.
	Stopped bool
	ToStop  float64
}

// A Landing is the result of a Pull.
type Landing struct {
	Regrips int     // how often the hand lets go on the way
	Lost    float64 // seconds that the re-grips take
	Moving  float64 // seconds left to move; not positive: none
	Peak    float64 // fastest speed at the hand, deg/s; +Inf if it cannot move
	Spread  float64 // standard deviation of the landing, degrees; +Inf if it cannot move
	Chance  float64 // probability that it lands in the window
	Ceiling float64 // the same probability with unlimited time

	// Possible reports whether there is time to move, or nothing to move.
	Possible bool
	ByStop   bool // it lands best if the hand turns until the ring stops
}

// Land returns how a pull lands. A pull that makes no sense (a travel that is
// negative, infinite or NaN, or a hand that is not valid) has a chance of 0. For a
// travel of 0 the chance is the ceiling, in any time. Land never returns NaN, except
// as the Moving of a pull whose Time is NaN.
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
	if l.Chance, l.ByStop = h.chance(p, motor); l.ByStop {
		l.Chance = min(l.Chance, l.Ceiling) // a careless hand may rest by luck between mark and stop
	}
	return l
}

// regrips returns how often the hand lets go over a travel, and the time lost in
// seconds. Every re-grip but the last costs its whole time. The cost of the last one
// grows with the travel, so that the time lost has no jumps.
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

// floor returns the spread in degrees that remains however long the pull takes: that
// of setting a mark without haste, combined with that of the subject's distance.
func (h Hand) floor(p Pull) float64 {
	return math.Hypot(RimDegrees(h.RimSpread, p.Rim), p.SigmaX)
}

// RimDegrees returns the angle in degrees of a length along the rim of a ring or
// wheel. Length and diameter are in metres. If the diameter is not positive, it uses
// Wheel.
func RimDegrees(length, diameter float64) float64 {
	if !(diameter > 0) {
		diameter = Wheel
	}
	return 360 * length / (math.Pi * diameter)
}

// chance returns the probability that a movement ends in the window and is no slip,
// and whether the stop of the ring raises it. The motor spread is in degrees.
func (h Hand) chance(p Pull, motor float64) (chance float64, byStop bool) {
	chance = Within(p.Lo, p.Hi, math.Hypot(motor, h.floor(p)), h.Bias)
	if p.Stopped && p.ToStop >= 0 && p.ToStop <= p.Hi && p.Hi > p.Lo {
		if against := h.againstStop(p, motor); against > chance {
			chance, byStop = against, true
		}
	}
	return chance * (1 - h.Slips), byStop
}

// Within returns the probability, 0 to 1, that a normal value with the given mean and
// standard deviation lies between lo and hi. An open edge is infinite. It returns 0
// for an empty window, and never NaN.
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

// normal returns the cumulative normal distribution at x, with mean 0 and standard
// deviation sigma. sigma may be 0 or infinite. For sigma = 0 and x = 0 it returns
// 0.5.
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
