// Misses: how far somebody may be from the mark before anyone sees it, and how far
// the ring turns for ten centimetres.
//
// It is what is asked on set when somebody stops a hand short: is that still sharp,
// would it show, are they still in the picture, and how far has the ring to go. The
// focus is taken as exactly on the mark. All of their depth has to stay sharp, so
// forward counts for their front and back for their back.

package built

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/stage"
	"pullscore/interp/viewer"
)

// missStep is the step by which the ring is told: ten centimetres.
const missStep = 0.1

// fillMisses says where the focus is as the shot begins, and how far somebody may
// miss each mark.
func (b *Shot) fillMisses() {
	g, sh := &b.Start, b.Plan
	deg := sh.RingDeg(b.LensDistance(g, 0), 0)
	sh.Start = plan.Start{To: g.Name(), Target: g.Text, M: plan.Number(b.Tape(g, 0)), Deg: plan.Number(deg), Miss: b.missOf(g, 0)}
	for _, p := range b.Pulls {
		if !p.Rack.Failed && p.Rack.LandS >= p.Rack.StartS {
			p.Plan.Miss = b.missOf(&p.Rack.Aim, p.Rack.LandS)
		}
	}
}

// missOf returns how far somebody may miss the mark of a goal at t; nil where the
// focus goes to nobody. Of several who are held together, the least that any of them
// may.
func (b *Shot) missOf(g *stage.Goal, t float64) *plan.Miss {
	if !g.Ok || g.Soft() || len(g.Members()) == 0 || b.TooNear(g, t) {
		return nil
	}
	x := b.LensDistance(g, t)
	if math.IsNaN(x) || math.IsInf(x, 0) || !(x > b.Plan.Focal(t)) {
		return nil
	}
	none := plan.None()
	m := &plan.Miss{
		SoftForward: plan.Number(math.Inf(1)), SoftBack: plan.Number(math.Inf(1)), SeenForward: plan.Number(math.Inf(1)), SeenBack: plan.Number(math.Inf(1)),
		Left: none, Right: none, RingNear: none, RingFar: none,
	}
	for _, u := range g.Members() {
		b.missOfOne(m, u, x, t)
	}
	m.RingNear, m.RingFar = b.ringFor(g, -missStep, t), b.ringFor(g, missStep, t)
	return m
}

// missOfOne lessens what may be missed to what one of those may who are to be sharp,
// with the focus at x metres from the lens.
func (b *Shot) missOfOne(m *plan.Miss, u *stage.Subject, x, t float64) {
	d, half := b.Plan.LensDistanceAt(u.Subject, t), float64(u.Deep)/2
	least := func(to *plan.Number, room float64) { *to = min(*to, plan.Number(max(0, room))) }
	soft := b.Plan.Judged(x, t)
	least(&m.SoftForward, d-half-soft.Near(x))
	least(&m.SoftBack, soft.Far(x)-d-half)
	seen := b.Plan.SettingTo(x, t)
	seen.Criterion = viewer.SeenFrom(b.Plan.Diffraction(x, t)) / b.Plan.Optics.ArcminPerBlur
	least(&m.SeenForward, d-half-seen.Near(x))
	least(&m.SeenBack, seen.Far(x)-d-half)
	if !u.SideKnown() && b.Plan.Optics.Rig == nil { // else one without a side stands straight ahead
		return
	}
	side := b.Plan.SideAt(u.Subject, t)
	frame, up := b.Plan.Reach(d, d, t)
	if math.Abs(b.Plan.AboveAt(u.Subject, t)) > up {
		frame = 0 // out of the picture wherever they stand
	}
	if !m.Left.Known() {
		m.Left, m.Right = plan.Number(math.Inf(1)), plan.Number(math.Inf(1))
	}
	least(&m.Left, frame+side)
	least(&m.Right, frame-side)
}

// ringFor returns by how many degrees the ring turns for somebody who stands so many
// metres farther than the mark; none without a ring, and where the lens does not
// focus there.
func (b *Shot) ringFor(g *stage.Goal, by, t float64) plan.Number {
	tape := b.Tape(g, t) + by
	closest := b.Setup.Lens.Closest
	if b.Plan.Optics.Ring == nil || b.Plan.Optics.FromLens && tape <= b.Plan.Focal(t) || b.FromSensor(tape, t) < closest*(1-1e-6) {
		return plan.None()
	}
	at := b.Plan.RingDeg(b.LensDistance(g, t), t)
	there := b.Plan.RingDeg(b.Plan.FromTape(tape, t), t)
	return plan.Number(there - at)
}
