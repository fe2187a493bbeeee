// What is on the lens, and between hand and ring: close-up lens, tube, a wheel with ends,
// play.

package built

import (
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/stage"
	"pullscore/optics/ring"
)

// turnsBack returns by how many degrees more the hand turns because a pull turns the other
// way than the one before it.
func (b *Shot) turnsBack(before *clock.Pull, towardsInf bool) float64 {
	p := b.Setup.Lens.Slack()
	if !(p > 0) || before == nil || before.Failed {
		return 0
	}
	from := b.Plan.RingDeg(b.focusAfter(before.WrittenBefore(), before.StartS), before.StartS)
	if before.Follow {
		from = b.Plan.RingDeg(b.LensDistance(&before.Aim, before.StartS), before.StartS)
	}
	to := b.Plan.RingDeg(b.LensDistance(&before.Aim, before.LandS), before.LandS)
	if math.IsNaN(from) || math.IsNaN(to) || from == to || (to > from) == towardsInf {
		return 0
	}
	return ring.PlayTravel(p, b.Setup.Gear)
}

// handEnds are where the hand is stopped, in degrees of the ring, and whether something
// stops it there: the ends of the ring, or those of a wheel.
type handEnds struct {
	lo, hi     float64
	atLo, atHi bool
}

// handEnds returns the ends that hold the hand. The lens must have a ring.
func (b *Shot) handEnds() handEnds {
	t, law := b.Setup.Travel, b.Plan.Optics.Ring
	if t.Deg > 0 {
		return handEnds{t.Lo, t.Hi, true, true}
	}
	near, far := law.Stops()
	holds := !b.slips()
	return handEnds{0, law.Throw(), near && holds, far && holds}
}

// slips reports whether nothing holds the ring at its ends.
func (b *Shot) slips() bool {
	return b.Setup.Lens.Ends == "slip" || b.Setup.Lens.Ends == "linear"
}

// LandsOnSlip reports whether a pull lands within its window of an end at which the ring
// slips on.
func (b *Shot) LandsOnSlip(p *Pull) bool {
	if b.Plan.Optics.Ring == nil || b.Setup.Travel.Deg > 0 || !b.slips() || !p.Plan.WindowHand[0].Known() {
		return false
	}
	near, far := b.Plan.Optics.Ring.Stops()
	lo, hi := float64(p.Plan.WindowHand[0])/b.Setup.Gear, float64(p.Plan.WindowHand[1])/b.Setup.Gear
	return near && lo <= 0 || far && hi >= b.Plan.Optics.Ring.Throw()
}

// OutsideTravel reports whether a goal at t lies outside the part of the ring that the
// wheel is mapped to.
func (b *Shot) OutsideTravel(g *stage.Goal, t float64) bool {
	if !b.Setup.Travel.Part() || b.Plan.Optics.Ring == nil {
		return false
	}
	return b.pastWheel(b.Plan.RingDeg(b.LensDistance(g, t), t))
}

// pastWheel reports whether an angle of the ring lies outside the part that the wheel is
// mapped to. No hand turns the wheel there, so nothing follows of a pull from or to it.
func (b *Shot) pastWheel(deg float64) bool {
	w := b.Setup.Travel
	return w.Part() && (deg < w.Lo-1e-6 || deg > w.Hi+1e-6)
}

// BeyondFarthest reports whether a goal at t is farther than the lens focuses behind its
// close-up lens, or on its tube.
func (b *Shot) BeyondFarthest(g *stage.Goal, t float64) bool {
	glass := &b.Plan.Optics.Glass
	if glass.Diopter == 0 && glass.Tube == 0 {
		return false
	}
	return b.LensDistance(g, t) > b.Plan.Farthest(t)*(1+1e-9)
}

// LostBetween returns how many stops less light the picture gets at the end of a pull than
// at its start; below 0 it gets more.
func (b *Shot) LostBetween(p *Pull) float64 {
	return b.Plan.NearLoss(p.Plan.ToLens, p.Rack.LandS) - b.Plan.NearLoss(p.Plan.FromLens, p.Rack.StartS)
}

// WithoutPlay returns the landing of a rack if the ring had no play; loses is false where
// this rack loses nothing by it.
func (b *Shot) WithoutPlay(p *Pull) (l hand.Landing, loses bool) {
	if !p.Plan.PlayShift.Known() || !(p.Plan.PlayShift > 0) {
		return p.Landed, false
	}
	asks, short := p.Plan.Asks, float64(p.Plan.PlayShift)*b.Setup.Gear
	asks.Lo, asks.Hi, asks.ToStop = asks.Lo-short, asks.Hi-short, asks.ToStop-short
	return b.Setup.Hand.Land(asks), true
}
