// Follows: what the hand does while somebody moves.

package shot

import (
	"math"

	"pullscore/interp/clock"
	"pullscore/interp/plan"
)

// shiftsIn returns the moves, of the one followed and of the camera, that fall
// into a follow.
func (b *Builder) shiftsIn(p *clock.Pull) []clock.Shift {
	var list []clock.Shift
	hangs := b.Stage.Ancestors(p.Aim.Subject)
	for _, m := range b.Stage.MovesIn(p.StartS, p.LandS) {
		s := clock.Shift{Start: m.Start, End: m.End, Smooth: m.Smooth}
		_, carried := hangs[m.Who]
		switch {
		case m.Kind == "dolly":
			s.D = -m.By
		case m.Kind == "moves" && carried:
			s.D = m.Who.Along.At(m.End) - m.Who.Along.At(m.Start)
		default:
			continue
		}
		list = append(list, s)
	}
	return list
}

// followFigures fills in the speed and the lag of a follow. The lag is worst
// where the speed of the distance changes most; nobody says where a hand that
// follows lands, so there is no chance.
func (b *Builder) followFigures(p *clock.Pull) {
	p.Shifts = b.shiftsIn(p)
	lag := 0.0
	for _, t := range p.Changes() {
		lag = max(lag, p.LagAt(t))
	}
	p.Lag = plan.Number(lag)
	if p.FromDeg.Known() && p.LandS > p.StartS {
		p.Peak, p.HandDeg = b.followSpeed(p)
	}
}

// followSpeed is the fastest that the hand has to turn in a follow, and how far
// it turns, by the frame.
func (b *Builder) followSpeed(p *clock.Pull) (peak, travel plan.Number) {
	const step = 1.0 / 48
	n := int(min(math.Ceil((p.LandS-p.StartS)/step), 20_000))
	dt := (p.LandS - p.StartS) / float64(max(n, 1))
	handAt := func(t float64) float64 {
		deg, _ := b.Shot.RingDeg(b.LensDistance(&p.Aim, t), t)
		return deg * b.Set.Gear
	}
	last := handAt(p.StartS)
	for i := 1; i <= n; i++ {
		a := handAt(p.StartS + float64(i)*dt)
		peak = max(peak, plan.Number(math.Abs(a-last)/dt))
		travel += plan.Number(math.Abs(a - last))
		last = a
	}
	return peak, travel
}
