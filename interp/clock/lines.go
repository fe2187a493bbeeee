// Spoken lines: when each is said.

package clock

import (
	"pullscore/interp/clock/spoken"
	"pullscore/interp/names"
	"pullscore/interp/speech"
)

// A Line is a spoken line with its words.
type Line = spoken.Line

// A turn is who spoke last, and until when. gap tells that the next speaker waits
// a little: there was no pause and no anchor since.
type turn struct {
	speaker string
	spoke   float64
	gap     bool
}

// speak times a line. It returns where the clock stands after it, and whose turn
// it was.
func (c *Clock) speak(l *Line, now float64, t turn, ahead bool) (after float64, next turn) {
	s, k, in := l.Stmt, l.Item, c.items[l.Item].In
	c.At[k].Failed = c.At[k].Failed || c.torn(s)
	start := now
	if t.gap && t.speaker != l.Who {
		start = max(now, t.spoke+speech.Gap)
	}
	if from, to, ok := c.heardAt(l); ok {
		l.Stood, l.Planned = now, start
		return c.spoken(l, from, to, now)
	}
	if s.From != nil || s.To != nil {
		return c.speakFromTo(l, now, t)
	}
	if s.On != nil {
		switch w := c.anchor(ask{item: k, in: in, ahead: ahead}, s.On); w.State {
		case Waits:
			c.waitsForItself(k, s.On.Range())
		case Failed:
			c.At[k].Failed = true
		case Found:
			start = w.T
		}
	}
	long := speech.DurationOf(l.Tokens, c.with.Pace)
	if s.Lasting != nil {
		if t, ok := in.NotNegative(s.Lasting, names.DimTime); ok {
			long = t
		}
	}
	end := start + long
	if t, ok := c.asLong(l, start); ok {
		end = t
	}
	return c.spoken(l, start, end, now)
}

func (c *Clock) speakFromTo(l *Line, now float64, t turn) (after float64, next turn) {
	in := c.items[l.Item].In
	from, okF := c.time(in, l.Stmt.From)
	to, okT := c.time(in, l.Stmt.To)
	if !okF || !okT {
		c.At[l.Item].Failed = true
		return now, t
	}
	if to < from {
		c.fail(l.Item, "out-of-range", "the line ends before it starts", "")
		to = from
	}
	if t, ok := c.asLong(l, from); ok {
		to = t
	}
	return c.spoken(l, from, to, now)
}

// spoken notes the time of a line.
func (c *Clock) spoken(l *Line, start, end, now float64) (after float64, next turn) {
	end = c.span(l.Item, start, end)
	l.Start, l.End, l.Timed = start, end, true
	return max(now, end), turn{speaker: l.Who, spoke: end, gap: true}
}

// ownTime times a line that says its time itself, ahead of the clock.
func (c *Clock) ownTime(l *Line, ahead bool) bool {
	s, m := l.Stmt, &c.At[l.Item]
	switch {
	case l.Timed, c.waitsForCut(l), s.On == nil && s.From == nil && !c.inCut(l), m.stepping, m.Failed:
		return l.Timed
	}
	m.stepping = true
	c.speak(l, 0, c.turn, ahead) // whose turn it is stays: the clock has not passed it
	m.stepping = false
	return l.Timed
}

// timed tells whether a line has its time once the clock has passed it, or the
// line itself says it.
func (c *Clock) timed(l *Line, ahead bool) When {
	switch {
	case !c.pass(l.Item+1, ahead) && !c.ownTime(l, ahead):
		return until(l.Item + 1)
	case c.At[l.Item].Failed:
		return failed
	}
	return When{T: c.At[l.Item].StartS, Line: l}
}
