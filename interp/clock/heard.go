// Times that come from a cut: they are asked for before those of the plan.

package clock

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"pullscore/interp/cut"
	"pullscore/interp/speech"
	"pullscore/interp/units"
	"pullscore/lang"
)

// Hear takes what the cuts say of the shot. epoch is where the shot then begins, as
// frames.
func (c *Clock) Hear(found *cut.Shot, epoch int64) {
	c.cut, c.with.Begun, c.with.Epoch = found, c.with.Begun || found.List != nil, epoch
	for i, key := range cut.KeysOf(c.Said()) {
		c.InOrder[i].Heard = found.Lines[key]
	}
	c.firstHeard = sync.OnceValue(func() *Line {
		i := slices.IndexFunc(c.InOrder, func(l *Line) bool { return l.Heard != nil && l.Heard == found.First })
		if i < 0 {
			return nil
		}
		return c.InOrder[i]
	})
}

// heardAt returns the times of a line that the cut has; ok is false where the cut
// says nothing yet: of a shot without a place the first line found is where the
// plan has it, and the others are counted from there.
func (c *Clock) heardAt(l *Line) (from, to float64, ok bool) {
	shift, ok := c.cutShift(l)
	if !ok {
		return 0, 0, false
	}
	l.Words = c.shifted(l.Heard.Words, shift)
	return c.onSet(l.Heard.Start()) + shift, c.onSet(l.Heard.End()) + shift, true
}

// cutShift is what is added to the times of a heard line.
func (c *Clock) cutShift(l *Line) (shift float64, ok bool) {
	cut := c.cut
	switch {
	case cut == nil || l.Heard == nil || l.Heard == cut.First && !cut.Placed:
		return 0, false
	case cut.Placed:
		return 0, true
	}
	if first := c.firstHeard(); first != nil {
		return first.Start - c.onSet(cut.First.Start()), first.Timed
	}
	return 0, false
}

// inCut reports whether the cut tells the time of a line by itself, whatever
// stands above it.
func (c *Clock) inCut(l *Line) bool {
	_, ok := c.cutShift(l)
	return ok
}

// waitsForCut reports whether a line has its time from the cut, and that cannot
// be told yet.
func (c *Clock) waitsForCut(l *Line) bool {
	cut := c.cut
	return cut != nil && l.Heard != nil && !cut.Placed && l.Heard != cut.First && !c.inCut(l)
}

// asLong gives the first line that is found in a shot without a place the
// length that it has in the cut, from where the plan has it.
func (c *Clock) asLong(l *Line, start float64) (end float64, ok bool) {
	if c.cut == nil || l.Heard == nil {
		return 0, false
	}
	l.Words = c.shifted(l.Heard.Words, start-c.onSet(l.Heard.Start()))
	return start + c.onSet(l.Heard.End()) - c.onSet(l.Heard.Start()), true
}

// onSet returns the set time of a time of a heard line. If the place of the shot is
// known, the cut has given set time already; else the line has the time of the
// subtitles, which is that of the screen.
func (c *Clock) onSet(t float64) float64 {
	if c.cut.Placed || c.cut.Slow == 1 {
		return t
	}
	return t / c.cut.Slow
}

func (c *Clock) shifted(words []speech.Timed, by float64) []speech.Timed {
	list := slices.Clone(words)
	for i := range list {
		list[i].Start = c.onSet(list[i].Start) + by
		list[i].End = c.onSet(list[i].End) + by
	}
	return list
}

// CueInCut is the time that a list gives a cue.
func (c *Clock) CueInCut(name string) (t float64, ok bool) {
	if c.cut == nil {
		return 0, false
	}
	t, ok = c.cut.Cues[strings.ToLower(name)]
	return t, ok
}

// timedByCut reports whether the cut gives item k its time.
func (c *Clock) timedByCut(k int) bool {
	switch s := c.items[k].Stmt.(type) {
	case *lang.Speech:
		l := c.Lines[k]
		return l != nil && l.Heard != nil
	case *lang.Cue:
		_, ok := c.CueInCut(s.Name.Text)
		return ok
	}
	return false
}

// notBefore reports a line, an action or a cue that would come before the shot
// does; pulls and blocking are checked once all is known.
//
// A line or a cue that a cut has may be heard before its shot is seen, and of a shot
// that a list has, the head may have been cut away.
func (c *Clock) notBefore(k int, start float64) {
	if c.timedByCut(k) || c.cut != nil && c.cut.List != nil {
		return
	}
	switch c.items[k].Stmt.(type) {
	case *lang.Speech, *lang.Action, *lang.Cue:
		if start < -1e-9 {
			c.fail(k, "before-the-shot", fmt.Sprintf("this would start %s before the shot", units.Style{}.Time(-start)), "")
		}
	}
}

// Said returns the lines of the shot in words, in their order.
func (c *Clock) Said() []cut.Said {
	list := make([]cut.Said, len(c.InOrder))
	for i, l := range c.InOrder {
		list[i] = cut.Said{Stmt: l.Stmt, Tokens: l.Tokens}
	}
	return list
}
