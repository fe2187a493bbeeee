// Words: where a phrase that a moment hangs on is said.

package clock

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// words resolves "WORDS" [n] and SPEAKER "WORDS" [n], and the ends of these. The
// number counts within one line.
func (c *Clock) words(q ask, a *lang.Anchor) When {
	if a.Words == nil {
		return failed
	}
	if n := c.nameMeant(a); n != nil {
		return c.named(q, n)
	}
	n, p := max(a.Nth, 1), phrase(a)
	var some, often []*Line // that have the words, and that have them so often
	way := speech.ByWords
	if a.Name != nil {
		who, ok := c.speakerOf(q, a)
		if !ok {
			return failed
		}
		way = c.said().wayOf(who, p)
		some, often = c.said().linesBy(who, p, 1, way), c.said().linesBy(who, p, n, way)
	} else {
		if some = c.beside(q.item, p, 1, way); len(some) == 0 {
			way = speech.ByTerms
			some = c.beside(q.item, p, 1, way)
		}
		often = c.beside(q.item, p, n, way)
	}
	hit, ok := c.pick(q, a, some, often, way)
	if !ok {
		return failed
	}
	c.with.Lex.Film.Record.Say(a.Words, hit.line.Stmt.Words, hit.From.Word, hit.To.Word)
	if q.focus {
		hit.line.hangs[hit.From.Word] = true
	}
	if w := c.timed(hit.line, q.ahead); w.State != Found {
		return w
	}
	words := hit.line.spread()
	if hit.To.Word >= len(words) {
		return failed // the line has no time, which has been told
	}
	if a.Kind == lang.AnchorEnd {
		return When{T: hit.To.In(words), Line: hit.line}
	}
	return When{T: hit.From.In(words), Line: hit.line}
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
	if len(c.said().all(phrase(a), speech.ByWords)) > 0 {
		return nil
	}
	c.with.Lex.Film.Record.Name(a.Words.Range())
	return &lang.Anchor{Node: a.Node, Kind: lang.AnchorName, Name: &lang.Name{Node: a.Words.Node, Text: a.Words.Value, Quoted: true}}
}

// occurrences finds a phrase in a line; nil is no line.
func occurrences(l *Line, phrase *speech.Phrase, way speech.Way) (hits []spotted) {
	if l == nil {
		return nil
	}
	for _, at := range l.phrase().Find(phrase, way) {
		hits = append(hits, spotted{l, at})
	}
	return hits
}

// phrase is the words of an anchor as they are looked for.
func phrase(a *lang.Anchor) *speech.Phrase { return speech.NewPhrase(a.Words.Value) }

// speakerOf returns whose lines an anchor names.
func (c *Clock) speakerOf(q ask, a *lang.Anchor) (who string, ok bool) {
	d, ok := q.in.Who(a.Name, names.DeclSubject, names.DeclVoice)
	if !ok {
		return "", false
	}
	if len(c.speaks[d.Name.Text]) == 0 {
		c.noLine(q, d.Name.Text, a.Range())
		return "", false
	}
	return d.Name.Text, true
}

// beside returns those of the lines next above and next below an item that have a
// phrase so often.
func (c *Clock) beside(item int, words *speech.Phrase, often int, way speech.Way) (lines []*Line) {
	above, below := c.nearest(item)
	for _, l := range []*Line{above, below} {
		if len(occurrences(l, words, way)) >= often {
			lines = append(lines, l)
		}
	}
	return lines
}

// pick finds the words of an anchor in the one line that has them, and where a
// number is written, has them so often.
func (c *Clock) pick(q ask, a *lang.Anchor, some, often []*Line, way speech.Way) (spotted, bool) {
	switch {
	case len(some) == 0 && (c.besideBad(q.item) || a.Name != nil && c.with.Lex.Here.Any(speechWord)): // one mistake is told once
	case len(some) == 0:
		q.in.Fail(a.Range(), "word-not-found", c.notFound(a), c.nearWord(q, a))
	case len(often) == 0:
		c.notSoOften(q, a, some[0], way)
	case len(often) > 1:
		c.inSeveral(q, a, often, way)
	default:
		hits := occurrences(often[0], phrase(a), way)
		if a.Nth == 0 && len(hits) > 1 {
			c.severalTimes(q, a, len(hits))
			return spotted{}, false
		}
		return hits[max(a.Nth, 1)-1], true
	}
	return spotted{}, false
}

// mostNamed is how many lines a message names.
const mostNamed = 3

// notSoOften tells of words that no line has as often as an anchor counts.
func (c *Clock) notSoOften(q ask, a *lang.Anchor, l *Line, way speech.Way) {
	q.in.Report(lang.Diagnostic{
		Code: "word-not-found", Severity: lang.Error, Range: a.Range(),
		Message: fmt.Sprintf("%q is not %s in one line", a.Words.Value, times(a.Nth)),
		Detail:  fmt.Sprintf("The number counts within one line, and this one has it %s.", times(len(occurrences(l, phrase(a), way)))),
		Related: []lang.Related{{Message: "this line", Range: l.Stmt.Range()}},
	})
}

