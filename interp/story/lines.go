// How much of the lines has its speaker sharp.
//
// A line is looked at in steps, and where somebody comes to be sharp or soft between two
// of them, the moment is found by halving. Where nothing moves, one look does for all.

package story

import (
	"math"
	"sort"

	"pullscore/interp/plan"
)

const (
	steps = 24    // a second
	exact = 0.002 // seconds
)

// lineTime returns how long the speakers of a shot speak who are its subjects, within the
// shot, and how much of that they are sharp, weighted by the chance, in seconds. A chance
// that nobody knows counts as 1.
func lineTime(s *plan.Shot) (all, sharp float64) {
	var keys []float64
	for i := range s.Lines {
		l := &s.Lines[i]
		u := s.Subject(l.Who)
		from, to := max(0, float64(l.Start)), min(float64(l.End), float64(s.Duration))
		if u == nil || l.Off || !(to > from) { // nobody has to be seen who is only heard
			continue
		}
		if keys == nil {
			keys = keysOf(s)
		}
		all += to - from
		sharp += sharpTime(s, u, from, to, keys)
	}
	return all, sharp
}

// keysOf returns the times at which anything starts or stops in a shot, rising.
func keysOf(s *plan.Shot) []float64 {
	keys := append(s.Optics.Keys(), s.Optics.Focal.Keys()...)
	for _, u := range s.Subjects {
		keys = append(append(keys, u.Along.Keys()...), u.Across.Keys()...)
	}
	for _, p := range s.Pulls {
		keys = append(keys, float64(p.Start), float64(p.Land))
	}
	return plan.Sorted(keys)
}

// sharpTime returns how long a subject is sharp between two times, weighted by the
// chance, in seconds.
func sharpTime(s *plan.Shot, u *plan.Subject, from, to float64, keys []float64) (sum float64) {
	for from < to {
		next := to
		if i := sort.SearchFloat64s(keys, math.Nextafter(from, to)); i < len(keys) {
			next = min(to, keys[i])
		}
		if still(s, from, next) {
			sum += weight(s, u, from+(next-from)/2) * (next - from)
		} else {
			sum += moving(s, u, from, next)
		}
		from = next
	}
	return sum
}

// still reports whether nothing moves between two times within which nothing starts or
// stops.
func still(s *plan.Shot, from, to float64) bool {
	mid := from + (to-from)/2
	for _, p := range s.Pulls {
		if mid > float64(p.Start) && mid < float64(p.Land) {
			return false
		}
	}
	for _, b := range s.Blocking {
		if mid > float64(b.Start) && mid < float64(b.End) {
			return false
		}
	}
	return true
}

// moving is sharpTime while something moves.
func moving(s *plan.Shot, u *plan.Subject, from, to float64) (sum float64) {
	n := max(1, int(math.Ceil((to-from)*steps)))
	each := (to - from) / float64(n)
	was := s.SharpAt(u, from)
	for i := range n {
		a, b := from+each*float64(i), from+each*float64(i+1)
		is := s.SharpAt(u, b)
		turn := b
		if was != is {
			turn = turns(a, b, func(t float64) bool { return s.SharpAt(u, t) == was })
		}
		if was && turn > a {
			sum += weight(s, u, a+(turn-a)/2) * (turn - a)
		}
		if is && b > turn {
			sum += weight(s, u, turn+(b-turn)/2) * (b - turn)
		}
		was = is
	}
	return sum
}

// turns returns when something that holds at the first of two times does not any more.
func turns(from, to float64, holds func(float64) bool) float64 {
	for to-from > exact {
		if mid := from + (to-from)/2; holds(mid) {
			from = mid
		} else {
			to = mid
		}
	}
	return from + (to-from)/2
}

// weight returns the chance that a subject is sharp at t; 0 if they are not in the plan.
func weight(s *plan.Shot, u *plan.Subject, t float64) float64 {
	if !s.SharpAt(u, t) {
		return 0
	}
	if c := s.SharpChance(u, t); c.Known() {
		return float64(c)
	}
	return 1
}
