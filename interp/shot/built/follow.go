// Follows: what the hand does while somebody moves, how far it is behind, and how
// often they are sharp.

package built

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
)

// followFigures fills in the figures of a follow, moment by moment. A lens without
// a ring that can be pulled by angle has a lag, and no chance.
func (b *Shot) followFigures(p *Pull) {
	from, to := p.Rack.StartS, p.Rack.LandS
	if to < from || p.Rack.Failed || math.IsNaN(p.Plan.ToLens) {
		return
	}
	if b.Plan.Optics.Ring != nil && !b.knowsAll(p) {
		return
	}
	w := b.Stage.Way(b.sight(), &p.Rack.Aim, from-1, to+1)
	p.Moments = b.Setup.Hand.Follow(b.course(p, &w))
	worst := hand.Moment{}
	for _, m := range p.Moments {
		if math.Abs(m.Lag) > math.Abs(worst.Lag) {
			worst = m
		}
	}
	p.Plan.Lag = plan.Number(math.Abs(b.metres(worst.Lag, w.Lens(worst.T), worst.T)))
	if !p.Plan.FromDeg.Known() || !(to > from) {
		return
	}
	p.Plan.LagDeg = plan.Number(math.Abs(worst.Lag))
	p.Plan.Peak, p.Plan.HandDeg = b.followSpeed(p)
	if b.TooNear(&p.Rack.Aim, to) || b.TooNear(&p.Rack.Aim, from) {
		return
	}
	p.Plan.Asks, _ = b.HandPull(p)
	p.Landed = b.Setup.Hand.Land(p.Plan.Asks)
	last := p.Moments[len(p.Moments)-1]
	p.Plan.Chance, p.Plan.Ceiling = plan.Number(min(last.Sharp*(1-b.Setup.Hand.Slips), p.Landed.Ceiling)), plan.Number(p.Landed.Ceiling)
	p.Plan.Spread = plan.Number(last.Spread)
	p.Plan.Sures = make([]plan.Sure, len(p.Moments))
	for i, m := range p.Moments {
		p.Plan.Sures[i] = plan.Sure{T: m.T, Chance: m.Sharp}
	}
	share, at := hand.WorstHalfSecond(p.Moments)
	p.Plan.SharpShare, p.Plan.WorstShare, p.Plan.WorstAt = plan.Number(hand.SharpShare(p.Moments)), plan.Number(share), plan.Number(at)
}

// course returns what a follow asks of the hand.
func (b *Shot) course(p *Pull, w *stage.Way) hand.Course {
	lens := lastOf(w.Lens)
	c := hand.Course{
		From: p.Rack.StartS, To: p.Rack.LandS, Rim: b.Setup.UnderHand(), Sway: b.swayOf(&p.Rack.Aim),
		Distance: lens, ToMark: w.ToMark, Still: w.Still,
	}
	if b.Plan.Optics.Ring == nil {
		c.Angle, c.PerMetre = lens, func(float64) float64 { return 1 }
		c.Room = func(float64) (float64, float64) { return math.Inf(-1), math.Inf(1) }
		return c
	}
	c.Angle = func(t float64) float64 { return b.handDeg(lens(t), t) }
	c.PerMetre = func(t float64) float64 { return b.perMetre(lens(t), t) }
	c.Room = func(t float64) (lo, hi float64) {
		x := lens(t)
		lo, hi = b.windowOf(x, x, t)
		at := b.handDeg(x, t)
		return lo*b.Setup.Gear - at, hi*b.Setup.Gear - at
	}
	c.Bias = b.Setup.Hand.Bias
	if c.Angle(c.To) < c.Angle(c.From) {
		c.Bias = -c.Bias
	}
	return c
}

// lastOf returns a function that gives what f gives, and remembers the last.
func lastOf(f func(float64) float64) func(float64) float64 {
	at, value := math.NaN(), 0.0
	return func(t float64) float64 {
		if t != at {
			at, value = t, f(t)
		}
		return value
	}
}

