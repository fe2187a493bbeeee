// Words of all lines: where a phrase stands in a shot.

package clock

import (
	"cmp"
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
	phrases map[phraseOf][]spotted
}

// A phraseOf is a phrase in the lines of one speaker, or in all lines.
type phraseOf struct {
	phrase string
	who    string
	all    bool
}

// newSaid notes where every word of the lines stands.
func newSaid(lines []*Line) *said {
	s := &said{words: map[string][]spotted{}, phrases: map[phraseOf][]spotted{}}
	for _, l := range lines {
		for i, word := range l.fold() {
			s.words[word] = append(s.words[word], spotted{l, i})
		}
	}
	return s
}

// all finds a phrase in all lines.
func (s *said) all(phrase speech.Folded) []spotted {
	key := phraseOf{phrase: strings.Join(phrase, " "), all: true}
	hits, ok := s.phrases[key]
	if !ok {
		hits = s.find(phrase)
		s.phrases[key] = hits
	}
	return hits
}

// by finds a phrase in the lines of one speaker.
func (s *said) by(who string, phrase speech.Folded) []spotted {
	key := phraseOf{phrase: strings.Join(phrase, " "), who: who}
	hits, ok := s.phrases[key]
	if !ok {
		for _, h := range s.all(phrase) {
			if h.line.Who == who {
				hits = append(hits, h)
			}
		}
		s.phrases[key] = hits
	}
	return hits
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

// before returns how many of the places, which are in the order of the lines,
// stand in lines above an item.
func before(hits []spotted, item int) int {
	n, _ := slices.BinarySearchFunc(hits, item, func(h spotted, item int) int { return cmp.Compare(h.line.Item, item) })
	return n
}
