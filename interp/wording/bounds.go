// Where sentences and their parts end, and whether a hit fills one of them: a
// short line that is only a part of what somebody else says is no hit.

package wording

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/speech"
)

// bits is a set of word places, a bit for each.
type bits []uint64

func (b *bits) add(i int) {
	for len(*b) <= i/64 {
		*b = append(*b, 0)
	}
	(*b)[i/64] |= 1 << (i % 64)
}

func (b bits) has(i int) bool { return i/64 < len(b) && b[i/64]>>(i%64)&1 == 1 }

// Signs that end a sentence, and signs that end a part of one.
const (
	sentenceEnds = ".!?\u2026\u3002\uff01\uff1f\n"
	clauseEnds   = ",;:\u2013\u2014\u3001\uff0c"
)

// endsSentence reports whether what stands between two words ends a sentence:
// dots before a small letter are only a pause. A new line does too.
func endsSentence(gap, next string) bool {
	if !strings.ContainsAny(gap, sentenceEnds) {
		return false
	}
	if strings.Contains(gap, "..") || strings.Contains(gap, "\u2026") {
		r, _ := utf8.DecodeRuneInString(next)
		return !unicode.IsLower(r) || strings.ContainsAny(gap, "!?\n")
	}
	return true
}

func endsClause(gap string) bool {
	return strings.ContainsAny(gap, clauseEnds) || strings.Contains(gap, " -") || strings.Contains(gap, "--")
}

// mark notes where sentences and their parts begin in a text whose first word
// is the next of the stream.
func (s *Stream) mark(text string, tokens []speech.Token) {
	first := len(s.words)
	s.sentences.add(first)
	for i := 1; i < len(tokens); i++ {
		switch gap := text[tokens[i-1].End:tokens[i].Start]; {
		case endsSentence(gap, tokens[i].Text):
			s.sentences.add(first + i)
		case endsClause(gap):
			s.clauses.add(first + i)
		}
	}
	s.sentences.add(first + len(tokens))
}

// How long a line must be to count as found where it is not all that is said.
const (
	few  = 3 // words; fewer are in many sentences by chance
	many = 6 // words; as many are hardly ever the same by chance
)

// A wanted is a line that is looked for, in its surroundings.
type wanted struct {
	words         []int32
	before, after []int32 // the lines beside it; nil: none
	from, to      int     // the part of the stream to look in
	by            int32   // who says it; 0: that does not count
	begins        *bits   // where its sentences begin; nil: that does not count
}

// next is how many words of the line beside it tell that it goes on there.
const next = 2

// beginsAt reports whether something said begins at a word: a sentence, or
// the line where the one before it ends.
func (s *Stream) beginsAt(w wanted, at int) bool {
	if at == w.from || s.sentences.has(at) {
		return true
	}
	tail := w.before[max(0, len(w.before)-next):]
	return len(tail) > 0 && s.stands(tail, at-len(tail), w)
}

// endsAt reports whether something said ends before a word.
func (s *Stream) endsAt(w wanted, at int) bool {
	if at == w.to || s.sentences.has(at) {
		return true
	}
	head := w.after[:min(len(w.after), next)]
	return len(head) > 0 && s.stands(head, at, w)
}

// whole reports whether a hit is all that is said there.
func (s *Stream) whole(w wanted, h Hit) bool { return s.beginsAt(w, h.Start) && s.endsAt(w, h.End) }

// fits reports whether a hit may count: a short line must be all that is said,
// a longer one part of a sentence with signs around it, or the half of it.
func (s *Stream) fits(w wanted, h Hit) bool {
	begins, ends := s.beginsAt(w, h.Start), s.endsAt(w, h.End)
	switch {
	case begins && ends || len(w.words) >= many:
		return true
	case len(w.words) < few:
		return false
	case (begins || s.clauses.has(h.Start)) && (ends || s.clauses.has(h.End)):
		return true
	}
	rest := h.End - h.Start // as many words may be around the hit
	for at := h.Start; !s.beginsAt(w, at) && rest >= 0; at-- {
		rest--
	}
	for at := h.End; !s.endsAt(w, at) && rest >= 0; at++ {
		rest--
	}
	return rest >= 0
}
