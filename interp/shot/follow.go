// Follows: what the hand does while somebody moves, and how far it is behind.

package shot

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// A Shift is a move that changes the distance of someone who is followed, by d
// metres away from the camera.
type Shift struct {
	Start, End, D float64
	Smooth        bool
}

// shiftsIn returns the moves, of the one followed and of the camera, that fall
// into a follow.
func (b *Built) shiftsIn(p *Pull) []Shift {
	var list []Shift
	hangs := b.Stage.Ancestors(p.Rack.Aim.Subject)
	for _, m := range b.Stage.MovesIn(p.Rack.StartS, p.Rack.LandS) {
		s := Shift{Start: m.Start, End: m.End, Smooth: m.Smooth}
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
func (b *Built) followFigures(p *Pull) {
	p.Shifts = b.shiftsIn(p)
	lag := 0.0
	for _, t := range p.Changes() {
		lag = max(lag, p.LagAt(t))
	}
	p.Plan.Lag = plan.Number(lag)
	if p.Plan.FromDeg.Known() && p.Rack.LandS > p.Rack.StartS {
		p.Plan.Peak, p.Plan.HandDeg = b.followSpeed(p)
	}
}

// followSpeed is the fastest that the hand has to turn in a follow, and how far
// it turns, by the frame.
func (b *Built) followSpeed(p *Pull) (peak, travel plan.Number) {
	const step = 1.0 / 48
	n := int(min(math.Ceil((p.Rack.LandS-p.Rack.StartS)/step), 20_000))
	dt := (p.Rack.LandS - p.Rack.StartS) / float64(max(n, 1))
	handAt := func(t float64) float64 {
		deg, _ := b.Plan.RingDeg(b.LensDistance(&p.Rack.Aim, t), t)
		return deg * b.Setup.Gear
	}
	last := handAt(p.Rack.StartS)
	for i := 1; i <= n; i++ {
		a := handAt(p.Rack.StartS + float64(i)*dt)
		peak = max(peak, plan.Number(math.Abs(a-last)/dt))
		travel += plan.Number(math.Abs(a - last))
		last = a
	}
	return peak, travel
}

// Changes returns the times in a follow at which the speed of the distance may
// change fastest: where a move starts or ends, and where a smooth one speeds up
// and slows down most.
func (p *Pull) Changes() []float64 {
	early := (3 - math.Sqrt(3)) / 6 // of its time, where minimum jerk speeds up most
	var times []float64
	for _, s := range p.Shifts {
		long := s.End - s.Start
		for _, t := range []float64{s.Start, s.Start + early*long, s.End - early*long, s.End} {
			if t >= p.Rack.StartS && t <= p.Rack.LandS {
				times = append(times, t)
			}
		}
	}
	return times
}

// LagAt is how far the focus is behind at t, metres. Someone who goes at an
// even pace takes half a second to get to it, and to stop.
func (p *Pull) LagAt(t float64) float64 {
	const pickUp = 0.5 // s, the model's own
	sum := 0.0         // m/s^2
	for _, s := range p.Shifts {
		long := s.End - s.Start
		switch {
		case s.Smooth && t >= s.Start && t <= s.End:
			sum += s.D / (long * long) * hand.MinJerkAcceleration((t-s.Start)/long)
		case !s.Smooth && t >= s.Start && t < min(s.Start+pickUp, s.End):
			sum += s.D / long / pickUp
		case !s.Smooth && t >= s.End && t < s.End+pickUp:
			sum -= s.D / long / pickUp
		}
	}
	return hand.Lag(math.Abs(sum))
}
