// What is on the lens, and between hand and ring: close-up lens, tube, a wheel with ends,
// play.

package shot

import (
	"fmt"
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics/ring"
)

// A Travel is a hand wheel with end stops: how far it turns, in degrees, over which part of
// the ring. From and To are the ends of that part as written, nil for the whole ring.
type Travel struct {
	Deg    float64
	Near   float64 // metres as the tape reads, NaN for the whole ring
	Far    float64
	Lo, Hi float64 // of the ring, degrees
}

// Part reports whether the wheel is mapped to a part of the ring.
func (t Travel) Part() bool { return t.Deg > 0 && !math.IsNaN(t.Near) }

// glassed takes the clauses about what is on the lens and on its ring. They need the
// lens.
func (b *builder) glassed(s *Setup, w lang.With) {
	if w.Diopter != nil {
		if v, ok := b.Within(w.Diopter, names.DimFactor, 0, 20, "a diopter is a power from 0 to 20"); ok {
			s.Diopter = v
		}
	}
	if w.Tube != nil {
		if v, ok := b.Within(w.Tube, names.DimLength, 0, 1, "a tube is up to 1 m long"); ok {
			s.Tube = v
		}
		if s.Tube >= s.Focal && s.Tube > 0 { // at 1:1 and beyond, less than a focal length in front
			b.Fail(w.Tube.Range(), "tube-too-long", fmt.Sprintf("a tube of %s leaves lens %q no distance in front of it", units.Style{}.Millimetres(s.Tube), s.Lens.Name), "")
			s.Tube = 0
		}
	}
	if w.Travel != nil {
		b.travel(s, w)
	}
	if _, said := s.Lens.MacroNear(); !said && len(s.Lens.Glass.Darkens) == 0 {
		b.byDefault("ratio of lens \""+s.Lens.Name+"\"", "1/1 at its closest focus", "it focuses nearer than four focal lengths, and the lens does not say how large things get there")
	}
}

// travel takes a wheel with ends: its gear follows from the part of the ring.
func (b *builder) travel(s *Setup, w lang.With) {
	deg, ok := b.Within(w.Travel, names.DimAngle, 1, 36000, "a wheel turns between 1 deg and 100 turns")
	if !ok {
		return
	}
	if w.Gear != nil {
		b.Fail(w.Travel.Range(), "conflicting-clauses", "gear and travel both say how far the wheel turns", "Leave one of them out.")
		return
	}
	law := s.Lens.Law
	if law == nil {
		return
	}
	t := Travel{Deg: deg, Near: math.NaN(), Far: math.NaN(), Lo: 0, Hi: law.Throw()}
	if w.TravelFrom != nil && w.TravelTo != nil {
		from, okF := b.Want(w.TravelFrom, names.DimLength)
		to, okT := b.Want(w.TravelTo, names.DimLength)
		if !okF || !okT {
			return
		}
		lo, hi := law.Angle(from), law.Angle(to)
		if math.IsNaN(lo) || math.IsNaN(hi) || lo == hi {
			b.Fail(w.TravelFrom.Range(), "out-of-range", "the wheel is mapped to two distances of the lens", "They lie between its closest focus and infinity.")
			return
		}
		t.Near, t.Far, t.Lo, t.Hi = min(from, to), max(from, to), min(lo, hi), max(lo, hi)
	}
	s.Travel, s.Geared = t, true
	if b.Ch.Gear == 0 {
		s.Gear = ring.Gear(deg, t.Lo, t.Hi)
	}
	if w.Wheel == nil && w.Gear == nil && b.Ch.Wheel == 0 {
		b.byDefault("wheel", "80 mm", "the set-up has a wheel with ends and does not say how wide it is")
	}
}

// glass returns what the lens and what is on it do beside focusing.
func (s *Setup) glass() plan.Glass {
	l := &s.Lens
	near, _ := l.MacroNear()
	if math.IsNaN(near) {
		near = 0
	}
	return plan.Glass{
		Squeeze: l.Squeezed(), Rear: l.Glass.Rear, Breathing: l.Along(l.Glass.Grows, 0),
		Ratio: l.Along(l.Glass.Ratio, 0), Darkens: l.Along(l.Glass.Darkens, 0),
		MacroNear: near, Closest: l.Closest, Origin: l.Origin(),
		Diopter: s.Diopter, Tube: s.Tube, Planes: l.Glass.Planes,
	}
}

