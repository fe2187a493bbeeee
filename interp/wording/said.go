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

// A voice is who says the words from one on: numbers that Listen was given, 0 for
// nobody knows whom.
type voice struct{ from, by int32 }

// A Talk is what is said in subtitles that follow each other, in numbers, apart from the
// stream that it is for: so several can be made at once.
type Talk struct {
	words     []int32
	marks     []mark
	voices    []voice // in order, as they were told
	subtitles []subtitle
}

// A mark says what begins at a word, or that the text ends there.
type mark struct {
	at   int32
	kind markKind
}

type markKind uint8

const (
	sentence markKind = iota
	clause
	turn
)

// A subtitle is how much a talk has of each kind at its end.
type subtitle struct{ words, marks, voices int32 }

// Reset empties a talk and keeps its memory.
func (t *Talk) Reset() {
	t.words, t.marks, t.voices, t.subtitles = t.words[:0], t.marks[:0], t.voices[:0], t.subtitles[:0]
}

func (t *Talk) mark(kind markKind) { t.marks = append(t.marks, mark{int32(len(t.words)), kind}) }

// A Listener makes talks of what is said.
type Listener struct {
	folder speech.Folder
	latest []speech.Word // the last that were said; kept for their memory
}

// Listener returns what numbers words as the stream does.
func (s *Stream) Listener() *Listener {
	if v := s.vocabulary; s.growing == nil {
		return &Listener{folder: speech.Folder{Number: func(t string) int32 { return v[t] }}}
	}
	return &Listener{folder: speech.Folder{Number: s.number}}
}

// Listen adds what is said in a subtitle to a talk, in terms; the one who spoke last goes
// on where no voice begins.
func (l *Listener) Listen(to *Talk, text string, voices []Voice) {
	words, nfc := l.folder.Words(l.latest[:0], text)
	l.latest = words
	first, begins := len(to.words), true
	for i := range words {
		w := &words[i]
		if i > 0 {
			switch gap := nfc[words[i-1].End:w.Start]; {
			case gap == " " || gap == "\n": // as most are
			case endsSaid(gap, nfc[w.Start:w.End]):
				begins = true
			case endsClause(gap):
				to.mark(clause)
			}
		}
		for len(voices) > 0 && voices[0].At <= w.Start {
			to.speaks(voices[0].By)
			voices, begins = voices[1:], true
		}
		if begins && len(w.Terms) > 0 {
			to.mark(sentence)
			if len(to.words) > first {
				to.mark(turn)
			}
			begins = false
		}
		for _, t := range w.Terms {
			to.words = append(to.words, t.Number)
		}
	}
	for _, v := range voices {
		to.speaks(v.By)
	}
	if len(to.words) > first {
		to.mark(sentence)
	}
	to.subtitles = append(to.subtitles, subtitle{int32(len(to.words)), int32(len(to.marks)), int32(len(to.voices))})
}

func (t *Talk) speaks(by int32) { t.voices = append(t.voices, voice{int32(len(t.words)), by}) }

// Take adds a talk to the stream, and returns how many words the stream has after each
// subtitle. Where one would make them more than MostWords, it and all others are left
// out, and ok is false.
func (s *Stream) Take(t *Talk) (ends []int, ok bool) {
	from := int32(len(s.words))
	var done subtitle
	for _, end := range t.subtitles {
		if int(from+end.words) > MostWords {
			return ends, false
		}
		for _, n := range t.words[done.words:end.words] {
			s.add(n)
		}
		for _, m := range t.marks[done.marks:end.marks] {
			switch at := int(from + m.at); m.kind {
			case sentence:
				s.sentences.add(at)
			case clause:
				s.clauses.add(at)
			case turn:
				s.turns.add(at)
			}
		}
		for _, v := range t.voices[done.voices:end.voices] {
			s.speaks(voice{from + v.from, v.by})
		}
		done = end
		ends = append(ends, len(s.words))
	}
	return ends, true
}

// speaks notes who says the words from one on that is none before the last noted.
func (s *Stream) speaks(v voice) {
	switch n := len(s.voices); {
	case n > 0 && s.voices[n-1].from == v.from:
		s.voices[n-1] = v
	case n > 0 && s.voices[n-1].by == v.by: // goes on, and one says it again
		if v.by == 0 {
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
	By    int32 // who says it, as for Listen
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
