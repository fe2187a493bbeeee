// Follows: what the hand does while somebody moves, and how far it is behind.

package shot

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// A Lag is how far the focus is behind somebody at a moment.
type Lag struct {
	T      float64 // seconds from the start of the shot
	Metres float64
}

// followFigures fills in the speed and the lag of a follow. The lag is worst
// where the speed of the distance changes most; nobody says where a hand that
// follows lands, so there is no chance.
func (b *Built) followFigures(p *Pull) {
	p.Lags = lagsOf(b.shiftsIn(p), p.Rack.StartS, p.Rack.LandS)
	worst := 0.0
	for _, l := range p.Lags {
		worst = max(worst, l.Metres)
	}
	p.Plan.Lag = plan.Number(worst)
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

// A shift is a move that changes the distance of someone who is followed, by d
// metres away from the camera.
type shift struct {
	number        int // in the order in which the moves were timed
	start, end, d float64
	smooth        bool
}

// shiftsIn returns the moves, of the one followed and of the camera, that fall
// into a follow.
func (b *Built) shiftsIn(p *Pull) []shift {
	var list []shift
	hangs := b.Stage.Ancestors(p.Rack.Aim.Subject)
	for _, m := range b.Stage.MovesIn(p.Rack.StartS, p.Rack.LandS) {
		s := shift{number: len(list), start: m.Start, end: m.End, smooth: m.Smooth}
		_, carried := hangs[m.Who]
		switch {
		case m.Kind == "dolly":
			s.d = -m.By
		case m.Kind == "moves" && carried:
			s.d = m.Who.Along.At(m.End) - m.Who.Along.At(m.Start)
		default:
			continue
		}
		list = append(list, s)
	}
	return list
}

// pickUp is how long someone who goes at an even pace takes to get to it, and to
// stop: seconds, the model's own.
const pickUp = 0.5

// lagsOf returns how far the focus is behind at the times in a follow at which
// the speed of the distance may change fastest: where a move starts or ends, and
// where a smooth one speeds up and slows down most.
func lagsOf(shifts []shift, from, until float64) []Lag {
	early := (3 - math.Sqrt(3)) / 6 // of its time, where minimum jerk speeds up most
	var lags []Lag
	under := newUnderWay(shifts)
	for _, s := range shifts {
		long := s.end - s.start
		for _, t := range []float64{s.start, s.start + early*long, s.end - early*long, s.end} {
			if t >= from && t <= until {
				lags = append(lags, Lag{T: t, Metres: lagAt(under.at(t), t)})
			}
		}
	}
	return lags
}

// lagAt returns how far the focus is behind at t, metres, given the moves that
// are felt then.
func lagAt(shifts []shift, t float64) float64 {
	sum := 0.0 // m/s^2
	for _, s := range shifts {
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

// underWay finds the moves that are felt at a moment, without a look at all.
type underWay struct {
	byStart []shift
	latest  []float64 // until when one of the moves up to here is felt
}

func newUnderWay(shifts []shift) underWay {
	u := underWay{byStart: slices.Clone(shifts), latest: make([]float64, len(shifts))}
	slices.SortStableFunc(u.byStart, func(a, b shift) int { return cmp.Compare(a.start, b.start) })
	for i, s := range u.byStart {
		u.latest[i] = s.end + pickUp
		if i > 0 {
			u.latest[i] = max(u.latest[i], u.latest[i-1])
		}
	}
	return u
}

// at returns the moves that may be felt at t, in the order in which they were
// timed, so that their sum is always the same.
func (u underWay) at(t float64) []shift {
	var list []shift
	for i := sort.Search(len(u.byStart), func(i int) bool { return u.byStart[i].start > t }) - 1; i >= 0 && u.latest[i] >= t; i-- {
		if u.byStart[i].end+pickUp >= t {
			list = append(list, u.byStart[i])
		}
	}
	slices.SortFunc(list, func(a, b shift) int { return cmp.Compare(a.number, b.number) })
	return list
}
