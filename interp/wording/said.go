// What is said in subtitles: words in terms, in sentences, by people.

package wording

import (
	"cmp"
	"slices"
	"unicode"
	"unicode/utf8"

	"pullscore/interp/speech"
)

// A Voice is where somebody goes on in a text that is said.
type Voice struct {
	At int // byte of the text in normal form C
	By int32
}

// A voice is who says the words from one on: numbers that Say was given, 0 for
// nobody knows whom.
type voice struct{ from, by int32 }

// Say adds what is said in a subtitle, in terms; the one who spoke last goes on where no
// voice begins. false: there are more than MostWords.
func (s *Stream) Say(text string, voices []Voice) bool {
	words, nfc := s.folder.Words(s.latest[:0], text)
	s.latest = words
	first, begins := len(s.words), true
	for i := range words {
		w := &words[i]
		if i > 0 {
			switch gap := nfc[words[i-1].End:w.Start]; {
			case gap == " " || gap == "\n": // as most are
			case endsSaid(gap, nfc[w.Start:w.End]):
				begins = true
			case endsClause(gap):
				s.clauses.add(len(s.words))
			}
		}
		for len(voices) > 0 && voices[0].At <= w.Start {
			s.speaks(voices[0].By)
			voices, begins = voices[1:], true
		}
		if begins && len(w.Terms) > 0 {
			s.begin(first)
			begins = false
		}
		if len(s.words)+len(w.Terms) > MostWords {
			return false
		}
		for _, t := range w.Terms {
			s.add(t.Number)
		}
	}
	for _, v := range voices {
		s.speaks(v.By)
	}
	if len(s.words) > first {
		s.sentences.add(len(s.words))
	}
	return true
}

// begin notes that a sentence begins at the next word; first is the first word of the
// subtitle.
func (s *Stream) begin(first int) {
	s.sentences.add(len(s.words))
	if len(s.words) > first {
		s.turns.add(len(s.words))
	}
}

// speaks notes who says the words from the next on.
func (s *Stream) speaks(by int32) {
	v := voice{int32(len(s.words)), by}
	switch n := len(s.voices); {
	case n > 0 && s.voices[n-1].from == v.from:
		s.voices[n-1] = v
	case n > 0 && s.voices[n-1].by == by: // goes on, and one says it again
		if by == 0 {
			return
		}
		fallthrough
	default:
		s.voices = append(s.voices, v)
	}
}

// By returns who says a word, 0 where nobody knows; begins tells that the text says
// it at this word.
func (s *Stream) By(word int) (by int32, begins bool) {
	i, found := slices.BinarySearchFunc(s.voices, int32(word), func(v voice, word int32) int { return cmp.Compare(v.from, word) })
	if !found {
		i--
	}
	if i < 0 {
		return 0, false
	}
	return s.voices[i].by, found
}

// saidBy reports whether the speaker of a line says a word.
func (s *Stream) saidBy(w wanted, word int) bool {
	if w.by <= 0 {
		return false
	}
	by, _ := s.By(word)
	return by == w.by
}

// endsSaid is endsSentence where a new line is only the end of a row.
func endsSaid(gap, next string) bool {
	ends, sure, pause := false, false, false
	for i, r := range gap {
		switch r {
		case '.':
			ends, pause = true, pause || i > 0 && gap[i-1] == '.'
		case '\u2026':
			ends, pause = true, true
		case '!', '?':
			ends, sure = true, true
		case '\u3002', '\uff01', '\uff1f':
			ends = true
		}
	}
	if !pause || sure {
		return ends
	}
	r, _ := utf8.DecodeRuneInString(next)
	return !unicode.IsLower(r)
}

// A Line is one of a plan that is looked for in what is said.
type Line struct {
	Text  string
	Terms speech.Folded
	By    int32 // who says it, as for Say
}

// begins returns the terms of the line at which its sentences begin.
func (l *Line) begins() *bits {
	var f speech.Folder
	words, nfc := f.Words(nil, l.Text)
	var b bits
	n := 0
	for i := range words {
		if i > 0 && endsSentence(nfc[words[i-1].End:words[i].Start], nfc[words[i].Start:words[i].End]) {
			b.add(n)
		}
		n += len(words[i].Terms)
	}
	return &b
}

// PlaceSaid finds lines as Place does, in what is said. A hit begins and ends with
// words of its line. It then takes words beside it that no line has, as many as the
// line has others there, but not over the beginning or the end of something said.
func (s *Stream) PlaceSaid(lines []Line, from, to int) []Place {
	p := &placing{stream: s, places: make([]Place, len(lines)), lines: make([]wanted, len(lines))}
	for i := range lines {
		l := &lines[i]
		p.lines[i] = wanted{words: s.vocabulary.numbers(l.Terms), from: from, to: to, by: l.By, begins: l.begins()}
	}
	p.place()
	p.widen()
	return p.places
}

// narrow cuts a hit to words of its line.
func (p *placing) narrow(w wanted, h Hit) Hit {
	if w.begins == nil || h.Likeness == 1 || !h.Found() {
		return h
	}
	if pair, ok := p.stream.pair(w.words[:min(len(w.words), longest)], h); ok {
		h.Start, h.End = pair.first, pair.last+1
	}
	return h
}

// widen gives hits the free words beside them that stand for others of their lines.
func (p *placing) widen() {
	s := p.stream
	for i := range p.places {
		at, w := &p.places[i], p.lines[i]
		if !at.Found() || at.Likeness == 1 {
			continue
		}
		pair, ok := s.pair(w.words[:min(len(w.words), longest)], at.Hit)
		if !ok {
			continue
		}
		was := at.Hit
		for ; pair.before > 0 && at.Start > w.from && !s.sentences.has(at.Start) && !p.taken.overlaps(at.Start-1, at.Start); pair.before-- {
			at.Start--
		}
		for ; pair.after > 0 && at.End < w.to && !s.sentences.has(at.End) && !p.taken.overlaps(at.End, at.End+1); pair.after-- {
			at.End++
		}
		p.taken.grow(was, at.Hit)
	}
}

// grow gives a stretch that is taken its new ends.
func (t taken) grow(was, now Hit) {
	if i := t.search(was.Start); i < len(t) && t[i].Start == was.Start {
		t[i] = now
	}
}
