// Finding a phrase in a line.

package speech

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Match returns the indices of the tokens at which a phrase begins. The phrase
// is split as lines are, so that only its words count: neither case nor
// punctuation nor the kind of apostrophe does. In scripts without spaces it can
// be any run of characters. A phrase without a word is nowhere.
func Match(tokens []Token, words string) []int {
	return Fold(tokens).Find(Fold(Tokens(words)))
}

// A Folded is a line's words as they are compared.
type Folded []string

// Fold folds the words of a line, to look for several phrases in it.
func Fold(tokens []Token) Folded {
	folded := make(Folded, len(tokens))
	for i := range tokens {
		folded[i] = fold(tokens[i].Text)
	}
	return folded
}

// Find returns the indices of the words at which a phrase begins, as Match
// does.
func (f Folded) Find(phrase Folded) []int {
	if len(phrase) == 0 {
		return nil
	}
	var found []int
	for i := range len(f) - len(phrase) + 1 {
		if slices.Equal(f[i:i+len(phrase)], phrase) {
			found = append(found, i)
		}
	}
	return found
}

// fold returns a word as it is compared: folded, not in lower case, so that both
// small sigmas are one and ß is ss. Tests compare it with golang.org/x/text/cases,
// whose tables alone would take longer to load than a plan takes to check.
func fold(word string) string {
	if ascii(word) {
		return strings.ToLower(word)
	}
	plain := strings.Map(func(r rune) rune {
		switch {
		case apostrophe(r):
			return '\''
		case joiner(r):
			return -1
		}
		return r
	}, word)
	return norm.NFC.String(strings.Map(foldRune, sharpS.Replace(plain)))
}

var sharpS = strings.NewReplacer("ß", "ss", "ẞ", "ss")

// foldRune returns the same letter for all that differ only in case.
func foldRune(r rune) rune {
	least := r
	for f := unicode.SimpleFold(r); f != r; f = unicode.SimpleFold(f) {
		least = min(least, f)
	}
	return unicode.ToLower(least)
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf || s[i] == '`' {
			return false
		}
	}
	return true
}
