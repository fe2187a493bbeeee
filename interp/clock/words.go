// Words: where a phrase that a moment hangs on is said.

package clock

import (
	"fmt"
	"slices"

	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// words resolves "WORDS" [n] and SPEAKER "WORDS" [n].
func (c *Clock) words(q ask, a *lang.Anchor) When {
	if a.Words == nil {
		return failed
	}
	if n := c.nameMeant(a); n != nil {
		return c.named(q, n)
	}
	var hits []spotted
	var ok bool
	if a.Name != nil {
		hits, ok = c.inLinesOf(q, a)
	} else {
		hits, ok = c.inNearest(q, a)
	}
	if !ok {
		return failed
	}
	hit, ok := c.pick(q, a, hits)
	if !ok {
		return failed
	}
	if q.focus {
		hit.line.hangs[hit.token] = true
	}
	if w := c.timed(hit.line, q.ahead); w.State != Found {
		return w
	}
	words := hit.line.spread()
	if hit.token >= len(words) {
		return failed // the line has no time, which has been told
	}
	if a.Kind == lang.AnchorEnd {
		last := min(hit.token+len(phrase(a)), len(words)) - 1
		return When{T: words[last].End, Line: hit.line}
	}
	return When{T: words[hit.token].Start, Line: hit.line}
}

// nameMeant returns the anchor of a name that stands in quotes because it has
// to, as "MRS. DALE" does: words that no line of the shot has, and that are the
// name of a speaker or a cue. It returns nil where words are meant.
func (c *Clock) nameMeant(a *lang.Anchor) *lang.Anchor {
	if a.Name != nil || a.Nth > 0 || a.Kind == lang.AnchorEnd {
		return nil
	}
	d := c.with.Lex.Find(a.Words.Value)
	if d == nil || d.Kind > names.DeclCue {
		return nil
	}
	if len(c.said().all(phrase(a))) > 0 {
		return nil
	}
	return &lang.Anchor{Node: a.Node, Kind: lang.AnchorName, Name: &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}}
}

// occurrences finds a phrase in a line; nil is no line.
func occurrences(l *Line, phrase speech.Folded) []spotted {
	if l == nil {
		return nil
	}
	var hits []spotted
	for _, i := range l.fold().Find(phrase) {
		hits = append(hits, spotted{l, i})
	}
	return hits
}

// phrase is the words of an anchor as they are looked for.
func phrase(a *lang.Anchor) speech.Folded { return speech.Fold(speech.Split(a.Words.Value)) }

// inLinesOf looks in all lines of a speaker.
func (c *Clock) inLinesOf(q ask, a *lang.Anchor) (hits []spotted, ok bool) {
	d, ok := q.in.Who(a.Name, names.DeclSubject, names.DeclVoice)
	if !ok {
		return nil, false
	}
	if len(c.speaks[d.Name.Text]) == 0 {
		c.noLine(q, d.Name.Text, a.Range())
		return nil, false
	}
	return c.said().by(d.Name.Text, phrase(a)), true
}

// inNearest looks in the nearest lines above and below; found in both, the
// words do not say which.
func (c *Clock) inNearest(q ask, a *lang.Anchor) (hits []spotted, ok bool) {
	above, below := c.nearest(q.item)
	n, words := max(a.Nth, 1), phrase(a)
	up, down := occurrences(above, words), occurrences(below, words)
	if len(up) >= n && len(down) >= n {
		q.in.Report(lang.Diagnostic{
			Code: "word-twice", Severity: lang.Error, Range: a.Range(),
			Message: fmt.Sprintf("%q is in the line above and in the line below", a.Words.Value),
			Detail:  "Say whose line: " + c.sayWhich(a, above) + ", or " + c.sayWhich(a, below) + ".",
			Related: []lang.Related{{Message: "here", Range: above.Stmt.Range()}, {Message: "and here", Range: below.Stmt.Range()}},
		})
		return nil, false
	}
	if len(up) >= n {
		return up, true
	}
	if len(down) >= n {
		return down, true
	}
	return append(up, down...), true
}

// sayWhich writes the anchor so that it means the words in that line alone.
func (c *Clock) sayWhich(a *lang.Anchor, l *Line) string {
	hits := c.said().by(l.Who, phrase(a))
	s := fmt.Sprintf("%s %q", lang.WriteName(l.Who), a.Words.Value)
	if len(hits) > 1 {
		s += fmt.Sprintf(" %d", before(hits, l.Item)+max(a.Nth, 1))
	}
	return s
}

// pick chooses among the places that words were found at.
func (c *Clock) pick(q ask, a *lang.Anchor, hits []spotted) (spotted, bool) {
	words := fmt.Sprintf("%q", a.Words.Value)
	if a.Name != nil {
		words = lang.WriteName(a.Name.Text) + " " + words
	}
	switch {
	case len(hits) == 0 && (c.besideBad(q.item) || a.Name != nil && c.with.Lex.Here.Any(speechWord)): // one mistake is told once
	case len(hits) == 0:
		q.in.Fail(a.Range(), "word-not-found", c.notFound(a), c.nearWord(q, a))
	case a.Nth > len(hits):
		q.in.Fail(a.Range(), "word-not-found", fmt.Sprintf("%q is not there %d times", a.Words.Value, a.Nth),
			fmt.Sprintf("It is there %d times.", len(hits)))
	case a.Nth == 0 && len(hits) > 1:
		q.in.Fail(a.Range(), "word-twice", fmt.Sprintf("%q is there %d times", a.Words.Value, len(hits)),
			fmt.Sprintf("Say which: %s 1, or %s 2.", words, words))
	default:
		return hits[max(a.Nth, 1)-1], true
	}
	return spotted{}, false
}

func (c *Clock) notFound(a *lang.Anchor) string {
	if a.Name != nil {
		return fmt.Sprintf("no line of %s has %q", a.Name.Text, a.Words.Value)
	}
	return fmt.Sprintf("neither the line above nor the one below has %q", a.Words.Value)
}

// nearWord offers a near miss from the lines looked in, or says in which
// speaker's lines the words do stand.
func (c *Clock) nearWord(q ask, a *lang.Anchor) string {
	if i := slices.IndexFunc(c.said().all(phrase(a)), func(h spotted) bool { return h.line.Who != "" }); i >= 0 {
		l := c.said().all(phrase(a))[i].line
		return fmt.Sprintf("It is in a line of %s: write %s.", l.Who, c.sayWhich(a, l))
	}
	var among []string
	above, below := c.nearest(q.item)
	for _, l := range []*Line{above, below} {
		if l != nil {
			for _, t := range l.Tokens {
				among = append(among, t.Text)
			}
		}
	}
	if near, ok := lang.Nearest(a.Words.Value, among); ok {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	switch {
	case above != nil:
		return fmt.Sprintf("The line above is: %q.", names.ValueOf(above.Stmt.Words))
	case below != nil:
		return fmt.Sprintf("The line below is: %q.", names.ValueOf(below.Stmt.Words))
	}
	return "There is no line."
}
