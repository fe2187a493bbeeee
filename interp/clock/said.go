// Words of all lines: where a phrase stands in a shot.

package clock

import (
	"slices"
	"strings"

	"pullscore/interp/speech"
)

// A spotted is a place of words: the token of a line that they begin with.
type spotted struct {
	line  *Line
	token int
}

// said finds phrases in all lines of a shot: a shot may have thousands of lines,
// and as many moments that hang on words, so they are not gone through for each.
// A phrase is looked for where its rarest word stands, once.
type said struct {
	words   map[string][]spotted // by each word, in the order of the lines
	phrases map[string][]spotted // that have been looked for
	lines   map[phraseBy][]*Line // likewise, of one speaker
}

// A phraseBy is a phrase that lines of one speaker have so often.
type phraseBy struct {
	phrase, who string
	often       int
}

// newSaid notes where every word of the lines stands.
func newSaid(lines []*Line) *said {
	s := &said{words: map[string][]spotted{}, phrases: map[string][]spotted{}, lines: map[phraseBy][]*Line{}}
	for _, l := range lines {
		for i, word := range l.fold() {
			s.words[word] = append(s.words[word], spotted{l, i})
		}
	}
	return s
}

// all finds a phrase in all lines.
func (s *said) all(phrase speech.Folded) []spotted {
	key := strings.Join(phrase, " ")
	hits, ok := s.phrases[key]
	if !ok {
		hits = s.find(phrase)
		s.phrases[key] = hits
	}
	return hits
}

// linesBy finds the lines of one speaker that have a phrase so often.
func (s *said) linesBy(who string, phrase speech.Folded, often int) []*Line {
	key := phraseBy{phrase: strings.Join(phrase, " "), who: who, often: often}
	lines, ok := s.lines[key]
	if ok {
		return lines
	}
	hits := s.all(phrase)
	for i := range hits {
		l, last := hits[i].line, i+often-1
		if l.Who == who && last < len(hits) && hits[last].line == l && (len(lines) == 0 || lines[len(lines)-1] != l) {
			lines = append(lines, l)
		}
	}
	s.lines[key] = lines
	return lines
}

// find looks at every place of the rarest word of a phrase.
func (s *said) find(phrase speech.Folded) (hits []spotted) {
	if len(phrase) == 0 {
		return nil
	}
	rarest := 0
	for i, word := range phrase {
		if len(s.words[word]) < len(s.words[phrase[rarest]]) {
			rarest = i
		}
	}
	for _, at := range s.words[phrase[rarest]] {
		from := at.token - rarest
		line := at.line.fold()
		if from >= 0 && from+len(phrase) <= len(line) && slices.Equal(line[from:from+len(phrase)], phrase) {
			hits = append(hits, spotted{at.line, from})
		}
	}
	return hits
}
