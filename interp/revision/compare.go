// Lines and speeches laid over one another.

package revision

import (
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// A comparison is the words of all speeches, and where the lines lie in them.
type comparison struct {
	speeches []spoken
	words    speech.Folded
	of       []int // the speech of each word
	heard    []bool
	stream   *wording.Stream
	lines    []*placed
}

// A spoken is a speech and its words in the stream.
type spoken struct {
	Speech
	tokens   []speech.Token
	from, to int // words of the stream
	touched  bool
}

// A placed is a line of a shot and where it lies in the stream.
type placed struct {
	shot  *plan.Shot
	index int
	folds speech.Folded
	at    wording.Place
	// from and to are the words of the page that stand for the line: those
	// found, and those that have come in beside them.
	from, to int
}

func (l *placed) line() *plan.Line { return &l.shot.Lines[l.index] }

func newComparison(speeches []Speech) *comparison {
	c := &comparison{}
	for i, s := range speeches {
		sp := spoken{Speech: s, tokens: speech.Split(s.Text), from: len(c.words)}
		c.words = append(c.words, speech.Fold(sp.tokens)...)
		sp.to = len(c.words)
		for range sp.tokens {
			c.of = append(c.of, i)
		}
		c.speeches = append(c.speeches, sp)
	}
	c.heard = make([]bool, len(c.words))
	c.stream = wording.New(c.words)
	return c
}

// place finds the lines of a shot. Shots are looked for each by itself: several
// may have the same lines, from another side.
func (c *comparison) place(s *plan.Shot) {
	folds := make([]speech.Folded, len(s.Lines))
	for i, l := range s.Lines {
		folds[i] = speech.Fold(speech.Split(l.Text))
	}
	for i, at := range c.stream.Place(folds) {
		l := &placed{shot: s, index: i, folds: folds[i], at: at}
		if at.Found() {
			c.put(l, at.Start, at.End)
		}
		c.lines = append(c.lines, l)
	}
}

// put lays a line on words of the page.
func (c *comparison) put(l *placed, from, to int) {
	l.from, l.to = from, to
	for w := from; w < to; w++ {
		c.heard[w] = true
	}
	for w := from; w < to; w = c.speeches[c.of[w]].to {
		c.speeches[c.of[w]].touched = true
	}
}

// found reports whether the page has the line.
func (l *placed) found() bool { return l.to > l.from }

// rewritten takes a line that the page does not have for the speech of the same
// speaker that stands in its place: not a word of it may be left.
func (c *comparison) rewritten() {
	for i, l := range c.lines {
		if l.found() || len(l.folds) == 0 {
			continue
		}
		from, to := c.gap(i)
		for s := range c.speeches {
			sp := &c.speeches[s]
			if sp.from >= from && sp.to <= to && !sp.touched && sp.to > sp.from && sameName(sp.Who, l.line().Who) {
				c.put(l, sp.from, sp.to)
				break
			}
		}
	}
}

// gap returns the words between the lines of the shot that are found around one.
// A shot of which nothing is found has no place on the page, and so no gap.
func (c *comparison) gap(i int) (from, to int) {
	known := false
	to = len(c.words)
	for j := i - 1; j >= 0 && c.lines[j].shot == c.lines[i].shot; j-- {
		if l := c.lines[j]; l.found() && !l.at.Moved {
			from, known = l.to, true
			break
		}
	}
	for j := i + 1; j < len(c.lines) && c.lines[j].shot == c.lines[i].shot; j++ {
		if l := c.lines[j]; l.found() && !l.at.Moved {
			to, known = l.from, true
			break
		}
	}
	if !known {
		return 0, 0
	}
	return from, to
}

// extend gives words of a speech that no line of any shot has to the line of
// that speech which stands before them, or else behind them.
func (c *comparison) extend() {
	for _, l := range c.lines {
		if !l.found() {
			continue
		}
		end := c.speeches[c.of[l.to-1]].to
		for l.to < end && !c.heard[l.to] {
			c.heard[l.to] = true
			l.to++
		}
	}
	for _, l := range c.lines {
		if !l.found() {
			continue
		}
		start := c.speeches[c.of[l.from]].from
		for l.from > start && !c.heard[l.from-1] {
			l.from--
			c.heard[l.from] = true
		}
	}
}

// text returns words of the page as they are written, with their punctuation.
func (c *comparison) text(from, to int) string {
	var parts []string
	for from < to {
		s := &c.speeches[c.of[from]]
		last := min(to, s.to)
		start, end := 0, len(s.Text)
		if from > s.from {
			start = s.tokens[from-s.from].Start
		}
		if last < s.to {
			end = s.tokens[last-s.from].Start
		}
		parts = append(parts, strings.TrimSpace(s.Text[start:end]))
		from = last
	}
	return strings.Join(parts, " ")
}

// changes returns what has become of a line.
func (c *comparison) changes(l *placed) (list []Change) {
	if len(l.folds) == 0 {
		return nil // without a word it cannot be looked for
	}
	line := l.line()
	base := Change{Shot: l.shot.ID, Line: l.index, Who: line.Who, Text: line.Text, Pulls: line.Pulls}
	if !l.found() {
		base.Kind = Gone
		return []Change{base}
	}
	sp := &c.speeches[c.of[l.from]]
	base.PageWho, base.PageText, base.PageLine, base.Page = sp.Who, c.text(l.from, l.to), sp.Line, sp.Page
	add := func(k Kind, is bool) {
		if is {
			base.Kind = k
			list = append(list, base)
		}
	}
	add(Changed, !slices.Equal(c.words[l.from:l.to], l.folds))
	add(Moved, l.at.Moved)
	add(Speaker, !sameName(sp.Who, line.Who))
	return list
}

// unheard returns the speeches that no line has, in scenes that lines are of.
func (c *comparison) unheard() (list []Change) {
	type scene struct {
		page   string
		number int
	}
	shot := map[scene]bool{}
	for _, s := range c.speeches {
		if s.touched {
			shot[scene{s.Page, s.scene}] = true
		}
	}
	for _, s := range c.speeches {
		if s.touched || s.to == s.from || !shot[scene{s.Page, s.scene}] {
			continue
		}
		list = append(list, Change{
			Kind: New, Line: -1, PageWho: s.Who, PageText: s.Text, PageLine: s.Line, Page: s.Page, Scene: s.Scene,
		})
	}
	return list
}
