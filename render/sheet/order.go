// The one order of the subjects of a shot, on all papers.

package sheet

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/plan"
)

// Order returns the subjects of a shot in the order in which every paper shows them:
// farthest first at the start of the shot, then from left to right, then by name. A
// subject whose side nobody says counts as standing on the axis. The order does not change
// when people cross.
func Order(s *plan.Shot) []*plan.Subject {
	list := slices.Clone(s.Subjects)
	slices.SortStableFunc(list, func(a, b *plan.Subject) int {
		return cmp.Or(
			cmp.Compare(s.DistanceAt(b, 0), s.DistanceAt(a, 0)),
			cmp.Compare(side(s, a), side(s, b)),
			cmp.Compare(a.Name, b.Name),
		)
	})
	return list
}

// side returns how far to the right of the axis a subject is at the start, in metres.
func side(s *plan.Shot, u *plan.Subject) float64 {
	v := s.SideAt(u, 0)
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// Names returns the names of the subjects in their order.
func Names(s *plan.Shot) []string {
	list := Order(s)
	names := make([]string, len(list))
	for i, u := range list {
		names[i] = u.Name
	}
	return names
}