// knowsAll tells whether the angle of the ring is known all through a follow, and the hand
// can turn there.
func (b *Shot) knowsAll(p *Pull) bool {
	n, step := stepsOf(p)
	for i := range n + 1 {
		t := p.Rack.StartS + float64(i)*step
		if deg := b.Plan.RingDeg(b.LensDistance(&p.Rack.Aim, t), t); math.IsNaN(deg) || b.pastWheel(deg) {
			return false
		}
	}
	return true
}

// Behind finds the first moment of a follow at which it lags by more than what is
// sharp on that side: when, by how many metres, and how many are sharp there.
func (b *Shot) Behind(p *Pull) (t, lag, room float64, ok bool) {
	if len(p.Moments) == 0 {
		return 0, 0, 0, false
	}
	w := b.Stage.Way(b.sight(), &p.Rack.Aim, p.Rack.StartS-1, p.Rack.LandS+1)
	for _, m := range p.Moments {
		if m.Lag == 0 {
			continue
		}
		x := w.Lens(m.T)
		lo, hi := b.Plan.Judged(x, m.T).Window(x)
		lag, room = b.metres(m.Lag, x, m.T), x-lo
		if lag < 0 { // the hand is beyond them
			lag, room = -lag, hi-x
		}
		if lag > room {
			return m.T, lag, room, true
		}
	}
	return 0, 0, 0, false
}

// metres turns degrees at the hand into metres of distance at x; without a ring a
// lag is in metres already.
func (b *Shot) metres(deg, x, t float64) float64 {
	if b.Plan.Optics.Ring == nil {
		return deg
	}
	k := b.perMetre(x, t)
	if k == 0 {
		return 0
	}
	return deg / k
}

// handDeg returns the angle at the hand that focuses at x metres from the lens.
func (b *Shot) handDeg(x, t float64) float64 {
	return b.Plan.RingHeld(x, t) * b.Setup.Gear
}

// perMetre returns how many degrees the hand turns for a metre of distance at x; 0
// at infinity.
func (b *Shot) perMetre(x, t float64) float64 {
	const h = 1e-4
	if math.IsInf(x, 0) {
		return 0
	}
	return (b.handDeg(x+h, t) - b.handDeg(x-h, t)) / (2 * h)
}

// stepsOf returns in how many steps of how many seconds a follow is looked at.
func stepsOf(p *Pull) (n int, step float64) {
	long := p.Rack.LandS - p.Rack.StartS
	n = int(min(math.Ceil(long*48), 20_000))
	return n, long / float64(max(n, 1))
}

// followSpeed is the fastest that the hand has to turn in a follow, and how far
// it turns, by the frame.
func (b *Shot) followSpeed(p *Pull) (peak, travel plan.Number) {
	n, dt := stepsOf(p)
	handAt := func(t float64) float64 { return b.handDeg(b.LensDistance(&p.Rack.Aim, t), t) }
	last := handAt(p.Rack.StartS)
	for i := 1; i <= n; i++ {
		a := handAt(p.Rack.StartS + float64(i)*dt)
		peak = max(peak, plan.Number(math.Abs(a-last)/dt))
		travel += plan.Number(math.Abs(a - last))
		last = a
	}
	return peak, travel
}

// FollowHolds tells whether a follow is sharp as often as wanted in this shot, as it
// is or at another stop: in its worst half second, where it comes to rest, and
// however slowly it is pulled there.
func (b *Shot) FollowHolds(p *Pull) bool {
	again := Pull{Rack: p.Rack, Before: p.Before, Plan: &plan.Pull{}}
	*again.Plan = *p.Plan
	b.followFigures(&again)
	wanted := b.Setup.View.Wanted
	return float64(again.Plan.WorstShare) >= wanted && float64(again.Plan.Chance) >= wanted && again.Landed.Ceiling >= wanted
}
