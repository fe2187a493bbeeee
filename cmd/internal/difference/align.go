// Package difference pairs what a plan held before a change with what it holds
// after it: shots by their IDs, pulls as in an alignment.
package difference

import (
	"slices"

	"pullscore/interp/plan"
)

// A Match is a pull before and after a change; nil: it came, or it is gone.
type Match struct{ Before, After *plan.Pull }

// Pulls matches the pulls of a shot before and after a change, in order, so
// that what they have in common is the most: one that was put in between does
// not make all that follow look changed. It is the alignment of Needleman and
// Wunsch (1970), with no cost for a gap.
func Pulls(before, after []*plan.Pull) []Match {
	best := make([][]int, len(before)+1) // from there to the end
	for i := range best {
		best[i] = make([]int, len(after)+1)
	}
	for i := len(before) - 1; i >= 0; i-- {
		for j := len(after) - 1; j >= 0; j-- {
			best[i][j] = max(best[i+1][j], best[i][j+1])
			if l := likeness(before[i], after[j]); l > 0 {
				best[i][j] = max(best[i][j], l+best[i+1][j+1])
			}
		}
	}
	var list []Match
	i, j := 0, 0
	for i < len(before) && j < len(after) {
		l := likeness(before[i], after[j])
		switch {
		case l > 0 && best[i][j] == l+best[i+1][j+1]:
			list = append(list, Match{before[i], after[j]})
			i, j = i+1, j+1
		case best[i][j] == best[i+1][j]:
			list = append(list, Match{before[i], nil})
			i++
		default:
			list = append(list, Match{nil, after[j]})
			j++
		}
	}
	for _, p := range before[i:] {
		list = append(list, Match{p, nil})
	}
	for _, p := range after[j:] {
		list = append(list, Match{nil, p})
	}
	return list
}

// likeness tells how likely two pulls are the same one, edited; 0: they are
// not. Whom the pull goes to weighs more than all else, then what it hangs on;
// where it comes from follows from the pull before. A whole that is nearly
// unchanged may have gone to somebody else.
func likeness(a, b *plan.Pull) int {
	if a.Kind != b.Kind {
		return 0
	}
	score := 0
	for _, part := range []struct {
		same   bool
		weight int
	}{
		{a.Target == b.Target, 8},
		{a.Anchor != "" && a.Anchor == b.Anchor, 4},
		{a.Because != "" && a.Because == b.Because, 4},
		{a.From == b.From, 2},
		{a.Start == b.Start, 1},
	} {
		if part.same {
			score += part.weight
		}
	}
	if score < 4 {
		return 0
	}
	return score
}

// Shots matches the shots of a plan before and after a change by their IDs, in
// their order after it, those that are gone last.
func Shots(before, after *plan.Plan) [][2]*plan.Shot {
	var list [][2]*plan.Shot
	byID := func(p *plan.Plan, id string) *plan.Shot {
		i := slices.IndexFunc(p.Shots, func(s *plan.Shot) bool { return s.ID == id })
		if i < 0 {
			return nil
		}
		return p.Shots[i]
	}
	for _, s := range after.Shots {
		list = append(list, [2]*plan.Shot{byID(before, s.ID), s})
	}
	for _, s := range before.Shots {
		if byID(after, s.ID) == nil {
			list = append(list, [2]*plan.Shot{s, nil})
		}
	}
	return list
}
