// Words of all lines: where a phrase stands in a shot.

package spoken

import "pullscore/interp/speech"

// A Spotted is a place of words in a line.
type Spotted struct {
	Line *Line
	speech.Spot
}

// said finds phrases in all lines of a shot.
type said struct {
	lines []*Line
	index *speech.Index
	by    map[phraseBy][]*Line // that have been looked for
}

// A phraseBy is a phrase that lines of one speaker have so often.
type phraseBy struct {
	phrase, who string
	often       int
	way         speech.Way
}

func newSaid(lines []*Line) *said {
	phrases := make([]*speech.Phrase, len(lines))
	for i, l := range lines {
		phrases[i] = l.phrase()
	}
	return &said{lines: lines, index: speech.NewIndex(phrases), by: map[phraseBy][]*Line{}}
}

// all finds a phrase in all lines.
func (s *said) all(phrase *speech.Phrase, way speech.Way) (hits []Spotted) {
	for _, h := range s.index.Find(phrase, way) {
		hits = append(hits, Spotted{s.lines[h.Line], h.Spot})
	}
	return hits
}

// linesBy finds the lines of one speaker that have a phrase so often.
func (s *said) linesBy(who string, phrase *speech.Phrase, often int, way speech.Way) []*Line {
	key := phraseBy{phrase.Text(), who, often, way}
	lines, ok := s.by[key]
	if ok {
		return lines
	}
	hits := s.index.Find(phrase, way)
	for i := range hits {
		l, last := s.lines[hits[i].Line], i+often-1
		if l.Who == who && last < len(hits) && hits[last].Line == hits[i].Line && (len(lines) == 0 || lines[len(lines)-1] != l) {
			lines = append(lines, l)
		}
	}
	s.by[key] = lines
	return lines
}

// wayOf returns how a speaker says a phrase: as it is written, if any line has it so.
func (s *said) wayOf(who string, phrase *speech.Phrase) speech.Way {
	if len(s.linesBy(who, phrase, 1, speech.ByWords)) > 0 {
		return speech.ByWords
	}
	return speech.ByTerms
}
