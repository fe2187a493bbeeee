package diff

import (
	"cmp"
	"slices"

	"pullscore/interp/plan"
)

// A match is a piece of a shot before and after a change, by its place in the
// lists of both; -1: it came, or it is gone.
type match struct{ before, after int }

// mostCells bounds the work of an alignment: two lists of some 1 400 pieces.
const mostCells = 1 << 21

// align matches the pieces of two lists, in order, so that what they have in
// common is the most: one that was put in between does not make all that follow
// look changed. likeness tells how likely two pieces are the same one, edited;
// 0: they are not. It is the alignment of Needleman and Wunsch (1970), with no
// cost for a gap. Lists that are too long for it are matched place by place.
func align(before, after int, likeness func(i, j int) int) []match {
	if before*after > mostCells {
		return inPlace(before, after, likeness)
	}
	best := make([][]int, before+1) // from there to the end
	for i := range best {
		best[i] = make([]int, after+1)
	}
	for i := before - 1; i >= 0; i-- {
		for j := after - 1; j >= 0; j-- {
			best[i][j] = max(best[i+1][j], best[i][j+1])
			if l := likeness(i, j); l > 0 {
				best[i][j] = max(best[i][j], l+best[i+1][j+1])
			}
		}
	}
	var list []match
	i, j := 0, 0
	for i < before || j < after {
		l := 0
		if i < before && j < after {
			l = likeness(i, j)
		}
		switch {
		case l > 0 && best[i][j] == l+best[i+1][j+1]:
			list = append(list, match{i, j})
			i, j = i+1, j+1
		case j == after || i < before && best[i][j] == best[i+1][j]:
			list = append(list, match{i, -1})
			i++
		default:
			list = append(list, match{-1, j})
			j++
		}
	}
	return list
}

// inPlace matches pieces that have the same place in both lists.
func inPlace(before, after int, likeness func(i, j int) int) []match {
	var list []match
	for i := range max(before, after) {
		if i < before && i < after && likeness(i, i) > 0 {
			list = append(list, match{i, i})
			continue
		}
		if i < before {
			list = append(list, match{i, -1})
		}
		if i < after {
			list = append(list, match{-1, i})
		}
	}
	return list
}

// matchPulls matches the pulls of a shot before and after a change. Where two
// ways to match them are as good, the way does not depend on which side is the
// earlier, so that a difference read backwards has the same pulls in it.
func matchPulls(before, after []*plan.Pull) []match {
	if slices.CompareFunc(before, after, comparePulls) <= 0 {
		return align(len(before), len(after), func(i, j int) int { return pullLikeness(before[i], after[j]) })
	}
	list := align(len(after), len(before), func(i, j int) int { return pullLikeness(before[j], after[i]) })
	for k, m := range list {
		list[k] = match{m.after, m.before}
	}
	return list
}

// comparePulls orders pulls by all that their likeness is made of.
func comparePulls(a, b *plan.Pull) int {
	return cmp.Or(
		cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Target, b.Target), cmp.Compare(a.Anchor, b.Anchor),
		cmp.Compare(a.Because, b.Because), cmp.Compare(a.From, b.From), cmp.Compare(a.Start, b.Start),
	)
}

// pullLikeness tells how likely two pulls are the same one. Whom the pull goes
// to weighs more than all else, then what it hangs on; where it comes from
// follows from the pull before. A pull that is nearly unchanged may have gone
// to somebody else.
func pullLikeness(a, b *plan.Pull) int {
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
