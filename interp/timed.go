// Times that come from a cut: they are asked for before those of the plan.

package interp

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/speech"
	"pullscore/lang"
)

// speakInCut times a line that the cut has; ok is false where the cut says
// nothing yet: of a shot without a place the first line found is where the plan
// has it, and the others are counted from there.
func (c *clock) speakInCut(l *line, now float64) (after float64, ok bool) {
	shift, ok := c.cutShift(l)
	if !ok {
		return 0, false
	}
	l.words = shifted(l.heard.words, shift)
	return c.spoken(l, l.heard.start()+shift, l.heard.end()+shift, now), true
}

// cutShift is what is added to the times of a heard line.
func (c *clock) cutShift(l *line) (shift float64, ok bool) {
	cut := c.b.cut
	switch {
	case cut == nil || l.heard == nil || l.heard == cut.first && !cut.placed:
		return 0, false
	case cut.placed:
		return 0, true
	}
	for _, first := range c.inOrder {
		if first.heard == cut.first {
			return first.start - cut.first.start(), first.timed
		}
	}
	return 0, false
}

// inCut reports whether the cut tells the time of a line by itself, whatever
// stands above it.
func (c *clock) inCut(l *line) bool {
	_, ok := c.cutShift(l)
	return ok
}

// waitsForCut reports whether a line has its time from the cut, and that cannot
// be told yet.
func (c *clock) waitsForCut(l *line) bool {
	cut := c.b.cut
	return cut != nil && l.heard != nil && !cut.placed && l.heard != cut.first && !c.inCut(l)
}

// asLong gives the first line that is found in a shot without a place the
// length that it has in the cut, from where the plan has it.
func (c *clock) asLong(l *line, start float64) (end float64, ok bool) {
	if c.b.cut == nil || l.heard == nil {
		return 0, false
	}
	l.words = shifted(l.heard.words, start-l.heard.start())
	return start + l.heard.end() - l.heard.start(), true
}

func shifted(words []speech.Timed, by float64) []speech.Timed {
	list := slices.Clone(words)
	for i := range list {
		list[i].Start += by
		list[i].End += by
	}
	return list
}

// cueInCut is the time that a list gives a cue.
func (b *base) cueInCut(name string) (t float64, ok bool) {
	if b.cut == nil {
		return 0, false
	}
	t, ok = b.cut.cues[strings.ToLower(name)]
	return t, ok
}

// timedByCut reports whether the cut gives item k its time.
func (c *clock) timedByCut(k int) bool {
	switch s := c.b.items[k].stmt.(type) {
	case *lang.Speech:
		l := c.lines[k]
		return l != nil && l.heard != nil
	case *lang.Cue:
		_, ok := c.b.cueInCut(s.Name.Text)
		return ok
	}
	return false
}

// notBefore reports a line, an action or a cue that would come before the shot
// does; pulls and blocking are checked once all is known.
//
// A line or a cue that a cut has may be heard before its shot is seen.
func (c *clock) notBefore(k int, start float64) {
	if c.timedByCut(k) {
		return
	}
	switch c.b.items[k].stmt.(type) {
	case *lang.Speech, *lang.Action, *lang.Cue:
		if start < -1e-9 {
			c.b.fail(c.b.items[k].stmt.Range(), "before-the-shot", fmt.Sprintf("this would have to start %s before the shot does", seconds(-start)), "")
		}
	}
}

// said returns the lines of the shot in words, in their order.
func (c *clock) said() []said {
	list := make([]said, len(c.inOrder))
	for i, l := range c.inOrder {
		list[i] = said{l.stmt, l.tokens}
	}
	return list
}
