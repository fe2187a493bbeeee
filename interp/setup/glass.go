// What is on the lens, and between hand and ring: close-up lens, tube, a wheel with ends,
// play.

package setup

import (
	"fmt"
	"math"

	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/optics/ring"
)

// A Travel is a hand wheel with end stops: how far it turns, in degrees, over which part of
// the ring.
type Travel struct {
	Deg    float64
	Near   float64 // the ends of that part, metres as the tape reads; NaN for the whole ring
	Far    float64
	Lo, Hi float64 // of the ring, degrees
}

// Part reports whether the wheel is mapped to a part of the ring.
func (t Travel) Part() bool { return t.Deg > 0 && !math.IsNaN(t.Near) }

// glassed takes the clauses about what is on the lens and on its ring. They need the
// lens.
func (b *Reader) glassed(s *Setup, w lang.With) {
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
	if law := s.Lens.Law; (s.Diopter > 0 || s.Tube > 0) && law != nil && law.Measured() {
		what := "diopter"
		if s.Diopter == 0 {
			what = "tube"
		}
		b.byDefault(what, "counted as on a lens that focuses as a unit", "its marks are measured without it; on a lens that focuses otherwise they lie elsewhere with it")
	}
	if _, said := s.Lens.MacroNear(); !said && len(s.Lens.Glass.Darkens) == 0 {
		b.byDefault("ratio of lens \""+s.Lens.Name+"\"", "1/1 at its closest focus", "it focuses nearer than four focal lengths, and the lens does not say how large things get there")
	}
}

// travel takes a wheel with ends: its gear follows from the part of the ring.
func (b *Reader) travel(s *Setup, w lang.With) {
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

// ShortBy returns by how many degrees at the hand a pull that turns towards infinity, or
// towards closest, stays short of its mark because of the play.
func (s *Setup) ShortBy(towardsInf bool) float64 {
	if p := s.Lens.Slack(); p > 0 {
		return ring.PlayShift(p, towardsInf, s.Lens.MarkedFrom()) * s.Gear
	}
	return 0
}
