// Rings of which nothing is known.
//
// A plan that does not say how far the ring turns says nothing of the hand: one figure
// would be a guess. But rings turn from 60 to 320 degrees, and by then most of them
// focus nearly as a unit. So the shot is landed on rings of five such throws, and what
// is told is between what the chances of all of them lie. There are no degrees.

package built

import (
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A Guess is what a pull comes to on a ring that turns so far.
type Guess struct {
	Throw   float64   // degrees
	Asks    hand.Pull // of a follow: where it ends
	Landed  hand.Landing
	Peak    float64 // fastest speed at the hand, deg/s
	Worst   float64 // share of the worst half second of a follow that is sharp
	Chance  plan.Interval
	Ceiling plan.Interval
}

// supposed returns the shot on a ring that turns so far; nil where there is none.
func (b *Shot) supposed(throw float64) *Shot {
	law := b.Setup.Lens.Supposed(throw)
	if law == nil {
		return nil
	}
	other, sh := *b, *b.Plan
	sh.Optics.Ring = law
	other.Plan = &sh
	return &other
}

// guess lands a pull on rings of all throws, and tells between what it lies.
func (b *Shot) guess(p *Pull) {
	p.Guesses = nil
	if !b.Plan.RingUnknown() || b.OutOfReach(p) || p.Rack.Failed || p.Rack.LandS < p.Rack.StartS {
		return
	}
	chance, ceiling := nothing(), nothing()
	for _, throw := range kit.Throws {
		other := b.supposed(throw)
		if other == nil {
			continue
		}
		g, ok := other.guessed(p, throw)
		if !ok {
			continue
		}
		p.Guesses = append(p.Guesses, g)
		chance, ceiling = over(chance, g.Chance), over(ceiling, g.Ceiling)
	}
	if len(p.Guesses) > 0 {
		b.lies(p, chance, ceiling)
	}
}

// guessed lands a pull in a shot whose ring is supposed.
func (b *Shot) guessed(p *Pull, throw float64) (g Guess, ok bool) {
	own := b.Setup.Hand
	g.Throw, g.Worst = throw, math.NaN()
	if g.Asks, ok = b.HandPull(p); !ok {
		return g, false
	}
	g.Landed = own.Land(g.Asks)
	g.Ceiling = between(own.Range(func(h hand.Hand) float64 { return h.Land(g.Asks).Ceiling }))
	if !p.Rack.Follow {
		g.Peak = g.Landed.Peak
		g.Chance = between(own.Range(func(h hand.Hand) float64 { return h.Land(g.Asks).Chance }))
		return g, true
	}
	if !(p.Rack.LandS > p.Rack.StartS) || b.TooNear(&p.Rack.Aim, p.Rack.StartS) {
		return g, false
	}
	w := b.Stage.Way(b.sight(), &p.Rack.Aim, p.Rack.StartS-1, p.Rack.LandS+1)
	course := b.course(p, &w)
	moments := own.Follow(course)
	peak, _ := b.followSpeed(p)
	g.Peak = float64(peak)
	g.Worst, _ = hand.WorstHalfSecond(moments)
	g.Chance = between(own.Range(func(h hand.Hand) float64 {
		return min(own.SharpWith(course, moments[len(moments)-1], h)*(1-h.Slips), h.Land(g.Asks).Ceiling)
	}))
	return g, true
}

// Spans returns between what the chance of a pull and its ceiling lie in this shot, as it
// is or at another stop, on rings of all throws.
func (b *Shot) Spans(p *Pull) (chance, ceiling plan.Interval) {
	again := b.guessAgain(p)
	return again.Plan.ChanceBand, again.Plan.CeilingBand
}

// BestWorst returns the share of the worst half second of a follow that is sharp on the
// ring that suits it best; 0 where nothing can be said.
func (b *Shot) BestWorst(p *Pull) (best float64) {
	for _, g := range b.guessAgain(p).Guesses {
		best = max(best, g.Worst)
	}
	return best
}

func (b *Shot) guessAgain(p *Pull) *Pull {
	again, to := *p, *p.Plan
	to.ChanceBand, to.CeilingBand = plan.NoInterval(), plan.NoInterval()
	again.Plan = &to
	b.guess(&again)
	return &again
}

// ShortestOnBest returns the shortest time in which a rack lands as wanted on the ring
// that suits it best, in seconds; ok is false where it lands on none.
func (b *Shot) ShortestOnBest(p *Pull) (seconds float64, ok bool) {
	seconds = math.Inf(1)
	for _, g := range p.Guesses {
		if t, lands := b.neededTime(g.Asks); lands {
			seconds, ok = min(seconds, t), true
		}
	}
	return seconds, ok
}

// shortestOnAny returns the length of a rack on a ring of which nothing is known: the
// shortest that lands as wanted on the ring that needs the longest, of those on which it
// can land at all.
func (b *Shot) shortestOnAny(p, before *clock.Pull, start, land float64) float64 {
	longest := 0.0
	for _, throw := range kit.Throws {
		other := b.supposed(throw)
		if other == nil {
			continue
		}
		needs, ok := other.handPull(p, before, start, land)
		if !ok {
			continue
		}
		if t, ok := other.neededTime(needs); ok {
			longest = max(longest, t)
		}
	}
	if longest == 0 {
		return 1
	}
	return b.noShorter(longest)
}

// noShorter returns a needed time as a rack is written: in tenths of a second, and
// never shorter than racks are wanted.
func (b *Shot) noShorter(t float64) float64 {
	return max(units.Up(t, 10), units.Up(b.Plan.Speed().Set(b.Setup.View.Quickest), 10), 0.1)
}
