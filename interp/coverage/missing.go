// Words that no set-up holds, and how many of their words each speaker has.

package coverage

import (
	"slices"

	"pullscore/interp/plan"
)

// A Gap is a run of words of one line that no set-up holds, or that one holds alone.
type Gap struct {
	Line  int    `json:"line"` // its number
	First int    `json:"word"` // the number of the first word in the line
	Last  int    `json:"to_word"`
	Who   string `json:"who"`
	Text  string `json:"text"`
	Shot  string `json:"shot,omitempty"` // the one that holds them; empty: none does

	// In the time of a scene that is staged; else none.
	Start plan.Number `json:"start_s,omitzero"`
	End   plan.Number `json:"end_s,omitzero"`
}

// Own says on how many of their own words a speaker is sharp, in any set-up.
type Own struct {
	Who   string `json:"who"`
	Words int    `json:"words"`
	Held  int    `json:"held"`
}

// gaps returns the words that no set-up holds, and those that one holds while others have
// them too. Nobody can hold a voice, and nobody has to hold a line that is only heard.
func gaps(sc *Scene) (missing, single []Gap) {
	missing, single = []Gap{}, []Gap{}
	for _, l := range sc.Lines {
		if !l.Asks() {
			continue
		}
		missing = append(missing, stretches(l, func(w *Word) (string, bool) { return "", !w.Held() })...)
		single = append(single, stretches(l, aloneIn)...)
	}
	return missing, single
}

// aloneIn returns the set-up that holds a word alone; ok is false where none or several
// do, or where no other has the word.
func aloneIn(w *Word) (shot string, ok bool) {
	held := 0
	for i := range w.Cells {
		if w.Cells[i].Held {
			held++
			shot = w.Cells[i].Shot
		}
	}
	return shot, held == 1 && len(w.Cells) > 1
}

// stretches returns the longest runs of words of which that holds, with the same set-up.
func stretches(l *Line, that func(*Word) (string, bool)) (list []Gap) {
	open := false
	for i := range l.Words {
		shot, ok := that(&l.Words[i])
		switch {
		case !ok:
			open = false
		case open && list[len(list)-1].Shot == shot:
			list[len(list)-1].Last = i + 1
		default:
			open = true
			list = append(list, Gap{Line: l.Number, First: i + 1, Last: i + 1, Who: l.Who, Shot: shot})
		}
	}
	for i := range list {
		words := l.Words[list[i].First-1 : list[i].Last]
		list[i].Text, list[i].Start, list[i].End = textOf(words), words[0].Start, words[len(words)-1].End
	}
	return list
}

// own counts the words of each speaker, in the order in which they first speak.
func own(lines []*Line) []Own {
	list := []Own{}
	for _, l := range lines {
		if !l.Asks() {
			continue
		}
		i := slices.IndexFunc(list, func(o Own) bool { return o.Who == l.Who })
		if i < 0 {
			i = len(list)
			list = append(list, Own{Who: l.Who})
		}
		list[i].Words += len(l.Words)
		for k := range l.Words {
			if l.Words[k].Held() {
				list[i].Held++
			}
		}
	}
	return list
}
