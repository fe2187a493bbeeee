// Lines and speeches laid over one another.

package revision

import (
	"cmp"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// A comparison is the words of all speeches, and where the lines lie in them.
type comparison struct {
	*Pages
	heard  []bool // the words that lines have
	stream *wording.Stream
	lines  []*placed
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

func newComparison(shots []*plan.Shot, pages *Pages) *comparison {
	var folds []speech.Folded
	for _, s := range shots {
		for _, l := range s.Lines {
			folds = append(folds, speech.Fold(speech.Tokens(l.Text)))
		}
	}
	c := &comparison{Pages: pages, stream: wording.New(wording.NewVocabulary(folds...))}
	for i := range c.speeches {
		s := &c.speeches[i]
		s.from = int32(c.stream.Len())
		if !c.stream.Append(s.text) {
			c.full, c.speeches = true, c.speeches[:i]
			break
		}
		s.to = int32(c.stream.Len())
	}
	c.heard = make([]bool, c.stream.Len())
	return c
}

// of returns the speech that a word is in.
func (c *comparison) of(word int) *said {
	i, found := slices.BinarySearchFunc(c.speeches, word, func(s said, word int) int { return cmp.Compare(int(s.from), word) })
	if !found {
		return &c.speeches[i-1]
	}
	for c.speeches[i].to == c.speeches[i].from { // without a word
		i++
	}
	return &c.speeches[i]
}

// place finds the lines of a shot, and returns the word behind the last of them.
// Shots are looked for each by itself: several may have the same lines, from
// another side. Where it makes no difference to its lines, a shot stands behind
// the one before it, which ends at a word: a short line is on many pages.
func (c *comparison) place(s *plan.Shot, behind int) (end int) {
	folds := make([]speech.Folded, len(s.Lines))
	for i, l := range s.Lines {
		folds[i] = speech.Fold(speech.Tokens(l.Text))
	}
	places := c.stream.Place(folds, behind, c.stream.Len())
	if n := c.kept(places, folds); behind > 0 && n < len(folds) {
		if all := c.stream.Place(folds, 0, c.stream.Len()); c.kept(all, folds) > n {
			places = all
		}
	}
	for i, at := range places {
		l := &placed{shot: s, index: i, folds: folds[i], at: at}
		if at.Found() {
			c.put(l, at.Start, at.End)
			end = max(end, at.End)
		}
		c.lines = append(c.lines, l)
	}
	return end
}

// kept counts the lines that stand word for word and in their order.
func (c *comparison) kept(places []wording.Place, folds []speech.Folded) (n int) {
	for i, at := range places {
		if len(folds[i]) == 0 || at.Found() && !at.Moved && c.stream.Same(folds[i], at.Start, at.End) {
			n++
		}
	}
	return n
}

// put lays a line on words of the page.
func (c *comparison) put(l *placed, from, to int) {
	l.from, l.to = from, to
	for w := from; w < to; w++ {
		c.heard[w] = true
	}
	for w := from; w < to; {
		s := c.of(w)
		s.touched, w = true, int(s.to)
	}
}

// found reports whether the page has the line.
func (l *placed) found() bool { return l.to > l.from }

// rewritten takes a line that the page does not have for the speech of the same
// speaker that stands in its place: not a word of it may be left. In a shot of
// which the page has nothing, a line has no place, and is taken for a speech of
// its speaker that has all its words and others.
func (c *comparison) rewritten() {
	for i, l := range c.lines {
		if l.found() || len(l.folds) == 0 {
			continue
		}
		from, to, known := c.gap(i)
		for s := range c.speeches {
			sp := &c.speeches[s]
			start, end := int(sp.from), int(sp.to)
			if start >= from && end <= to && !sp.touched && end > start && c.speaks(sp.who, l.line().Who) && (known || c.within(l, start, end)) {
				c.put(l, start, end)
				break
			}
		}
	}
}

// within reports whether words of the page have those of a line among them.
func (c *comparison) within(l *placed, from, to int) bool {
	for ; from+len(l.folds) <= to; from++ {
		if c.stream.Same(l.folds, from, from+len(l.folds)) {
			return true
		}
	}
	return false
}

// gap returns the words between the lines of the shot that are found around one.
// known is false for a shot of which nothing is found: it may be anywhere.
func (c *comparison) gap(i int) (from, to int, known bool) {
	to = c.stream.Len()
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
	return from, to, known
}

// extend gives words of a speech that no line of any shot has to the line of
// that speech which stands before them, or else behind them.
func (c *comparison) extend() {
	for _, l := range c.lines {
		if !l.found() {
			continue
		}
		end := int(c.of(l.to - 1).to)
		for l.to < end && !c.heard[l.to] {
			c.heard[l.to] = true
			l.to++
		}
	}
	for _, l := range c.lines {
		if !l.found() {
			continue
		}
		start := int(c.of(l.from).from)
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
		s := c.of(from)
		tokens := speech.Tokens(s.text)
		first, last := int(s.from), min(to, int(s.to))
		start, end := 0, len(s.text)
		if from > first {
			start = tokens[from-first].Start
		}
		if last < int(s.to) {
			end = tokens[last-first].Start
		}
		parts = append(parts, strings.TrimSpace(s.text[start:end]))
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
	sp := c.of(l.from)
	base.PageWho, base.PageText, base.PageLine, base.Page = c.names[sp.who], c.text(l.from, l.to), int(sp.line), c.scenes[sp.scene].Page
	base.Revision = c.setOf(sp)
	add := func(k Kind, is bool) {
		if is {
			base.Kind = k
			list = append(list, base)
		}
	}
	add(Changed, !c.stream.Same(l.folds, l.from, l.to))
	add(Moved, l.at.Moved)
	add(Speaker, !c.speaks(sp.who, line.Who))
	return list
}

// unheard returns the speeches that no line has, in scenes that lines are of.
func (c *comparison) unheard() (list []Change) {
	shot := make([]bool, len(c.scenes))
	for _, s := range c.speeches {
		shot[s.scene] = shot[s.scene] || s.touched
	}
	for _, s := range c.speeches {
		if s.touched || s.to == s.from || !shot[s.scene] {
			continue
		}
		scene := c.scenes[s.scene]
		list = append(list, Change{
			Kind: New, Line: -1, PageWho: c.names[s.who], PageText: s.text, PageLine: int(s.line), Page: scene.Page, Scene: scene.Name, Revision: c.setOf(&s),
		})
	}
	return list
}
