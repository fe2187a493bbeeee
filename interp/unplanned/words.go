// What is said, sentence by sentence.

package unplanned

import (
	"strings"
	"unicode"

	"pullscore/interp/speech"
	"pullscore/lang"
	"pullscore/lang/captions"
	"pullscore/lang/lines"
)

// pause is how long nobody speaks where a sentence is over without a sign that says so,
// in seconds. Our own choice.
const pause = 1.0

// mostWords is how many words a sentence may have and still go on in the next subtitle:
// some subtitles have no signs at all. Our own choice.
const mostWords = 40

// A Word is a word that is said, in seconds from the start of the picture.
type Word struct {
	Text       string
	Start, End float64
}

// A Sentence is what one speaker says up to a sign that ends it, or a pause.
type Sentence struct {
	Who string // as the subtitles call them; "" where they do not say it
	// Concluded tells that a dash without a name says that somebody else speaks than
	// before: Who is then the other of two, or "".
	Concluded  bool
	Text       string
	Start, End float64 // seconds from the start of the picture
	Words      []Word
}

// Sentences returns what subtitles say, in the order of time. Words are spread over
// their subtitle by their syllables, as those of a line of a plan are.
func Sentences(t *lines.Text) (list []Sentence, diags []lang.Diagnostic) {
	cues, diags := captions.Read(t)
	s := &sentences{talk: listen(cues)}
	s.small = !strings.ContainsFunc(t.Content, unicode.IsUpper)
	for i := range s.shown {
		s.subtitle(&s.shown[i])
	}
	s.write()
	return s.list, diags
}

// sentences are being put together from subtitles.
type sentences struct {
	*talk
	now   speaker
	open  bool // the last sentence goes on
	small bool // no letter of the file is a capital
	list  []Sentence
	text  []byte // of the last of them
}

// write gives the last sentence its text.
func (s *sentences) write() {
	if n := len(s.list); n > 0 {
		s.list[n-1].Text = strings.Join(strings.Fields(string(s.text)), " ")
	}
	s.text = s.text[:0]
}

// subtitle adds what is said in a subtitle.
func (s *sentences) subtitle(c *shown) {
	next, end := 0, 0 // of the parts; behind the last word and its signs
	for _, w := range speech.Spread(speech.Split(c.text), c.start, c.end) {
		fresh := false
		for ; next < len(c.parts) && c.parts[next].at <= w.Token.Start; next++ {
			var another bool
			s.now, another = s.talk.next(s.now, c.parts[next], c.text[w.Token.Start:], s.open)
			if fresh = fresh || another; another {
				s.open, end = false, max(end, c.parts[next].at)
			}
		}
		word := c.text[w.Token.Start:w.Token.End]
		before, behind := c.text[end:w.Token.Start], signs(c.text[w.Token.End:])
		end = w.Token.End + len(behind)
		if fresh || !s.goesOn(word, w.Start) {
			s.write()
			s.list = append(s.list, Sentence{Who: s.now.who, Concluded: s.now.concluded, Start: w.Start})
			before = strings.TrimLeft(before, notAtStart)
		}
		now := &s.list[len(s.list)-1]
		now.Words = append(now.Words, Word{word, w.Start, w.End})
		s.text = append(append(append(s.text, before...), word...), behind...)
		now.End = w.End
		s.open = !speech.Ends(word, behind)
	}
	s.text = append(s.text, ' ')
	if n := len(s.list); n > 0 && len(s.list[n-1].Words) > mostWords {
		s.open = false
	}
}

// goesOn reports whether a word belongs to the last sentence. What goes on in small
// letters has not ended, whatever sign stands before it, unless the file has no others.
func (s *sentences) goesOn(word string, start float64) bool {
	n := len(s.list)
	if n == 0 || start-s.list[n-1].End > pause {
		return false
	}
	return s.open || !s.small && speech.GoesOn(word) && len(s.list[n-1].Words) <= mostWords
}

// notAtStart are signs that are left out before the first word of a sentence.
const notAtStart = " \t\n\u00a0-‐–—.…,;:"

// signs returns the signs that a text begins with, up to a blank or a letter.
func signs(text string) string {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune(`.,;:?!…"'”’»)。、？！`, r) })
	if end < 0 {
		return text
	}
	return text[:end]
}
