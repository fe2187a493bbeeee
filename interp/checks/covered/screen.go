// not-on-screen: the cut shows a set-up that does not hold who speaks, and another does.

package covered

import (
	"fmt"
	"slices"

	"pullscore/interp/coverage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// onScreen tells of the words that the cut shows in the wrong set-up: once of a run that
// the cut shows in one set-up and that another holds from its start to its end.
func (f *finder) onScreen() {
	if len(f.cuts) == 0 {
		return
	}
	for _, l := range f.Lines {
		if !l.Asks() {
			continue
		}
		for from := 0; from < len(l.Words); {
			on, in := f.elsewhere(&l.Words[from])
			to := from + 1
			for to < len(l.Words) && on != nil {
				next, others := f.elsewhere(&l.Words[to])
				both := common(in, others)
				if next != on || len(both) == 0 {
					break
				}
				in = both
				to++
			}
			if on != nil {
				f.notOnScreen(l, l.Words[from:to], on, in)
			}
			from = to
		}
	}
}

// elsewhere returns the cut that is on the screen as a word begins, and which set-ups hold
// the word, where the cut shows it in none of them; a nil cut where all is well.
func (f *finder) elsewhere(w *coverage.Word) (on *cut, in []string) {
	for i := range w.Cells {
		c := &w.Cells[i]
		switch {
		case c.Held && c.Shown():
			return nil, nil
		case c.Held:
			in = append(in, c.Shot)
		}
	}
	if len(in) == 0 {
		return nil, nil
	}
	return shownAt(f.cuts, float64(w.Start)), in
}

// common returns what both lists have, in the order of the first.
func common(a, b []string) (list []string) {
	for _, s := range a {
		if slices.Contains(b, s) {
			list = append(list, s)
		}
	}
	return list
}

func (f *finder) notOnScreen(l *coverage.Line, words []coverage.Word, on *cut, in []string) {
	d := f.tell(rule.NotOnScreen, lang.Note, float64(words[0].Start),
		fmt.Sprintf("on “%s” the cut is on %s, and %s, who speaks, is sharp in %s", textOf(words), on.To, l.Who, joinedWith(" and ", in)), "",
		span(words)...)
	f.cutToTheWord(d, words, in)
}

// cutToTheWord offers to move the next cut to the first of some words, where it goes to a
// set-up that holds them.
func (f *finder) cutToTheWord(d *lang.Diagnostic, words []coverage.Word, in []string) {
	start := float64(words[0].Start)
	for i := range f.cuts {
		c := &f.cuts[i]
		if float64(c.T) <= start {
			continue
		}
		if !c.FromEdit && slices.Contains(in, c.To) && f.calm(i, start) {
			d.Cures = append(d.Cures, f.cutAt(c, start))
		}
		return
	}
}
