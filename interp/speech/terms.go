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
	if s == "" || mute(s[len(s)-1]) {
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
	if s == "" || mute(s[0]) {
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

// mute reports whether a byte is a character that says nothing of a word beside it, as most.
func mute(c byte) bool {
	switch c {
	case '\'', '`', '$', '%':
		return false
	}
	return c < utf8.RuneSelf
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