// fillGlass writes them into the shot, where they are not those of every lens.
func (s *Setup) fillGlass(sh *plan.Shot) {
	sh.SqueezeBy, sh.Diopter, sh.TubeMM, sh.TravelDeg = plan.None(), plan.None(), plan.None(), plan.None()
	if k := s.Lens.SqueezeFar(); k != 1 {
		sh.SqueezeBy = plan.Number(k)
	}
	if s.Diopter > 0 {
		sh.Diopter = plan.Number(s.Diopter)
	}
	if s.Tube > 0 {
		sh.TubeMM = plan.Number(s.Tube * 1000)
	}
	if s.Travel.Deg > 0 {
		sh.TravelDeg = plan.Number(s.Travel.Deg)
	}
}

// shortBy returns by how many degrees at the hand a pull that turns towards infinity, or
// towards closest, stays short of its mark because of the play.
func (s *Setup) shortBy(towardsInf bool) float64 {
	if p := s.Lens.Slack(); p > 0 {
		return ring.PlayShift(p, towardsInf, s.Lens.Glass.Marked) * s.Gear
	}
	return 0
}

// turnsBack returns by how many degrees more the hand turns because a pull turns the other
// way than the one before it.
func (b *Built) turnsBack(before *clock.Pull, towardsInf bool) float64 {
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
func (b *Built) handEnds() handEnds {
	t, law := b.Setup.Travel, b.Plan.Optics.Ring
	if t.Deg > 0 {
		return handEnds{t.Lo, t.Hi, true, true}
	}
	near, far := law.Stops()
	holds := !b.slips()
	return handEnds{0, law.Throw(), near && holds, far && holds}
}

// slips reports whether nothing holds the ring at its ends.
func (b *Built) slips() bool {
	return b.Setup.Lens.Ends == "slip" || b.Setup.Lens.Ends == "linear"
}

// LandsOnSlip reports whether a pull lands within its window of an end at which the ring
// slips on.
func (b *Built) LandsOnSlip(p *Pull) bool {
	if b.Plan.Optics.Ring == nil || b.Setup.Travel.Deg > 0 || !b.slips() || !p.Plan.WindowHand[0].Known() {
		return false
	}
	near, far := b.Plan.Optics.Ring.Stops()
	lo, hi := float64(p.Plan.WindowHand[0])/b.Setup.Gear, float64(p.Plan.WindowHand[1])/b.Setup.Gear
	return near && lo <= 0 || far && hi >= b.Plan.Optics.Ring.Throw()
}

// OutsideTravel reports whether a goal at t lies outside the part of the ring that the
// wheel is mapped to.
func (b *Built) OutsideTravel(g *stage.Goal, t float64) bool {
	if !b.Setup.Travel.Part() || b.Plan.Optics.Ring == nil {
		return false
	}
	deg := b.Plan.RingDeg(b.LensDistance(g, t), t)
	return deg < b.Setup.Travel.Lo-1e-6 || deg > b.Setup.Travel.Hi+1e-6
}

// BeyondFarthest reports whether a goal at t is farther than the lens focuses behind its
// close-up lens, or on its tube.
func (b *Built) BeyondFarthest(g *stage.Goal, t float64) bool {
	glass := &b.Plan.Optics.Glass
	if glass.Diopter == 0 && glass.Tube == 0 {
		return false
	}
	return b.LensDistance(g, t) > b.Plan.Farthest(t)*(1+1e-9)
}

// LostBetween returns how many stops less light the picture gets at the end of a pull than
// at its start; below 0 it gets more.
func (b *Built) LostBetween(p *Pull) float64 {
	return b.Plan.NearLoss(p.Plan.ToLens, p.Rack.LandS) - b.Plan.NearLoss(p.Plan.FromLens, p.Rack.StartS)
}

// WithoutPlay returns the landing of a rack if the ring had no play; loses is false where
// this rack loses nothing by it.
func (b *Built) WithoutPlay(p *Pull) (l hand.Landing, loses bool) {
	if !p.Plan.PlayShift.Known() || !(p.Plan.PlayShift > 0) {
		return p.Landed, false
	}
	asks, short := p.Plan.Asks, float64(p.Plan.PlayShift)*b.Setup.Gear
	asks.Lo, asks.Hi, asks.ToStop = asks.Lo-short, asks.Hi-short, asks.ToStop-short
	return b.Setup.Hand.Land(asks), true
}
