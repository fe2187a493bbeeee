// What the cut has taken away: the lines that it does not have, when they would be
// said, and the moves that hang on them.
//
// What is hard. The lines that a cut has keep its times, and those that it does not
// have no times of its own. By the plan's clock they follow the line above. But where
// the head of a shot was cut away, that is too late: the line below is said long before
// they could be over. Then moves that nobody sees would come after, or at once with,
// those that are seen.
//
// What is done. The lines that the cut does not have, from one that it has to the next,
// are a run, with all pauses, actions and moves between. Before the first line that the
// cut has, the run ends where that begins, so it may start below 0. Behind such a line
// it starts from its end; if it does not end before the next, it goes back as a whole
// until it does. By how much a run has to go back is known only once all of it is
// timed, and a moment is timed once. So the shot is built again for each: a first clock,
// whose mistakes nobody hears of, says when the plan would have the line behind the first
// run. The next goes back at the start of it, and says so of the second: what is behind
// is right only once that is, since racks wait for those before, and holds for racks.
//
// What was rejected. To shift a run once its end is reached: holds and racks have by then
// been timed from it. To give its lines no time: the focus still goes where they lead.

package clock

import (
	"cmp"
	"slices"

	"pullscore/interp/plan"
)

// fromTheStart is the key of a shift of the run before the first line that the cut has.
const fromTheStart = -1

// missing reports whether the cut does not have a line. A line without words cannot be
// looked for.
func (c *Clock) missing(l *Line) bool {
	return c.cut != nil && c.cut.List != nil && c.cut.Placed && c.cut.First != nil && l.Heard == nil && len(l.Tokens) > 0
}

// LacksLines reports whether there is a line that the cut does not have.
func (c *Clock) LacksLines() bool { return slices.ContainsFunc(c.InOrder, c.missing) }

// Runs returns the runs that the clock, which has run, has yet to shift, each by the item of
// the line before it, and by how many seconds. What is said behind the first may be too much.
func (c *Clock) Runs() (runs []int, by []float64) {
	before, run := fromTheStart, false
	add := func(sec float64) {
		if _, done := c.shifts[before]; !done {
			runs, by = append(runs, before), append(by, sec)
		}
	}
	for _, l := range c.InOrder {
		switch {
		case c.missing(l):
			run = true
			continue
		case l.Heard == nil || !l.Timed:
			continue
		case !run:
		case before == fromTheStart:
			add(l.Start - l.Planned)
		case l.Stood > l.Start:
			add(l.Start - l.Stood)
		}
		before, run = l.Item, false
	}
	return runs, by
}

// Shift makes the clock shift runs. It has not run yet.
func (c *Clock) Shift(by map[int]float64) {
	c.shifts = by
	c.Before[0] += by[fromTheStart]
	before := fromTheStart
	for _, l := range c.InOrder {
		if l.Heard == nil {
			continue
		}
		if before != fromTheStart && by[before] != 0 {
			c.squeezes = append(c.squeezes, [2]int{before, l.Item})
		}
		before = l.Item
	}
}

// goBack returns where the clock stands behind item k, and whose turn it was, where a
// run begins there.
func (c *Clock) goBack(k int, after float64, t turn) (float64, turn) {
	by := c.shifts[k]
	t.spoke += by
	return after + by, t
}

// squeezed reports whether the run that an item is in has been shifted for want of time.
func (c *Clock) squeezed(item int) bool {
	n, _ := slices.BinarySearchFunc(c.squeezes, item, func(run [2]int, item int) int { return cmp.Compare(run[1], item) })
	return n < len(c.squeezes) && item > c.squeezes[n][0]
}

// CutOut reports whether a line has been cut out. A shot that is in the cut as one run
// may have its picture and not its sound: there a line has been cut out only where its
// time is not in the picture, or no time is left for it.
func (c *Clock) CutOut(l *Line) bool {
	switch {
	case l == nil || !c.missing(l):
		return false
	case c.cut.Recut(), c.squeezed(l.Item):
		return true
	}
	return !plan.ShowAll(c.cut.Pieces, l.Start, l.End)
}

// TakenAway reports whether the cut does not have a line, nor the picture of all of it.
func (c *Clock) TakenAway(l *Line) bool {
	return c.missing(l) && l.Timed && (c.squeezed(l.Item) || !plan.ShowAll(c.cut.Pieces, l.Start, l.End))
}

// Squeezed reports whether a pull without a moment of its own is in a run for which no
// time is left.
func (c *Clock) Squeezed(p *Pull) bool { return !p.Anchored && c.squeezed(p.Item) }

// ItemCutOut reports whether a cue or a movement has been cut out with its line.
func (c *Clock) ItemCutOut(k int) bool { return c.CutOut(c.At[k].hung) }

// StartCutOut does so of what a pull starts on.
func (c *Clock) StartCutOut(p *Pull) bool { return c.CutOut(p.hung) }
