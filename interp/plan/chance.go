// Chance: how sure it is that who is sharp in the plan will be sharp on the day.

package plan

import (
	"slices"
	"sort"
)

// A Sure is a moment of a follow, with the chance of being sharp there, 0 to 1.
type Sure struct{ T, Chance float64 }

// SharpChance returns the chance, 0 to 1, that a subject who is sharp at t in the plan
// is sharp there on the day. It is the lesser of the chance of the pull that brought the
// focus there and of the share of the time in which that rest is sharp. While the focus
// follows, it is the chance of that moment. It is 1 where nothing is judged, and None
// where nobody knows how the hand lands: without a ring, by wire, on a ring of which
// nothing is known, and after a pull that has no chance.
//
// During a rack, a subject who was sharp as it started keeps the chance from before it:
// that time of being sharp has not ended yet. Any other has the chance of the rack.
func (s *Shot) SharpChance(u *Subject, t float64) Number {
	if s.Optics.Ring == nil || s.RingUnknown() {
		return None()
	}
	i := sort.Search(len(s.Pulls), func(i int) bool { return float64(s.Pulls[i].Start) > t }) - 1
	for ; i >= 0; i-- {
		p := s.Pulls[i]
		if t >= float64(p.Land) {
			break
		}
		if p.Kind == "follow" {
			return p.sureAt(t)
		}
		if !s.SharpAt(u, float64(p.Start)) {
			break
		}
	}
	return s.chanceAfter(i)
}

// SharpAt reports whether a subject is sharp at t in the plan.
func (s *Shot) SharpAt(u *Subject, t float64) bool {
	x := s.FocusAt(t)
	set := s.Judged(x, t)
	return set.Blur(s.LensDistanceAt(u, t), x) <= set.Criterion
}

// chanceAfter returns the chance of being sharp after the pull with that index, until
// the next one; -1 is the time before the first.
func (s *Shot) chanceAfter(i int) Number {
	chance, from, to := Number(1), Number(0), s.Duration
	if i >= 0 {
		chance, from = s.Pulls[i].Chance, s.Pulls[i].Land
	}
	if i+1 < len(s.Pulls) {
		to = s.Pulls[i+1].Start
	}
	for _, r := range s.Rests {
		if r.Start == from && r.End == to {
			return min(chance, r.Share) // NaN stays
		}
	}
	return chance
}

// sureAt returns the chance of being sharp at a moment of a follow; None where the
// follow has no chance.
func (p *Pull) sureAt(t float64) Number {
	list := p.Sures
	if len(list) == 0 || !p.Chance.Known() {
		return None()
	}
	i, exact := slices.BinarySearchFunc(list, t, func(m Sure, t float64) int {
		switch {
		case m.T < t:
			return -1
		case m.T > t:
			return 1
		}
		return 0
	})
	switch {
	case exact || i == 0:
		return Number(list[i].Chance)
	case i == len(list):
		return Number(list[i-1].Chance)
	}
	a, b := list[i-1], list[i]
	return Number(a.Chance + (b.Chance-a.Chance)*(t-a.T)/(b.T-a.T))
}
