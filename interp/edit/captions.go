// Subtitles as a stream of words in time.

package edit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang"
	"pullscore/lang/captions"
	"pullscore/lang/lines"
)

// Subtitles are the words that are said in a cut, in the order of time. Of the
// words only their numbers are kept, in which lines are looked for, and the
// subtitles that they come from.
type Subtitles struct {
	*wording.Stream
	cues []cue

	// latest is the subtitle whose words were wanted last, from 1: lines that
	// follow each other are often in one.
	latest int
	words  []Word
}

// A cue is a subtitle in which something is said.
type cue struct {
	text  string
	start int64 // ms
	long  int32 // ms
	first int32 // its first word
}

// A Word is a word of the subtitles.
type Word struct {
	Text       string  // with the punctuation behind it
	Folded     string  // as it is compared
	Start, End float64 // seconds from the start of the picture
}

// captions reads subtitles in which words of a vocabulary are looked for.
func (c *Cut) captions(t *lines.Text, v wording.Vocabulary) []lang.Diagnostic {
	var faults lines.Faults
	s := &Subtitles{Stream: wording.New(v)}
	c.Said = s
	sorted := true
	for cap := range captions.Cues(t, &faults) {
		now := cue{start: cap.Start, long: int32(min(cap.End-cap.Start, math.MaxInt32)), text: cap.Text}
		sorted = sorted && (len(s.cues) == 0 || now.start >= s.cues[len(s.cues)-1].start)
		if !s.add(now) {
			faults.Add(lang.Diagnostic{
				Code: "too-large", Severity: lang.Error, Range: cap.Range,
				Message: fmt.Sprintf("from here on the subtitles have more than %d words", wording.MostWords),
				Detail:  "The rest is left out.",
			})
			break
		}
	}
	if !sorted {
		s.sort(v)
	}
	return faults.List()
}

// add adds a subtitle, if anything is said in it; false: there are too many
// words.
func (s *Subtitles) add(c cue) bool {
	c.first = int32(s.Len())
	if !s.Append(spoken(c.text)) {
		return false
	}
	if s.Len() > int(c.first) {
		s.cues = append(s.cues, c)
	}
	return true
}

// sort puts the subtitles into the order of time.
func (s *Subtitles) sort(v wording.Vocabulary) {
	list := s.cues
	slices.SortStableFunc(list, func(a, b cue) int { return cmp.Compare(a.start, b.start) })
	s.Stream, s.cues = wording.New(v), list[:0]
	for _, c := range list {
		s.add(c) // as many as before
	}
}

// Words returns the words from one up to another. The words of a subtitle are
// spread over its time by their syllables, as those of a line are.
func (s *Subtitles) Words(from, to int) (words []Word) {
	i, found := slices.BinarySearchFunc(s.cues, from, func(c cue, word int) int { return cmp.Compare(int(c.first), word) })
	if !found {
		i--
	}
	for ; i < len(s.cues) && int(s.cues[i].first) < to; i++ {
		list, first := s.of(i), int(s.cues[i].first)
		words = append(words, list[max(0, from-first):min(len(list), to-first)]...)
	}
	return words
}

// Between returns the words that are said between two times, in seconds from
// the start of the picture.
func (s *Subtitles) Between(start, end float64) (from, to int) {
	from = s.wordAt(start)
	return from, max(from, s.wordAt(end))
}

// wordAt returns the first word that begins at a time or later.
func (s *Subtitles) wordAt(t float64) int {
	next, _ := slices.BinarySearchFunc(s.cues, t, func(c cue, t float64) int {
		if seconds(c.start) < t {
			return -1
		}
		return 1
	})
	if next == 0 {
		return 0
	}
	words := s.of(next - 1) // some of them may be later
	i := slices.IndexFunc(words, func(w Word) bool { return w.Start >= t })
	if i < 0 {
		i = len(words)
	}
	return int(s.cues[next-1].first) + i
}

// of returns the words of a subtitle.
func (s *Subtitles) of(i int) []Word {
	if s.latest != i+1 {
		s.latest, s.words = i+1, s.cues[i].words()
	}
	return s.words
}

func seconds(ms int64) float64 { return float64(ms) / 1000 }

func (c cue) words() []Word {
	text := spoken(c.text)
	tokens := speech.Split(text)
	folded := speech.Fold(tokens)
	words := make([]Word, 0, len(tokens))
	for i, w := range speech.Spread(tokens, seconds(c.start), seconds(c.start+int64(c.long))) {
		end := len(text)
		if i+1 < len(tokens) {
			end = tokens[i+1].Start
		}
		words = append(words, Word{Text: text[w.Token.Start:end], Folded: folded[i], Start: w.Start, End: w.End})
	}
	return words
}

// spoken returns what is said in a subtitle: without sounds in square brackets
// and without the speaker's name before a colon, which subtitles for the hard
// of hearing have. Where somebody else goes on, after a name or a dash, there is
// a new line (common practice, no source).
func spoken(text string) string {
	var said strings.Builder
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(withoutSounds(line))
		another := strings.IndexAny(line, "-\u2013\u2014\u2010") == 0
		if name, rest, ok := strings.Cut(line, ":"); ok && isName(name) {
			line, another = rest, true
		}
		if line = strings.Join(strings.Fields(line), " "); line == "" {
			continue
		}
		switch {
		case said.Len() > 0 && another:
			said.WriteByte('\n')
		case said.Len() > 0:
			said.WriteByte(' ')
		}
		said.WriteString(line)
	}
	return said.String()
}

// withoutSounds takes out what stands in square brackets.
func withoutSounds(line string) string {
	if strings.IndexByte(line, '[') < 0 {
		return line
	}
	var said strings.Builder
	for {
		before, rest, opened := strings.Cut(line, "[")
		_, after, closed := strings.Cut(rest, "]")
		if !opened || !closed {
			said.WriteString(line)
			return said.String()
		}
		said.WriteString(before + " ")
		line = after
	}
}

// isName reports whether a text is a speaker's name: a few words, all in upper
// case.
func isName(s string) bool {
	letters := 0
	for _, r := range s {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			letters++
		}
	}
	return letters > 1 && len(strings.Fields(s)) <= 3
}
