package away

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/clock"
	"pullscore/interp/cut"
)

// Settle returns what the cuts say of a shot, with pieces whose place the record does not
// say where a clock has their first lines.
func Settle(found *cut.Shot, c *clock.Clock) *cut.Shot {
	times := make([]cut.Span, len(c.InOrder))
	for i, l := range c.InOrder {
		times[i] = cut.Span{Start: l.Start, End: c.At[l.Item].EndS, Timed: l.Timed}
	}
	return found.Settle(c.Said(), times)
}

// CutOut reports whether a pull has been cut out with what it hangs on: with its line,
// or in a run for which no time is left.
func CutOut(c *clock.Clock, p *clock.Pull) bool {
	if p.Follow {
		return c.StartCutOut(p) || c.Squeezed(p)
	}
	return c.Squeezed(p) || slices.ContainsFunc(p.HangsOnLines, c.CutOut)
}

// InPlace puts pulls that have been cut out where they are written among the others,
// which are in the order of time, and between those in time.
func InPlace(c *clock.Clock, list []*clock.Pull) []*clock.Pull {
	gone := map[*clock.Pull]bool{}
	for _, p := range list {
		gone[p] = CutOut(c, p)
	}
	placed := slices.DeleteFunc(slices.Clone(list), func(p *clock.Pull) bool { return gone[p] })
	if len(placed) == len(list) {
		return list
	}
	away := slices.DeleteFunc(slices.Clone(list), func(p *clock.Pull) bool { return !gone[p] })
	slices.SortStableFunc(away, func(p, q *clock.Pull) int { return cmp.Compare(p.Item, q.Item) })
	for _, p := range away {
		i := slices.IndexFunc(placed, func(q *clock.Pull) bool { return q.Item > p.Item })
		if i < 0 {
			i = len(placed)
		}
		placed = slices.Insert(placed, i, p)
	}
	fitBetween(placed, gone)
	return placed
}

// fitBetween gives pulls that have been cut out times after the pull before them, and
// before the next that is shown: they have left the focus where they go at the latest
// when that starts.
func fitBetween(list []*clock.Pull, gone map[*clock.Pull]bool) {
	for i, p := range list {
		if !gone[p] || i == 0 {
			continue
		}
		long, free := p.LandS-p.StartS, list[i-1].LandS
		if list[i-1].Follow {
			free = list[i-1].StartS
		}
		p.StartS = max(p.StartS, free)
		p.LandS = p.StartS + long
	}
	next := math.Inf(1) // when the next that is shown starts
	for _, p := range slices.Backward(list) {
		if !gone[p] {
			next = p.StartS
			continue
		}
		p.LandS = min(p.LandS, next)
		p.StartS = min(p.StartS, p.LandS)
	}
}
