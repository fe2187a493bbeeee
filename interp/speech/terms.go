// Terms: words as they are compared where one is written in several ways.
//
// A person says "do not", the page has "don't" and a subtitle "dont". Each
// written word is therefore folded to one or more terms, and words are the same
// where their terms are: "don't" is do and not. Forms that one cannot tell apart
// by their letters share a term: "she'd" may be she had, she would or, after a
// word that asks, she did, so had, would and did are one term. Numerals become
// the words that they are said with. Forms that are English words of their own
// (cant, well, were) stay what they are, and so do words of other languages.

package speech

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// A Term is a part of a word as it is compared.
type Term struct {
	Text   string
	Number int32 // what the Folder's Number says of it
}

// A Word is a word of a text with its terms. It has none where it says nothing,
// as the "and" of a number.
type Word struct {
	Start, End int // bytes of the text in normal form C
	Terms      []Term
	role       role
}

// A role is what a word may be in a number.
type role uint8

const (
	otherRole role = iota
	numberRole
	scaleRole // a number that "and" may follow: hundred, thousand
	andRole
	ohRole
)

// A Folder folds words to terms. It remembers what it has folded, since a text
// says most of its words many times.
type Folder struct {
	Number func(term string) int32 // numbers a term; nil: 0 for all
	known  map[string]Word
}

// mostKnown is how many words a Folder remembers.
const mostKnown = 1 << 15

// mostDigits is how long a number is that it remembers: longer ones seldom return.
const mostDigits = 4

// Words appends the words of a text to a list. They are those that Split
// returns. nfc is the text in normal form C, in which the words stand.
func (f *Folder) Words(list []Word, text string) (words []Word, nfc string) {
	nfc = norm.NFC.String(text) // the same text where it is so already
	first := len(list)
	for i := 0; i < len(nfc); {
		start, end := nextToken(nfc, i)
		if end == start {
			break
		}
		list = append(list, f.word(nfc, start, end))
		i = end
	}
	f.inNumbers(list[first:])
	return list, nfc
}

// word returns the word that stands between two bytes of a text.
func (f *Folder) word(text string, start, end int) Word {
	s := text[start:end]
	before, after := lastSign(text[:start]), firstSign(text[end:])
	plain := before == 0 && after == 0
	if plain {
		if w, known := f.known[s]; known {
			w.Start, w.End = start, end
			return w
		}
	}
	terms, role := termsOf(s, before, after)
	w := Word{Start: start, End: end, Terms: make([]Term, len(terms)), role: role}
	for i, t := range terms {
		w.Terms[i] = f.term(t)
	}
	if plain && len(f.known) < mostKnown && (len(s) <= mostDigits || !isDigit(s[0])) {
		if f.known == nil {
			f.known = map[string]Word{}
		}
		f.known[strings.Clone(s)] = w // a text of its own: s would keep the whole text
	}
	return w
}

func (f *Folder) term(text string) Term {
	t := Term{Text: text}
	if f.Number != nil {
		t.Number = f.Number(text)
	}
	return t
}

// inNumbers takes "and" out of numbers, and makes their "oh" a zero.
func (f *Folder) inNumbers(words []Word) {
	for i := 1; i+1 < len(words); i++ {
		before, w, after := &words[i-1], &words[i], &words[i+1]
		switch {
		case w.role != andRole && w.role != ohRole, after.role != numberRole && after.role != scaleRole:
		case w.role == andRole && before.role == scaleRole:
			w.Terms = nil
		case w.role == ohRole && (before.role == numberRole || before.role == scaleRole):
			w.Terms = []Term{f.term("zero")}
		}
	}
}

// A sign is one beside a word that says something of it.
type sign byte

const (
	elision sign = '\'' // letters are left out there
	dollars sign = '$'
	pounds  sign = 'L'
	euros   sign = 'E'
	percent sign = '%'
)

// lastSign returns the sign that a text ends with, 0 for all others.
func lastSign(s string) sign {
	if s == "" || s[len(s)-1] == ' ' {
		return 0
	}
	switch r, _ := utf8.DecodeLastRuneInString(s); {
	case apostrophe(r):
		return elision
	case r == '$':
		return dollars
	case r == '£':
		return pounds
	case r == '€':
		return euros
	}
	return 0
}

// firstSign returns the sign that a text begins with, 0 for all others.
func firstSign(s string) sign {
	if s == "" || s[0] == ' ' {
		return 0
	}
	switch r, _ := utf8.DecodeRuneInString(s); {
	case apostrophe(r):
		return elision
	case r == '%':
		return percent
	}
	return 0
}

// termsOf returns the terms of a word between two signs.
func termsOf(word string, before, after sign) ([]string, role) {
	if isDigit(word[0]) {
		return numberTerms(word, before, after)
	}
	folded := fold(word)
	if !ascii(word) {
		folded = fold(norm.NFKC.String(folded))
	}
	terms := expand(folded, before == elision, after == elision)
	return terms, roleOf(terms[len(terms)-1])
}

// A Folding is a line as it is compared, in terms.
type Folding struct {
	Folded
	Of    []int // the word that each term is of
	Part  []int // which term of its word each is, from 0
	Count []int // how many terms each word has
}

// FoldText folds a text to terms.
func FoldText(text string) Folding {
	var f Folder
	words, _ := f.Words(nil, text)
	var all Folding
	for i, w := range words {
		for k, t := range w.Terms {
			all.Folded = append(all.Folded, t.Text)
			all.Of, all.Part = append(all.Of, i), append(all.Part, k)
		}
		all.Count = append(all.Count, len(w.Terms))
	}
	return all
}
