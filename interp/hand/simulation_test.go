// Simulation beside formula: paths are drawn by what the essays of sway.go and
// follow.go say, and counted, with none of the formulas that they are held against.
// The seed is fixed, so the figures are too. Print them with -v.

package hand

import (
	"math"
	"math/rand/v2"
	"testing"
)

// paths is how many paths a case has. A share of 0.5 then has a standard error of
// 0.008.
const paths = 4000

// A swaying is a stationary, critically damped process of second order, stepped by
// its exact transition: the pair of place and speed is normal whatever the step.
type swaying struct {
	rnd                *rand.Rand
	rms                float64
	a, b, c, d         float64 // the pair after a step by the pair before
	l11, l21, l22      float64 // what is new: the root of its covariance
	place, speed, step float64
}

func newSwaying(rnd *rand.Rand, rms, step float64) *swaying {
	e := math.Exp(-step / Tau)
	s := &swaying{rnd: rnd, rms: rms, step: step, a: e * (1 + step/Tau), b: e * step, c: -e * step / (Tau * Tau), d: e * (1 - step/Tau)}
	p, v := rms*rms, rms*rms/(Tau*Tau)
	q11, q12, q22 := p-(s.a*s.a*p+s.b*s.b*v), -(s.a*s.c*p + s.b*s.d*v), v-(s.c*s.c*p+s.d*s.d*v)
	if rms > 0 {
		s.l11 = math.Sqrt(q11)
		s.l21 = q12 / s.l11
		s.l22 = math.Sqrt(max(0, q22-s.l21*s.l21))
	}
	s.place, s.speed = rms*rnd.NormFloat64(), rms/Tau*rnd.NormFloat64()
	return s
}

func (s *swaying) next() float64 {
	z1, z2 := s.rnd.NormFloat64(), s.rnd.NormFloat64()
	s.place, s.speed = s.a*s.place+s.b*s.speed+s.l11*z1, s.c*s.place+s.d*s.speed+s.l21*z1+s.l22*z2
	return s.place
}

// The share of the time inside a zone, and how often a path never leaves it. The
// second is an approximation that lies on either side.
func TestRestsSimulated(t *testing.T) {
	for _, c := range []struct{ lo, hi, sway, seconds float64 }{
		{-0.05, 0.05, 0.1, 6}, {-0.02, 0.022, 0.01, 6}, {-0.0049, 0.0049, 0.0078, 5}, {-0.03, 0.03, 0.01, 10},
		{-0.01, math.Inf(1), 0.01, 4},
	} {
		const step = 0.02
		inside, looks, stayed := 0, 0, 0
		for i := range paths {
			s := newSwaying(rand.New(rand.NewPCG(1, uint64(i))), c.sway, step)
			stays := true
			for range int(math.Round(c.seconds / step)) {
				x := s.next()
				in := c.lo <= x && x <= c.hi
				stays = stays && in
				looks++
				if in {
					inside++
				}
			}
			if stays {
				stayed++
			}
		}
		share, stay := float64(inside)/float64(looks), float64(stayed)/paths
		f, s := Within(c.lo, c.hi, c.sway, 0), Stays(c.lo, c.hi, c.sway, c.seconds)
		t.Logf("%+v: share %.3f simulated, %.3f by formula; stays %.3f and %.3f", c, share, f, stay, s)
		if math.Abs(share-f) > 0.01 || math.Abs(stay-s) > 0.03 {
			t.Errorf("%+v: share %.3f and %.3f, stays %.3f and %.3f", c, share, f, stay, s)
		}
	}
}

