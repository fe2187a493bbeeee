// Follows: how far the hand is behind someone who moves.

package interp

import (
	"math"

	"pullscore/interp/hand"
)

// A shift is a move that changes the distance of someone who is followed, by d
// metres away from the camera.
type shift struct {
	start, end, d float64
	smooth        bool
}

// shiftsIn returns the moves, of the one followed and of the camera, that fall
// into a follow.
func (b *builder) shiftsIn(p *pull) []shift {
	var list []shift
	hangs := b.stage.ancestors(p.goal.subject)
	for _, m := range b.stage.moves {
		s := shift{start: m.start, end: m.end, smooth: m.smooth}
		_, carried := hangs[m.who]
		switch {
		case m.end < p.start || m.start > p.land:
			continue
		case m.kind == "dolly":
			s.d = -m.by
		case m.kind == "moves" && carried:
			s.d = m.who.Along.At(m.end) - m.who.Along.At(m.start)
		default:
			continue
		}
		list = append(list, s)
	}
	return list
}

// changes returns the times in a follow at which the speed of the distance may
// change fastest: where a move starts or ends, and where a smooth one speeds up
// and slows down most.
func (p *pull) changes() []float64 {
	early := (3 - math.Sqrt(3)) / 6 // of its time, where minimum jerk speeds up most
	var times []float64
	for _, s := range p.shifts {
		long := s.end - s.start
		for _, t := range []float64{s.start, s.start + early*long, s.end - early*long, s.end} {
			if t >= p.start && t <= p.land {
				times = append(times, t)
			}
		}
	}
	return times
}

// lagAt is how far the focus is behind at t, metres. Someone who goes at an
// even pace takes half a second to get to it, and to stop.
func (p *pull) lagAt(t float64) float64 {
	const pickUp = 0.5 // s, the model's own
	sum := 0.0         // m/s^2
	for _, s := range p.shifts {
		long := s.end - s.start
		switch {
		case s.smooth && t >= s.start && t <= s.end:
			sum += s.d / (long * long) * hand.MinJerkAcceleration((t-s.start)/long)
		case !s.smooth && t >= s.start && t < min(s.start+pickUp, s.end):
			sum += s.d / long / pickUp
		case !s.smooth && t >= s.end && t < s.end+pickUp:
			sum -= s.d / long / pickUp
		}
	}
	return hand.Lag(math.Abs(sum))
}
