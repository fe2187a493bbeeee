// Package holds says where the hand takes hold in each pull of a shot.
//
// It can be said only where it is known how far the hand turns, and which way. On the
// ring the lens says which way (turns left or right). A wheel has a gear between, and no
// plan knows how that is built; so the places of a wheel are for one that turns
// clockwise towards infinity, and its words also give those for the other way.
package holds

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// leastTurn is the travel from which a hold is worth a word, degrees at the hand.
const leastTurn = 1

// Fill says in each pull of a shot where the hand takes hold. The other figures of the
// pulls must be there.
func Fill(s *plan.Shot) {
	way, on := handGoes(s)
	if way == 0 {
		return
	}
	turns := make([]hand.Turn, len(s.Pulls))
	for i, p := range s.Pulls {
		turns[i] = turnOf(s, p, way)
	}
	for i, o := range s.Hand.Holds(turns) {
		if o.OK && turns[i].Most-turns[i].Least >= leastTurn {
			s.Pulls[i].Hold = holdOf(s.Pulls[i], o, on)
		}
	}
}

// handGoes returns which way the hand turns towards infinity, 1 clockwise and -1
// anticlockwise, and on what it is; 0 where that is not known.
func handGoes(s *plan.Shot) (way float64, on string) {
	switch turns := s.Optics.TurnsTo; {
	case s.Optics.Ring == nil:
		return 0, ""
	case s.WheelMM.Known():
		return 1, "wheel"
	case turns == "left":
		return -1, "ring"
	case turns == "right":
		return 1, "ring"
	}
	return 0, ""
}

// turnOf returns what the hand does in a pull that goes that way towards infinity.
func turnOf(s *plan.Shot, p *plan.Pull, way float64) hand.Turn {
	by := way * float64(s.Gear)
	from, to := float64(p.FromDeg)*by, float64(p.ToDeg)*by
	t := hand.Turn{
		From: from, To: to, Least: min(from, to), Most: max(from, to), Start: float64(p.Start), Land: float64(p.Land),
		Window: float64(p.WindowHand[1] - p.WindowHand[0]), Backs: p.Kind == "follow",
	}
	if p.OpenNear || p.OpenFar {
		t.Window = math.Inf(1)
	}
	if t.Backs {
		t.Least, t.Most = followed(s, p, by, t)
	}
	return t
}

// followed returns how far the hand goes either way in a follow, by even steps of time.
func followed(s *plan.Shot, p *plan.Pull, by float64, t hand.Turn) (least, most float64) {
	u := s.Subject(p.To)
	if u == nil {
		return math.NaN(), math.NaN()
	}
	least, most = t.Least, t.Most
	steps := int(min(math.Ceil((t.Land-t.Start)*24), 20_000))
	for i := range steps {
		at := t.Start + (t.Land-t.Start)*float64(i)/float64(steps)
		deg := s.RingDeg(s.LensDistanceAt(u, at), at)
		least, most = min(least, deg*by), max(most, deg*by)
	}
	return least, most
}

// holdOf returns a hold as the plan has it.
func holdOf(p *plan.Pull, o hand.Hold, on string) *plan.Hold {
	at := func(deg float64) plan.Number { return plan.Number(hand.Clock(deg)) }
	h := plan.Hold{
		HoldOn: on, HoldFrom: at(o.From), HoldTo: at(o.To), Regrip: plan.None(), RegripTo: plan.None(),
		Kept: o.Kept, Hurried: o.Hurried,
	}
	if o.Regrips > 0 {
		h.Regrip, h.RegripTo = at(o.Regrip), at(o.RegripTo)
	}
	h.HoldSays = moments.Hold(p, &h, units.Style{})
	return &h
}
