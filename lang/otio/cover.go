// Which clips are seen. Of a stack the last picture is on top, so in the order of
// the file each clip lies over those before it. A sweep over the record asks at
// every begin and end which of the clips there comes last: that one is seen.

package otio

import (
	"cmp"
	"container/heap"
	"slices"
	"strings"
)

// cover marks the clips of which nothing is seen.
func cover(tracks []Track) {
	var shown []*Item
	for i := range tracks {
		if t := &tracks[i]; !t.Disabled && !strings.EqualFold(t.Kind, "Audio") {
			shown = pictures(shown, t.Items)
		}
	}
	var ends []int64
	order := make([]int, len(shown)) // by where they begin
	for i, item := range shown {
		item.Covered = true
		order[i] = i
		ends = append(ends, item.Record, item.Record+item.Frames)
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(shown[a].Record, shown[b].Record) })
	slices.Sort(ends)
	here := &pile{items: shown}
	for _, at := range slices.Compact(ends) {
		for len(order) > 0 && shown[order[0]].Record == at {
			heap.Push(here, order[0])
			order = order[1:]
		}
		for here.Len() > 0 && here.top().Record+here.top().Frames <= at {
			heap.Pop(here)
		}
		if here.Len() > 0 {
			here.top().Covered = false
		}
	}
}

// pictures adds the clips of items that can be seen, in the order of the file.
func pictures(list []*Item, items []Item) []*Item {
	for i := range items {
		switch item := &items[i]; {
		case item.Disabled || item.Sound || item.Frames == 0:
		case item.Kind == aClip:
			list = append(list, item)
		default:
			list = pictures(list, item.Inside)
		}
	}
	return list
}

// A pile holds clips by their numbers, the greatest on top.
type pile struct {
	items   []*Item
	numbers []int
}

func (p *pile) top() *Item         { return p.items[p.numbers[0]] }
func (p *pile) Len() int           { return len(p.numbers) }
func (p *pile) Less(a, b int) bool { return p.numbers[a] > p.numbers[b] }
func (p *pile) Swap(a, b int)      { p.numbers[a], p.numbers[b] = p.numbers[b], p.numbers[a] }
func (p *pile) Push(number any)    { p.numbers = append(p.numbers, number.(int)) }
func (p *pile) Pop() any {
	last := len(p.numbers) - 1
	number := p.numbers[last]
	p.numbers = p.numbers[:last]
	return number
}
