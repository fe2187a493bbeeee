// Spoken lines: when each is said, and when its words are.

package clock

import (
	"cmp"
	"slices"
	"sync"

	"pullscore/interp/cut"
	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A Line is a spoken line with its words.
type Line struct {
	Item   int
	Stmt   *lang.Speech
	Who    string // empty where nobody knows
	Tokens []speech.Token
	said   *speech.Phrase // once words are looked for
	Start  float64
	end    float64
	Timed  bool           // the line has its time
	words  []speech.Timed // spread once they are asked for
	hangs  map[int]bool   // the words that a move of the focus hangs on
	Heard  *cut.Heard     // as the cut has it; nil where it does not

	// Of a line that the cut has: where the plan's clock stands before it, and when the
	// line would begin by that.
	clock, planned float64

	Listed int // its index in the plan's lines
}

// speechWord is what marks a spoken line, as a line that could not be read has
// it for its keyword.
const speechWord = ":"

// readLines splits the words of every line, so that anchors find them.
func (c *Clock) readLines() {
	for i := range c.items {
		it := &c.items[i]
		if bad, ok := it.Stmt.(*lang.Bad); ok && (bad.Keyword == speechWord || bad.Keyword == "") {
			c.bad = append(c.bad, i)
		}
		s, ok := it.Stmt.(*lang.Speech)
		if !ok {
			continue
		}
		l := &Line{Item: i, Stmt: s, Tokens: c.with.Tokens(s.Words), hangs: map[int]bool{}}
		if d, ok := it.In.Who(s.Who, names.DeclSubject, names.DeclVoice); ok {
			l.Who = d.Name.Text
		}
		c.Lines[i] = l
		c.InOrder = append(c.InOrder, l)
		c.speaks[l.Who] = append(c.speaks[l.Who], l)
	}
	c.said = sync.OnceValue(func() *said { return newSaid(c.InOrder) })
}

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
		l.clock, l.planned = now, start
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
	l.Start, l.end, l.Timed = start, end, true
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

// is tells whether a line is somebody's.
func is(l *Line, who string) bool { return l != nil && l.Who == who }

// nearest returns the lines written next above and next below item k.
func (c *Clock) nearest(k int) (above, below *Line) {
	i, found := slices.BinarySearchFunc(c.InOrder, k, func(l *Line, k int) int { return cmp.Compare(l.Item, k) })
	if i > 0 {
		above = c.InOrder[i-1]
	}
	if found {
		i++
	}
	if i < len(c.InOrder) {
		below = c.InOrder[i]
	}
	return above, below
}

// besideBad tells whether a line next to item k could not be read, or nobody
// knows whose it is: it may be the one that is meant.
func (c *Clock) besideBad(k int) bool {
	above, below := c.nearest(k)
	if is(above, "") || is(below, "") {
		return true
	}
	i, _ := slices.BinarySearch(c.bad, k)
	if i > 0 && (above == nil || c.bad[i-1] > above.Item) {
		return true
	}
	if i < len(c.bad) && c.bad[i] == k {
		i++
	}
	return i < len(c.bad) && (below == nil || c.bad[i] < below.Item)
}

// spread returns the words of a line over its time; none before it has one.
func (l *Line) spread() []speech.Timed {
	if l.words == nil && l.Timed {
		l.words = speech.Spread(l.Tokens, l.Start, l.end)
	}
	return l.words
}