// walk is the course of somebody who walks from one distance to another, under a
// ring that goes by the reciprocal of the distance, with a window of so many
// reciprocal metres to either side.
func walk(from, to, seconds, depth, sway float64, even bool) Course {
	const turns = 310 * 0.75 // degrees for a reciprocal metre
	const first = 1.0        // when they set off, seconds
	distance := func(t float64) float64 {
		share := MinJerk((t - first) / seconds)
		if even {
			share = min(max((t-first)/seconds, 0), 1)
		}
		return from + (to-from)*share
	}
	return Course{
		From: first, To: first + seconds + 0.5, Sway: sway, Rim: 0.11,
		Angle:    func(t float64) float64 { return -turns / distance(t) },
		PerMetre: func(t float64) float64 { return turns / (distance(t) * distance(t)) },
		Distance: distance,
		ToMark:   func(t float64) float64 { return min(math.Abs(distance(t)-from), math.Abs(distance(t)-to)) },
		Room:     func(float64) (lo, hi float64) { return -turns * depth, turns * depth },
	}
}

// simulated returns how often somebody is sharp at every moment of a follow. A path
// has one slip in time, one error of seeing and one of setting; the hand goes on from
// what it saw a reaction ago, and sees that much of the sway if that helps.
func simulated(h Hand, c Course, moments []Moment) []float64 {
	sharp := make([]float64, len(moments))
	late := int(math.Round(Sight / every))
	for i := range paths {
		rnd := rand.New(rand.NewPCG(2, uint64(i)))
		slip, seeing := Slip*rnd.NormFloat64(), rnd.NormFloat64()
		setting := RimDegrees(h.RimSpread, c.Rim) * rnd.NormFloat64()
		sway := newSwaying(rnd, c.Sway, every)
		swayed := make([]float64, len(moments)+late)
		for k := range swayed {
			swayed[k] = sway.next()
		}
		judging := See * rnd.NormFloat64()
		for k, m := range moments {
			d, per := c.Distance(m.T), c.PerMetre(m.T)
			seen := m.T - Sight + slip
			const e = 1e-3
			hand := c.Angle(seen) + Sight*(c.Angle(seen+e)-c.Angle(seen-e))/(2*e)
			hand += per*SeenWithin(d, c.ToMark(m.T))*seeing + setting
			at := per * swayed[k+late]
			if math.Hypot(SwayLeft(c.Sway), See*d) < c.Sway {
				at -= per * (swayed[k] + judging*d)
			}
			lo, hi := c.Room(m.T)
			if off := hand - c.Angle(m.T) - at; lo <= off && off <= hi {
				sharp[k] += 1.0 / paths
			}
		}
	}
	return sharp
}

// A follow is judged a little harder than these paths: what was seen last counts
// with the greatest spread of the last reaction, and the paths with that of the
// moment.
func TestFollowsSimulated(t *testing.T) {
	for _, c := range []struct {
		name   string
		course Course
	}{
		{"a walk, smooth, 75 mm at f/2.8", walk(3.5, 1.8, 2.5, 0.0108, 0.005, false)},
		{"a slow walk of one who sways widely", walk(2.5, 2, 4, 0.0108, 0.03, false)},
	} {
		h := Default()
		moments := h.Follow(c.course)
		sharp := simulated(h, c.course, moments)
		counted := make([]Moment, len(moments))
		for i, m := range moments {
			counted[i] = m
			counted[i].Sharp = sharp[i]
		}
		share, want := SharpShare(counted), SharpShare(moments)
		worst, _ := WorstHalfSecond(counted)
		wantWorst, at := WorstHalfSecond(moments)
		end, wantEnd := sharp[len(sharp)-1], moments[len(moments)-1].Sharp
		t.Logf("%s: share %.3f simulated, %.3f by formula; worst half second %.3f and %.3f at %.2f s; end %.3f and %.3f", c.name, share, want, worst, wantWorst, at, end, wantEnd)
		if math.Abs(share-want) > 0.05 || math.Abs(worst-wantWorst) > 0.1 || math.Abs(end-wantEnd) > 0.03 || wantWorst > worst+0.03 {
			t.Errorf("%s: share %.3f and %.3f, worst %.3f and %.3f, end %.3f and %.3f", c.name, share, want, worst, wantWorst, end, wantEnd)
		}
	}
}
