// Lines: one that somebody says.

package spoken

import (
	"pullscore/interp/cut"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/lang"
)

// A Line is a spoken line with its words.
type Line struct {
	Item   int
	Stmt   *lang.Speech
	Who    string // empty where nobody knows
	Tokens []speech.Token
	Start  float64 // seconds from the shot's start
	End    float64
	Timed  bool           // the line has its time
	Words  []speech.Timed // spread once they are asked for
	Hangs  map[int]bool   // the words that a move of the focus hangs on
	Heard  *cut.Heard     // as the cut has it; nil where it does not

	// Of a line that the cut has: where the plan's clock stands before it, and when the
	// line would begin by that.
	Stood, Planned float64

	Listed int // its index in the plan's lines

	said *speech.Phrase // once words are looked for
}

// Spread returns the words of a line over its time; none before it has one.
func (l *Line) Spread() []speech.Timed {
	if l.Words == nil && l.Timed {
		l.Words = speech.Spread(l.Tokens, l.Start, l.End)
	}
	return l.Words
}

// Drawn returns the words of a line with the punctuation that stands about
// them.
func (l *Line) Drawn() []plan.Word {
	spread := l.Spread()
	words := make([]plan.Word, len(spread))
	for j, w := range speech.WrittenOf(names.ValueOf(l.Stmt.Words), spread) {
		words[j] = plan.Word{Text: w.Text, Joined: w.Joined, Start: spread[j].Start, End: spread[j].End, Hangs: l.Hangs[j]}
	}
	return words
}

// phrase returns the words of a line, as phrases are looked for in them.
func (l *Line) phrase() *speech.Phrase {
	if l.said == nil {
		l.said = speech.PhraseOf(names.ValueOf(l.Stmt.Words), l.Tokens)
	}
	return l.said
}

// occurrences finds a phrase in a line; nil is no line.
func occurrences(l *Line, phrase *speech.Phrase, way speech.Way) (hits []Spotted) {
	if l == nil {
		return nil
	}
	for _, at := range l.phrase().Find(phrase, way) {
		hits = append(hits, Spotted{l, at})
	}
	return hits
}
