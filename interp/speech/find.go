// Finding a phrase in the lines of a shot: by its words as they are written, or by
// its terms, which are parts of words.

package speech

import (
	"slices"
	"strings"
)

// A Way is how the words of a phrase are compared.
type Way uint8

const (
	ByWords Way = iota // as they are written
	ByTerms            // in terms, so that "not" is in "don't"
)

// A Point is a place within a word: Part of its Of equal parts lie before it.
type Point struct{ Word, Part, Of int }

// In returns the time of the point in the words of its line, in seconds.
func (p Point) In(words []Timed) float64 {
	switch w := words[p.Word]; p.Part {
	case 0:
		return w.Start
	case p.Of:
		return w.End
	default:
		return w.Start + (w.End-w.Start)*float64(p.Part)/float64(p.Of)
	}
}

// A Spot is where a phrase stands in a line.
type Spot struct{ From, To Point }

// A unit is what is compared at once: a word, or a term of one.
type unit struct {
	text string
	full string // of a class of terms: the member that is written in full
	at   Point
}

// same reports whether two units are the same. Words that share the term of their
// short form only, as "did" and "would", are not.
func (u *unit) same(v *unit) bool {
	return u.text == v.text && (u.full == "" || v.full == "" || u.full == v.full)
}

// A Phrase is words in which others are looked for: a line, or a part of one.
type Phrase struct {
	text   string
	tokens []Token
	units  [2][]unit // by the way; nil: not asked for yet
}

// NewPhrase returns the words of a text.
func NewPhrase(text string) *Phrase { return PhraseOf(text, Split(text)) }

// PhraseOf is NewPhrase for a text that has been split.
func PhraseOf(text string, tokens []Token) *Phrase { return &Phrase{text: text, tokens: tokens} }

// Text returns the text as it is written.
func (p *Phrase) Text() string { return p.text }

// in returns the units of a phrase.
func (p *Phrase) in(way Way) []unit {
	if p.units[way] == nil {
		p.units[way] = unitsOf(p.text, p.tokens, way)
	}
	return p.units[way]
}

func unitsOf(text string, tokens []Token, way Way) []unit {
	units := make([]unit, 0, len(tokens))
	if way == ByWords {
		for i, word := range Fold(tokens) {
			units = append(units, unit{text: word, at: Point{i, 0, 1}})
		}
		return units
	}
	terms := FoldText(text)
	for i, term := range terms.Folded {
		word, part := terms.Of[i], terms.Part[i]
		u := unit{text: term, at: Point{word, part, terms.Count[word]}}
		if part == 0 {
			u.full = inFull(fold(tokens[word].Text))
		}
		units = append(units, u)
	}
	return units
}

// standsAt reports whether a phrase stands in a line from one unit on, and where.
func standsAt(line, phrase []unit, from int) (Spot, bool) {
	if from < 0 || from+len(phrase) > len(line) {
		return Spot{}, false
	}
	for i := range phrase {
		if !line[from+i].same(&phrase[i]) {
			return Spot{}, false
		}
	}
	last := line[from+len(phrase)-1].at
	last.Part++
	return Spot{line[from].at, last}, true
}

// Find returns where another phrase stands in this one, in order.
func (p *Phrase) Find(other *Phrase, way Way) (spots []Spot) {
	line, wanted := p.in(way), other.in(way)
	if len(wanted) == 0 {
		return nil
	}
	for i := range line {
		if s, ok := standsAt(line, wanted, i); ok {
			spots = append(spots, s)
		}
	}
	return spots
}

// An Index finds phrases in many lines: a shot may have thousands, and as many
// moments that hang on words, so they are not gone through for each. A phrase is
// looked for where its rarest unit stands, once.
type Index struct {
	lines []*Phrase
	units [2]map[string][]unitOf // by the way
	found map[looked][]Hit
}

// A Hit is a spot in one of the lines.
type Hit struct {
	Line int
	Spot
}

// A looked is a phrase that has been looked for.
type looked struct {
	text string
	way  Way
}

// A unitOf is a unit of a line.
type unitOf struct{ line, unit int }

// NewIndex returns an index of lines.
func NewIndex(lines []*Phrase) *Index {
	return &Index{lines: lines, found: map[looked][]Hit{}}
}

// Find returns where a phrase stands, in the order of the lines.
func (x *Index) Find(p *Phrase, way Way) []Hit {
	key := looked{p.text, way}
	hits, ok := x.found[key]
	if !ok {
		hits = x.find(p.in(way), way)
		x.found[key] = hits
	}
	return hits
}

func (x *Index) find(phrase []unit, way Way) (hits []Hit) {
	if len(phrase) == 0 {
		return nil
	}
	all := x.all(way)
	rarest := 0
	for i := range phrase {
		if len(all[phrase[i].text]) < len(all[phrase[rarest].text]) {
			rarest = i
		}
	}
	for _, at := range all[phrase[rarest].text] {
		if s, ok := standsAt(x.lines[at.line].in(way), phrase, at.unit-rarest); ok {
			hits = append(hits, Hit{at.line, s})
		}
	}
	return hits
}

// all notes where every unit of the lines stands.
func (x *Index) all(way Way) map[string][]unitOf {
	if x.units[way] == nil {
		all := map[string][]unitOf{}
		for i, line := range x.lines {
			for k, u := range line.in(way) {
				all[u.text] = append(all[u.text], unitOf{i, k})
			}
		}
		x.units[way] = all
	}
	return x.units[way]
}

// inFull returns the member of a class of terms that a folded word has in full,
// alone or with another written on to it; "" where it has none.
func inFull(word string) string {
	switch word {
	case "won't":
		return "will"
	case "shan't":
		return "shall"
	}
	for short := word; short != ""; short, _ = shorten(word) {
		word = short
	}
	for _, ending := range [...]string{"nt", "ve"} {
		if rest, ok := strings.CutSuffix(word, ending); ok && bare(word) != nil {
			word = rest
		}
	}
	if slices.Contains(fullForms[:], word) {
		return word
	}
	return ""
}

// fullForms are the words of which several share one short form.
var fullForms = [...]string{"will", "shall", "had", "would", "did", "is", "has"}
