// Words: where a phrase that a moment hangs on is said.

package spoken

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/names"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// Find returns where the words of an anchor are said, as "WORDS" [n] or SPEAKER "WORDS"
// [n] have them. The number counts within one line. ok is false where they are not found,
// or in several places, which it reports.
func (t *Talk) Find(q Ask, a *lang.Anchor) (hit Spotted, ok bool) {
	if a.Name == nil && t.wide.looks(q.Item) {
		return t.findWide(q, a)
	}
	n, p := max(a.Nth, 1), phrase(a)
	var some, often []*Line // that have the words, and that have them so often
	way := speech.ByWords
	if a.Name != nil {
		who, ok := t.speakerOf(q, a)
		if !ok {
			return hit, false
		}
		way = t.said().wayOf(who, p)
		some, often = t.said().linesBy(who, p, 1, way), t.said().linesBy(who, p, n, way)
	} else {
		if some = t.beside(q.Item, p, 1, way); len(some) == 0 {
			way = speech.ByTerms
			some = t.beside(q.Item, p, 1, way)
		}
		often = t.beside(q.Item, p, n, way)
	}
	return t.pick(q, a, some, often, way)
}

// phrase is the words of an anchor as they are looked for.
func phrase(a *lang.Anchor) *speech.Phrase { return speech.NewPhrase(a.Words.Value) }

// speakerOf returns whose lines an anchor names.
func (t *Talk) speakerOf(q Ask, a *lang.Anchor) (who string, ok bool) {
	d, ok := q.In.Who(a.Name, names.DeclSubject, names.DeclVoice)
	if !ok {
		return "", false
	}
	if len(t.speaks[d.Name.Text]) == 0 {
		t.noLine(q, d.Name.Text, a.Range())
		return "", false
	}
	return d.Name.Text, true
}

// beside returns those of the lines next above and next below an item that have a
// phrase so often.
func (t *Talk) beside(item int, words *speech.Phrase, often int, way speech.Way) (lines []*Line) {
	above, below := t.nearest(item)
	for _, l := range []*Line{above, below} {
		if len(occurrences(l, words, way)) >= often {
			lines = append(lines, l)
		}
	}
	return lines
}

// pick finds the words of an anchor in the one line that has them, and where a
// number is written, has them so often.
func (t *Talk) pick(q Ask, a *lang.Anchor, some, often []*Line, way speech.Way) (Spotted, bool) {
	switch {
	case len(some) == 0 && (t.besideBad(q.Item) || a.Name != nil && t.lex.Here.Any(speechWord)): // one mistake is told once
	case len(some) == 0:
		q.In.Fail(a.Range(), "word-not-found", t.notFound(q, a), t.nearWord(q, a))
	case len(often) == 0:
		t.notSoOften(q, a, some[0], way)
	case len(often) > 1:
		t.inSeveral(q, a, often, way)
	default:
		hits := occurrences(often[0], phrase(a), way)
		if a.Nth == 0 && len(hits) > 1 {
			t.severalTimes(q, a, len(hits))
			return Spotted{}, false
		}
		return hits[max(a.Nth, 1)-1], true
	}
	return Spotted{}, false
}

// mostNamed is how many lines a message names.
const mostNamed = 3

// notSoOften tells of words that no line has as often as an anchor counts.
func (t *Talk) notSoOften(q Ask, a *lang.Anchor, l *Line, way speech.Way) {
	q.In.Report(lang.Diagnostic{
		Code: "word-not-found", Severity: lang.Error, Range: a.Range(),
		Message: fmt.Sprintf("%q is not %s in one line", a.Words.Value, times(a.Nth)),
		Detail:  fmt.Sprintf("The number counts within one line, and this one has it %s.", times(len(occurrences(l, phrase(a), way)))),
		Related: []lang.Related{{Message: "this line", Range: l.Stmt.Range()}},
	})
}

// severalTimes tells of words that stand several times in their line.
func (t *Talk) severalTimes(q Ask, a *lang.Anchor, hits int) {
	words := fmt.Sprintf("%q", a.Words.Value)
	if a.Name != nil {
		words = lang.WriteName(a.Name.Text) + " " + words
	}
	q.In.Fail(a.Range(), "word-twice", fmt.Sprintf("%q is there %s", a.Words.Value, times(hits)),
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
func (t *Talk) inSeveral(q Ask, a *lang.Anchor, lines []*Line, way speech.Way) {
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
		if t.wide.looks(q.Item) {
			d.Message = fmt.Sprintf("%q is in %s lines", a.Words.Value, many)
		}
	}
	var said, advice []string
	for _, l := range lines {
		said = append(said, fmt.Sprintf("%q", names.ValueOf(l.Stmt.Words)))
		if text, ok := t.sayWhich(a, l, way); ok {
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
	q.In.Report(d)
}

// sayWhich writes the anchor so that it means the words in that line alone: with
// whose line it is, with as many of the words behind them as no other line of
// theirs has, and with a number where the line has them several times. ok is false
// where the line says nothing else than another.
func (t *Talk) sayWhich(a *lang.Anchor, l *Line, way speech.Way) (text string, ok bool) {
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
		if found := t.said().linesBy(l.Who, p, 1, way); t.said().wayOf(l.Who, p) != way || len(found) != 1 || found[0] != l {
			continue
		}
		text = fmt.Sprintf("%s %q", lang.WriteName(l.Who), text)
		here := occurrences(l, p, way)
		if n := slices.IndexFunc(here, func(h Spotted) bool { return h.From == hit.From }); len(here) > 1 {
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

func (t *Talk) notFound(q Ask, a *lang.Anchor) string {
	switch {
	case a.Name != nil:
		return fmt.Sprintf("no line of %s has %q", a.Name.Text, a.Words.Value)
	case t.wide.looks(q.Item):
		return fmt.Sprintf("no line has %q", a.Words.Value)
	}
	return fmt.Sprintf("neither the line above nor the one below has %q", a.Words.Value)
}

// nearWord offers a near miss from the lines looked in, or says in which
// speaker's lines the words do stand.
func (t *Talk) nearWord(q Ask, a *lang.Anchor) string {
	p, way := phrase(a), speech.ByWords
	if len(t.said().all(p, way)) == 0 {
		way = speech.ByTerms
	}
	said := slices.DeleteFunc(first(t.said().all(p, way), mostTried), func(h Spotted) bool { return h.Line.Who == "" })
	for _, h := range said {
		if text, ok := t.sayWhich(a, h.Line, way); ok {
			return fmt.Sprintf("It is in a line of %s: write %s.", h.Line.Who, text)
		}
	}
	if len(said) > 0 {
		return fmt.Sprintf("It is in several lines of %s.", said[0].Line.Who)
	}
	var among []string
	above, below := t.nearest(q.Item)
	beside := []*Line{above, below}
	if t.wide.looks(q.Item) {
		beside, above, below = first(t.InOrder, mostTried), nil, nil
	}
	for _, l := range beside {
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
	case len(t.InOrder) > 0 && below == nil:
		return fmt.Sprintf("The first line is: %q.", names.ValueOf(t.InOrder[0].Stmt.Words))
	case below != nil:
		return fmt.Sprintf("The line below is: %q.", names.ValueOf(below.Stmt.Words))
	}
	return "There is no line."
}