// severalTimes tells of words that stand several times in their line.
func (c *Clock) severalTimes(q ask, a *lang.Anchor, hits int) {
	words := fmt.Sprintf("%q", a.Words.Value)
	if a.Name != nil {
		words = lang.WriteName(a.Name.Text) + " " + words
	}
	q.in.Fail(a.Range(), "word-twice", fmt.Sprintf("%q is there %s", a.Words.Value, times(hits)),
		fmt.Sprintf("Say which: %s 1, or %s 2.", words, words))
}

// times says how often something is.
func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// inSeveral tells of words that several lines have, and names the lines.
func (c *Clock) inSeveral(q ask, a *lang.Anchor, lines []*Line, way speech.Way) {
	d := lang.Diagnostic{Code: "which-line", Severity: lang.Error, Range: a.Range()}
	many := fmt.Sprint(len(lines))
	if len(lines) > mostNamed {
		lines, many = lines[:mostNamed], "many"
	}
	if a.Name != nil {
		d.Message = fmt.Sprintf("%s lines of %s have %q", many, lines[0].Who, a.Words.Value)
	} else {
		d.Code = "word-twice"
		d.Message = fmt.Sprintf("%q is in the line above and in the line below", a.Words.Value)
	}
	var said, advice []string
	for _, l := range lines {
		said = append(said, fmt.Sprintf("%q", names.ValueOf(l.Stmt.Words)))
		if text, ok := c.sayWhich(a, l, way); ok {
			advice = append(advice, text)
		}
		d.Related = append(d.Related, lang.Related{Message: "this line", Range: l.Stmt.Range()})
	}
	if a.Name != nil {
		d.Message += ": " + strings.Join(said, ", ")
	}
	switch {
	case len(advice) == 0:
		d.Detail = "The same words follow in each of them. Write the moment as a time, as in 2.5 s."
	default:
		d.Detail = "Say which line: " + strings.Join(advice, ", or ") + "."
	}
	q.in.Report(d)
}

// sayWhich writes the anchor so that it means the words in that line alone: with
// whose line it is, with as many of the words behind them as no other line of
// theirs has, and with a number where the line has them several times. ok is false
// where the line says nothing else than another.
func (c *Clock) sayWhich(a *lang.Anchor, l *Line, way speech.Way) (text string, ok bool) {
	hits, line := occurrences(l, phrase(a), way), names.ValueOf(l.Stmt.Words)
	hit := hits[min(max(a.Nth, 1), len(hits))-1]
	last, head := hit.To.Word, a.Words.Value
	for end := last; end < len(l.Tokens) && (end == last || hit.To.Part == hit.To.Of); end++ {
		text = head
		if end > last && way == speech.ByWords {
			text = line[l.Tokens[hit.From.Word].Start:l.Tokens[end].End]
		} else if end > last {
			text += line[l.Tokens[last].End:l.Tokens[end].End]
		}
		p := speech.NewPhrase(text)
		if found := c.said().linesBy(l.Who, p, 1, way); c.said().wayOf(l.Who, p) != way || len(found) != 1 || found[0] != l {
			continue
		}
		text = fmt.Sprintf("%s %q", lang.WriteName(l.Who), text)
		here := occurrences(l, p, way)
		if n := slices.IndexFunc(here, func(h spotted) bool { return h.From == hit.From }); len(here) > 1 {
			text += fmt.Sprintf(" %d", n+1)
		}
		return text, true
	}
	return "", false
}

// mostTried is how many places of words are looked at to tell which may be meant.
const mostTried = 10

// first returns the first n of a list.
func first[T any](list []T, n int) []T { return list[:min(n, len(list))] }

func (c *Clock) notFound(a *lang.Anchor) string {
	if a.Name != nil {
		return fmt.Sprintf("no line of %s has %q", a.Name.Text, a.Words.Value)
	}
	return fmt.Sprintf("neither the line above nor the one below has %q", a.Words.Value)
}

// nearWord offers a near miss from the lines looked in, or says in which
// speaker's lines the words do stand.
func (c *Clock) nearWord(q ask, a *lang.Anchor) string {
	p, way := phrase(a), speech.ByWords
	if len(c.said().all(p, way)) == 0 {
		way = speech.ByTerms
	}
	said := slices.DeleteFunc(first(c.said().all(p, way), mostTried), func(h spotted) bool { return h.line.Who == "" })
	for _, h := range said {
		if text, ok := c.sayWhich(a, h.line, way); ok {
			return fmt.Sprintf("It is in a line of %s: write %s.", h.line.Who, text)
		}
	}
	if len(said) > 0 {
		return fmt.Sprintf("It is in several lines of %s.", said[0].line.Who)
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
