// What a pull asks of the hand: how far it turns, and how wide the window is.

package built

import (
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/stage"
	"pullscore/interp/units"
)

// Shortest returns the length of a rack that is to be as short as it can, in
// seconds.
func (b *Shot) Shortest(p, before *clock.Pull, start, land float64) float64 {
	if b.Plan.RingUnknown() {
		return b.shortestOnAny(p, before, start, land)
	}
	needs, ok := b.handPull(p, before, start, land)
	if !ok {
		return 1
	}
	t, ok := b.neededTime(needs)
	if !ok {
		return 1
	}
	return b.noShorter(t)
}

// neededTime returns the shortest time in which a pull lands as wanted; ok is
// false where none will do.
func (b *Shot) neededTime(p hand.Pull) (seconds float64, ok bool) {
	p.Time = 0 // does not count
	key := Asked{pull: p, wanted: b.Setup.View.Wanted}
	if n, ok := b.Times[key]; ok {
		return n.Seconds, n.OK
	}
	seconds, ok = b.Setup.Hand.Needed(p, key.wanted)
	if b.Times != nil && key == key { // NaN would never be found again
		b.Times[key] = Needed{Seconds: seconds, OK: ok}
	}
	return seconds, ok
}

// longerBy is how much longer than it takes or needs a rack is tried, seconds.
const longerBy = 4

// neededBy returns the shortest time in which a rack lands as wanted where it then
// lands; ok is false where none is found. asks is what it asks as it is written. Of
// one who stands that is the time for the landing as written. One who moves is
// elsewhere at another time: so times a tenth of a second apart are tried.
func (b *Shot) neededBy(p *Pull, asks hand.Pull) (seconds float64, ok bool) {
	in := func(t float64) (hand.Pull, bool) {
		if p.Rack.Landing != nil {
			return b.handPull(p.Rack, p.Before, p.Rack.LandS-t, p.Rack.LandS)
		}
		return b.handPull(p.Rack, p.Before, p.Rack.StartS, p.Rack.StartS+t)
	}
	most := p.Rack.LandS - p.Rack.StartS + longerBy
	probe := most
	if seconds, ok = b.neededTime(asks); ok {
		probe = units.Up(seconds, 10)
		most = max(most, probe+longerBy)
	}
	then, known := in(probe)
	then.Time, asks.Time = 0, 0
	if !known || then == asks {
		return seconds, ok
	}
	for i := 1; float64(i) <= 10*most; i++ {
		t := float64(i) / 10
		then, known := in(t)
		if !known {
			continue
		}
		then.Time = t
		if l := b.Setup.Hand.Land(then); l.Possible && l.Chance >= b.Setup.View.Wanted && l.Peak <= b.Setup.Hand.Limit {
			return t, true
		}
	}
	return 0, false
}

// HandPull returns what a pull asks of the hand; ok is false for a lens without
// a ring that can be pulled by angle, and where the wheel does not go.
func (b *Shot) HandPull(p *Pull) (out hand.Pull, ok bool) {
	return b.handPull(p.Rack, p.Before, p.Rack.StartS, p.Rack.LandS)
}

func (b *Shot) handPull(p, before *clock.Pull, start, land float64) (out hand.Pull, ok bool) {
	sh, set := b.Plan, b.Setup
	if sh.Optics.Ring == nil {
		return out, false
	}
	from := sh.RingDeg(b.focusAfter(before, start), start)
	if p.Follow {
		from = sh.RingDeg(b.LensDistance(&p.Aim, start), start)
	}
	x := b.LensDistance(&p.Aim, land)
	to := sh.RingDeg(x, land)
	if b.pastWheel(from) || b.pastWheel(to) {
		return out, false
	}
	near, far := b.extremes(p, land)
	lo, hi := b.windowOf(near, far, land)
	out = hand.Pull{
		Travel: math.Abs(to-from) * set.Gear, Time: land - start, Reacts: p.Reacts, Even: !p.Smooth,
		Rim: set.UnderHand(), SigmaX: b.spreadOfDistance(p, x, land) * set.Gear,
	}
	ends := b.handEnds()
	end, stopped := to-ends.lo, ends.atLo // of the ring in the direction of travel, degrees past the mark
	if to >= from {
		out.Lo, out.Hi = (lo-to)*set.Gear, (hi-to)*set.Gear
		end, stopped = ends.hi-to, ends.atHi
	} else {
		out.Lo, out.Hi = (to-hi)*set.Gear, (to-lo)*set.Gear
	}
	if end *= set.Gear; stopped && end >= 0 && end <= out.Hi {
		out.Stopped, out.ToStop = true, end
	}
	if from != to { // what the hand lands at is farther on than the ring by what play takes
		short := set.ShortBy(to > from)
		out.Lo, out.Hi, out.ToStop = out.Lo+short, out.Hi+short, out.ToStop+short
		out.Travel += b.turnsBack(before, to > from)
	}
	return out, !math.IsNaN(out.Travel)
}

