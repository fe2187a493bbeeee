// The other takes of a rack.

package used

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/interp/takes"
)

// others returns what the takes are called that are not the one in the cut and landed
// sharp, those that landed nearest to the mark first and those that say no more than
// that last; and how many rows may be of the take in the cut or not.
func (s *shown) others(rows []*row, picked *row) (names []string, undecided int) {
	names = []string{}
	var sharp []*row
	for _, t := range rows {
		v := s.verdict(t)
		if v == unknown && picked == nil {
			undecided++
		}
		if t.Hit == takes.Sharp && (v == other || v == unknown && picked != nil) {
			sharp = append(sharp, t)
		}
	}
	far := func(t *row) float64 {
		if d := math.Abs(beyond(t)); !math.IsNaN(d) {
			return d
		}
		return math.Inf(1)
	}
	slices.SortStableFunc(sharp, func(a, b *row) int { return cmp.Compare(far(a), far(b)) })
	for _, t := range sharp {
		if name := nameOf(t); !slices.Contains(names, name) && (picked == nil || name != nameOf(picked)) {
			names = append(names, name)
		}
	}
	return names, undecided
}

// nameOf returns what a take is called.
func nameOf(t *row) string {
	return cmp.Or(t.OnSet, t.Clip, t.Timecode, fmt.Sprintf("line %d", t.Line))
}
