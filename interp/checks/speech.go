// Who speaks when.

package checks

import (
	"cmp"
	"slices"
	"sort"

	"pullscore/interp/clock"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
)

// A said is a spoken line with its time; latest is the latest end of it and of
// all that begin before it.
type said struct {
	line               *clock.Line
	start, end, latest float64
}

// speechOf returns the lines of a shot that have their times, by who speaks and in
// the order of their starts, so that a moment finds them without a look at all.
func speechOf(b *shot.Built) map[string][]said {
	speech := map[string][]said{}
	for _, l := range b.Clock.InOrder {
		if m := b.Clock.At[l.Item]; m.Known {
			speech[l.Who] = append(speech[l.Who], said{line: l, start: m.StartS, end: m.EndS})
		}
	}
	for _, list := range speech {
		slices.SortStableFunc(list, func(a, b said) int { return cmp.Compare(a.start, b.start) })
		for i := range list {
			list[i].latest = list[i].end
			if i > 0 {
				list[i].latest = max(list[i].end, list[i-1].latest)
			}
		}
	}
	return speech
}

// speaking returns the lines of some subjects that begin by the first time and
// end at the second or later, in the order in which they are written.
func (b *Shot) speaking(who []*stage.Subject, by, until float64) (lines []said) {
	for _, u := range who {
		list := b.speech[u.Name]
		for i := sort.Search(len(list), func(i int) bool { return list[i].start > by }) - 1; i >= 0 && list[i].latest >= until; i-- {
			if list[i].end >= until {
				lines = append(lines, list[i])
			}
		}
	}
	slices.SortFunc(lines, func(a, b said) int { return cmp.Compare(a.line.Item, b.line.Item) })
	return lines
}
