// What a pull asks of the hand: how far it turns, and how wide the window is.

package shot

import (
	"math"
	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/kit"
	"pullscore/interp/units"
)

// Shortest returns the length of a rack that is to be as short as it can, in
// seconds.
func (b *Built) Shortest(p, before *clock.Pull, start, land float64) float64 {
	needs, ok := b.handPull(p, before, start, land)
	if !ok {
		return 1
	}
	t, ok := b.neededTime(needs)
	if !ok {
		return 1
	}
	return max(units.Up(t, 10), units.Up(b.Setup.View.Quickest, 10), 0.1)
}

// neededTime returns the shortest time in which a pull lands as wanted; ok is
// false where none will do.
func (b *Built) neededTime(p hand.Pull) (seconds float64, ok bool) {
	p.Time = 0 // does not count
	key := Asked{pull: p, wanted: b.Setup.View.Wanted}
	if n, ok := b.times[key]; ok {
		return n.Seconds, n.OK
	}
	seconds, ok = b.Setup.Hand.Needed(p, key.wanted)
	if b.times != nil && key == key { // NaN would never be found again
		b.times[key] = Needed{Seconds: seconds, OK: ok}
	}
	return seconds, ok
}

// HandPull returns what a pull asks of the hand; ok is false for a lens without
// a ring that can be pulled by angle.
func (b *Built) HandPull(p *Pull) (out hand.Pull, ok bool) {
	return b.handPull(p.Rack, p.Before, p.Rack.StartS, p.Rack.LandS)
}

func (b *Built) handPull(p, before *clock.Pull, start, land float64) (out hand.Pull, ok bool) {
	sh, set := b.Plan, b.Setup
	if sh.Optics.Ring == nil {
		return out, false
	}
	from, _ := sh.RingDeg(b.focusAfter(before, start), start)
	x := b.LensDistance(&p.Aim, land)
	to, _ := sh.RingDeg(x, land)
	lo, hi := b.windowDeg(b.window(p, land), land)
	out = hand.Pull{
		Travel: math.Abs(to-from) * set.Gear, Time: land - start, Reacts: p.Reacts, Even: !p.Smooth,
		Rim: set.underHand(), SigmaX: b.spreadOfDistance(p, x, land) * set.Gear,
	}
	if to >= from {
		out.Lo, out.Hi = (lo-to)*set.Gear, (hi-to)*set.Gear
	} else {
		out.Lo, out.Hi = (to-hi)*set.Gear, (to-lo)*set.Gear
	}
	return out, !math.IsNaN(out.Travel)
}

// window is the range of focus settings, from the lens, that keeps what the
// pull goes to sharp.
func (b *Built) window(p *clock.Pull, t float64) [2]float64 {
	set := b.Plan.Setting(t)
	if p.Aim.Split == nil {
		lo, hi := set.Window(b.LensDistance(&p.Aim, t))
		return [2]float64{lo, hi}
	}
	near, far := b.Extent(&p.Aim, t)
	_, hi := set.Window(near)
	lo, _ := set.Window(far)
	return [2]float64{lo, hi} // crossed where no setting holds both
}

// windowDeg turns a window into ring angles; an edge at or past an end of the
// ring is open, since the stop there holds the hand.
func (b *Built) windowDeg(w [2]float64, t float64) (lo, hi float64) {
	lo, hi = b.Edges(w, t)
	throw := b.Plan.Optics.Ring.Throw()
	if lo <= 0 || lo >= throw {
		lo = math.Inf(-1)
	}
	if hi >= throw || hi <= 0 {
		hi = math.Inf(1)
	}
	return lo, hi
}

// Edges are the ring angles of a window, held at the ring's ends.
func (b *Built) Edges(w [2]float64, t float64) (lo, hi float64) {
	lo, _ = b.Plan.RingDeg(w[0], t)
	hi, _ = b.Plan.RingDeg(w[1], t)
	return lo, hi
}

// spreadOfDistance is the distance's own spread through the ring law, degrees
// of ring: the camera's sway and the subject's.
func (b *Built) spreadOfDistance(p *clock.Pull, x, t float64) float64 {
	sway := kit.SupportSway[b.Setup.Camera.Support]
	for _, u := range p.Aim.Members() {
		if u.Sways.Known() {
			sway = math.Hypot(sway, float64(u.Sways))
		}
	}
	if sway == 0 || math.IsInf(x, 0) {
		return 0
	}
	near, _ := b.Plan.RingDeg(max(x-sway, 1e-4), t)
	far, _ := b.Plan.RingDeg(x+sway, t)
	return math.Abs(far-near) / 2
}
