// Follows: how far the hand is behind someone who moves.

package clock

import (
	"math"

	"pullscore/interp/hand"
)

// A Shift is a move that changes the distance of someone who is followed, by d
// metres away from the camera.
type Shift struct {
	Start, End, D float64
	Smooth        bool
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
			if t >= p.StartS && t <= p.LandS {
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
