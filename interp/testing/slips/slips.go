// Package slips makes the slips that people make in a plan: a misspelt keyword
// or name, a wrong unit or none, a lost quote, a comma too many, words or lines
// in the wrong order, a line that is gone. Tests count what the program says of
// them. A slip is made from a random source alone, so the same seed makes the
// same slips.
package slips

import (
	"math/rand/v2"
	"slices"
	"strings"

	"pullscore/lang"
)

// A Kind is a kind of slip.
type Kind uint8

// The kinds of slips.
const (
	Keyword Kind = iota // a letter of a keyword is wrong
	Name                // a letter of a name is wrong
	Unit                // a unit that there is not, or of another dimension
	NoUnit              // a number without its unit
	Quote               // a quote is lost, or of another kind
	Comma               // a comma is lost, double, or at the end of a line
	Order               // two words, or two lines, have changed places
	Lost                // a line is gone
	Kinds   = int(Lost) + 1
)

// String returns the name of a kind.
func (k Kind) String() string {
	return [...]string{"keyword", "name", "unit", "no unit", "quote", "comma", "order", "lost line"}[k]
}

// A Slip replaces lines of a file.
type Slip struct {
	Kind Kind
	At   int      // the first line that it changes, from 0
	Was  []string // the lines as they are without it: one, or two that change places
	Is   []string // what stands there instead; none for a line that is gone
}

// Apply returns the lines of a file with the slip in it.
func (s Slip) Apply(lines []string) []string {
	return slices.Concat(lines[:s.At], s.Is, lines[s.At+len(s.Was):])
}

// Line returns which line of the file without the slip, from 0, a line of the
// file with it is.
func (s Slip) Line(line int) int {
	if line >= s.At+len(s.Is) {
		return line + len(s.Was) - len(s.Is)
	}
	return line
}

// Words returns the words that the slip has taken from the file: names, and what
// stands in quotes word by word and whole.
func (s Slip) Words() []string {
	left := map[string]bool{}
	for _, line := range s.Is {
		for _, w := range wordsOf(line) {
			left[w] = true
		}
	}
	var lost []string
	for _, line := range s.Was {
		for _, w := range wordsOf(line) {
			if !left[w] {
				lost = append(lost, w)
			}
		}
	}
	return lost
}

// wordsOf splits a line into names and words, without keywords, and adds what
// stands in quotes.
func wordsOf(line string) []string {
	words := slices.DeleteFunc(strings.FieldsFunc(line, func(r rune) bool {
		return strings.ContainsRune(" \t,.:;()\"“”?!+=*", r)
	}), func(w string) bool { return keywords[w] })
	for _, t := range tokens(line) {
		if t.quoted() {
			words = append(words, t.text[1:len(t.text)-1])
		}
	}
	return words
}

var keywords = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range append(lang.Keywords(), lang.SoftWords()...) {
		m[w] = true
	}
	return m
}()

// Make makes a slip of a kind in a file; ok is false where the line that it fell
// on has no place for one.
func Make(r *rand.Rand, kind Kind, lines []string) (s Slip, ok bool) {
	at := r.IntN(len(lines))
	line := lines[at]
	if !holds(line) {
		return Slip{}, false
	}
	s = Slip{Kind: kind, At: at, Was: []string{line}}
	switch {
	case kind == Lost:
		return s, true
	case kind == Order && r.IntN(3) == 0:
		if at+1 >= len(lines) || !holds(lines[at+1]) {
			return Slip{}, false
		}
		s.Was = []string{line, lines[at+1]}
		s.Is = []string{lines[at+1], line}
		return s, lines[at] != lines[at+1]
	}
	is, ok := changed(r, kind, line)
	s.Is = []string{is}
	return s, ok && is != line
}

// holds reports whether a line holds a statement, or a part of one.
func holds(line string) bool {
	line = strings.TrimSpace(line)
	return line != "" && line[0] != '#'
}

// Break makes a line one that cannot be read, as somebody might who is not done
// with it.
func Break(r *rand.Rand, line string) string {
	t := tokens(line)
	first, last := t[0], t[len(t)-1]
	switch r.IntN(4) {
	case 0: // its keyword is misspelt
		return replace(line, first, typo(r, first.text))
	case 1: // its end is missing
		return strings.TrimRight(line[:last.from], " ")
	case 2: // a quote too many
		return line + ` "`
	}
	return replace(line, last, last.text+" ?")
}
