// Where the hand takes hold in each pull.
//
// It can be said only where it is known how far the hand turns, and which way. On the
// ring the lens says which way (turns left or right). A wheel has a gear between, and no
// plan knows how that is built; so the places of a wheel are for one that turns
// clockwise towards infinity, and its words also give those for the other way.

package shot

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// leastTurn is the travel from which a hold is worth a word, degrees at the hand.
const leastTurn = 1

// fillHolds says where the hand takes hold in each pull.
func (b *Built) fillHolds() {
	way, on := b.handGoes()
	if way == 0 {
		return
	}
	turns := make([]hand.Turn, len(b.Pulls))
	for i, p := range b.Pulls {
		turns[i] = b.turnOf(p, way)
	}
	for i, o := range b.Setup.Hand.Holds(turns) {
		if p := b.Pulls[i].Plan; o.OK && turns[i].Most-turns[i].Least >= leastTurn {
			p.Hold = holdOf(p, o, on)
		}
	}
}

// handGoes returns which way the hand turns towards infinity, 1 clockwise and -1
// anticlockwise, and on what it is; 0 where that is not known.
func (b *Built) handGoes() (way float64, on string) {
	switch turns := b.Plan.Optics.TurnsTo; {
	case b.Plan.Optics.Ring == nil:
		return 0, ""
	case b.Setup.Geared:
		return 1, "wheel"
	case turns == "left":
		return -1, "ring"
	case turns == "right":
		return 1, "ring"
	}
	return 0, ""
}

// turnOf returns what the hand does in a pull that goes that way towards infinity.
func (b *Built) turnOf(p *Pull, way float64) hand.Turn {
	gear := way * b.Setup.Gear
	from, to := float64(p.Plan.FromDeg)*gear, float64(p.Plan.ToDeg)*gear
	t := hand.Turn{
		From: from, To: to, Least: min(from, to), Most: max(from, to), Start: p.Rack.StartS, Land: p.Rack.LandS,
		Window: float64(p.Plan.WindowHand[1] - p.Plan.WindowHand[0]), Backs: p.Rack.Follow,
	}
	if p.Plan.OpenNear || p.Plan.OpenFar {
		t.Window = math.Inf(1)
	}
	if p.Rack.Follow {
		angles, _ := b.followed(p)
		for _, at := range angles {
			t.Least, t.Most = min(t.Least, at*way), max(t.Most, at*way)
		}
	}
	return t
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
