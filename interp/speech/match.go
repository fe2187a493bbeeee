// Finding a phrase in a line.

package speech

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Match returns the indices of the tokens at which a phrase begins. The phrase
// is split as lines are, so that only its words count: neither case nor
// punctuation nor the kind of apostrophe does. In scripts without spaces it can
// be any run of characters. A phrase without a word is nowhere.
func Match(tokens []Token, words string) []int {
	phrase := Split(words)
	if len(phrase) == 0 || len(phrase) > len(tokens) {
		return nil
	}
	want, have := foldAll(phrase), foldAll(tokens)
	var found []int
	for i := range len(have) - len(want) + 1 {
		if equal(have[i:i+len(want)], want) {
			found = append(found, i)
		}
	}
	return found
}

func equal(a, b []string) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func foldAll(tokens []Token) []string {
	folded := make([]string, len(tokens))
	for i := range tokens {
		folded[i] = fold(tokens[i].Text)
	}
	return folded
}

// fold returns a word as it is compared. It uses Unicode's full case folding
// (golang.org/x/text/cases), not lower case: ß is ss, and both small sigmas are
// one.
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
	return norm.NFC.String(cases.Fold().String(plain))
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf || s[i] == '`' {
			return false
		}
	}
	return true
}
