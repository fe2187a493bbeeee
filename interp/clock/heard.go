// Times that come from a cut: they are asked for before those of the plan.

package clock

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/cut"
	"pullscore/interp/speech"
	"pullscore/interp/units"
	"pullscore/lang"
)

// speakInCut times a line that the cut has; ok is false where the cut says
// nothing yet: of a shot without a place the first line found is where the plan
// has it, and the others are counted from there.
func (c *Clock) speakInCut(l *Line, now float64) (after float64, ok bool) {
	shift, ok := c.cutShift(l)
	if !ok {
		return 0, false
	}
	l.words = shifted(l.Heard.Words, shift)
	return c.spoken(l, l.Heard.Start()+shift, l.Heard.End()+shift, now), true
}

// cutShift is what is added to the times of a heard line.
func (c *Clock) cutShift(l *Line) (shift float64, ok bool) {
	cut := c.b.Cut
	switch {
	case cut == nil || l.Heard == nil || l.Heard == cut.First && !cut.Placed:
		return 0, false
	case cut.Placed:
		return 0, true
	}
	if first := c.firstHeard(); first != nil {
		return first.Start - cut.First.Start(), first.Timed
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
	cut := c.b.Cut
	return cut != nil && l.Heard != nil && !cut.Placed && l.Heard != cut.First && !c.inCut(l)
}

// asLong gives the first line that is found in a shot without a place the
// length that it has in the cut, from where the plan has it.
func (c *Clock) asLong(l *Line, start float64) (end float64, ok bool) {
	if c.b.Cut == nil || l.Heard == nil {
		return 0, false
	}
	l.words = shifted(l.Heard.Words, start-l.Heard.Start())
	return start + l.Heard.End() - l.Heard.Start(), true
}

func shifted(words []speech.Timed, by float64) []speech.Timed {
	list := slices.Clone(words)
	for i := range list {
		list[i].Start += by
		list[i].End += by
	}
	return list
}

// CueInCut is the time that a list gives a cue.
func (b *Base) CueInCut(name string) (t float64, ok bool) {
	if b.Cut == nil {
		return 0, false
	}
	t, ok = b.Cut.Cues[strings.ToLower(name)]
	return t, ok
}

// timedByCut reports whether the cut gives item k its time.
func (c *Clock) timedByCut(k int) bool {
	switch s := c.b.Items[k].Stmt.(type) {
	case *lang.Speech:
		l := c.Lines[k]
		return l != nil && l.Heard != nil
	case *lang.Cue:
		_, ok := c.b.CueInCut(s.Name.Text)
		return ok
	}
	return false
}

// notBefore reports a line, an action or a cue that would come before the shot
// does; pulls and blocking are checked once all is known.
//
// A line or a cue that a cut has may be heard before its shot is seen.
func (c *Clock) notBefore(k int, start float64) {
	if c.timedByCut(k) {
		return
	}
	switch c.b.Items[k].Stmt.(type) {
	case *lang.Speech, *lang.Action, *lang.Cue:
		if start < -1e-9 {
			c.b.Fail(c.b.Items[k].Stmt.Range(), "before-the-shot", fmt.Sprintf("this would have to start %s before the shot does", units.Style{}.Time(-start)), "")
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