// extremes returns the nearest and the farthest that a pull goes to, from the lens:
// one distance, but for a split.
func (b *Shot) extremes(p *clock.Pull, t float64) (near, far float64) {
	if p.Aim.Split != nil {
		return b.Extent(&p.Aim, t)
	}
	x := b.LensDistance(&p.Aim, t)
	return x, x
}

// window is the range of focus settings, from the lens, that keeps what the
// pull goes to sharp.
func (b *Shot) window(p *clock.Pull, t float64) [2]float64 {
	near, far := b.extremes(p, t)
	lo, _ := b.Plan.Judged(far, t).Window(far)
	_, hi := b.Plan.Judged(near, t).Window(near)
	return [2]float64{lo, hi} // crossed where no setting holds both
}

// windowOf returns the window of what lies from near to far, metres from the lens,
// as ring angles; an edge at or past an end of the ring is open, since the stop
// there holds the hand.
func (b *Shot) windowOf(near, far, t float64) (lo, hi float64) {
	lo, hi = b.EdgesOf(near, far, t)
	ends := b.handEnds()
	if ends.atLo && lo <= ends.lo || ends.atHi && lo >= ends.hi {
		lo = math.Inf(-1)
	}
	if ends.atHi && hi >= ends.hi || ends.atLo && hi <= ends.lo {
		hi = math.Inf(1)
	}
	return lo, hi
}

// EdgesOf are the ring angles of the window of what lies from near to far, held at
// the ring's ends. Where infinity is sharp too and the ring goes on behind it, the
// blur there grows as it does on the near side: as far behind the mark as the
// window reaches before it. A ring that slips, or has no ends, goes on behind its first
// and last mark in the same way.
func (b *Shot) EdgesOf(near, far, t float64) (lo, hi float64) {
	least, _ := b.Plan.Judged(far, t).Window(far)
	before, most := b.Plan.Judged(near, t).Window(near)
	lo, hi = b.Edges([2]float64{least, most}, t)
	if throw := b.Plan.Optics.Ring.Throw(); math.IsInf(most, 1) && hi < throw {
		at := b.Plan.RingHeld(near, t)
		edge := b.Plan.RingHeld(before, t)
		hi = min(max(hi, 2*at-edge), throw)
	}
	if b.slips() && !(b.Setup.Travel.Deg > 0) { // no end holds the hand, nor does a wheel
		from, to := lo, hi
		if hi >= b.Plan.Optics.Ring.Throw() {
			hi = max(hi, 2*b.Plan.RingHeld(near, t)-from)
		}
		if lo <= 0 {
			lo = min(lo, 2*b.Plan.RingHeld(far, t)-to)
		}
	}
	return lo, hi
}

// Edges are the ring angles of a window, held at the ring's ends.
func (b *Shot) Edges(w [2]float64, t float64) (lo, hi float64) {
	lo = b.Plan.RingHeld(w[0], t)
	hi = b.Plan.RingHeld(w[1], t)
	return lo, hi
}

// spreadOfDistance is the distance's own spread through the ring law, degrees of
// ring: the sway of camera and subject, and of one who walks as the rack lands, how
// well the moment and the place are met.
func (b *Shot) spreadOfDistance(p *clock.Pull, x, t float64) float64 {
	if math.IsInf(x, 0) {
		return 0
	}
	spread := 0.0
	if sway := b.swayOf(&p.Aim); sway > 0 {
		near := b.Plan.RingHeld(max(x-sway, 1e-4), t)
		far := b.Plan.RingHeld(x+sway, t)
		spread = math.Abs(far-near) / 2
	}
	if speed, toMark := b.walk(p, t); speed > 0 && !p.Follow {
		slip := hand.Slip
		if p.Reacts {
			slip = hand.SlipReacting
		}
		metres := math.Hypot(slip*speed, hand.SeenWithin(x, toMark))
		spread = math.Hypot(spread, metres*math.Abs(b.perMetre(x, t))/b.Setup.Gear)
	}
	return spread
}

// walk returns how fast the distance of what a pull goes to changes at t, metres a
// second, and how far it is from a place where it stands, metres.
func (b *Shot) walk(p *clock.Pull, t float64) (speed, toMark float64) {
	if len(p.Aim.Members()) == 0 || p.Aim.Soft() {
		return 0, 0
	}
	w := b.Stage.Way(b.sight(), &p.Aim, t-stage.PickUp, t+stage.PickUp)
	if w.Still(t-stage.PickUp/2, t+stage.PickUp/2) {
		return 0, 0
	}
	if speed = math.Abs(w.Speed(t)); speed < 1e-3 || math.IsNaN(speed) {
		return 0, 0
	}
	return speed, w.ToMark(t)
}

// swayOf returns the sway of what a goal is on and of the camera together, metres
// RMS: of several the greatest.
func (b *Shot) swayOf(g *stage.Goal) float64 {
	most := 0.0
	for _, u := range g.Members() {
		most = max(most, swayOfSubject(u))
	}
	return math.Hypot(most, b.supportSway())
}

func (b *Shot) supportSway() float64 { return kit.SupportSway[b.Setup.Camera.Support] }

func swayOfSubject(u *stage.Subject) float64 {
	if !u.Sways.Known() {
		return 0
	}
	return float64(u.Sways)
}
