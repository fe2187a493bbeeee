// Syllables: how many a word has, by the rules of English spelling.

package speech

import (
	"strings"
	"unicode"
)

// Syllables estimates how many syllables a word has: at least 1 for anything
// with a letter or digit, 0 for anything else. Words are read by the rules of
// English spelling, numerals as they are said in English ("14" is fourteen). In
// scripts written without spaces each letter counts as one. In other scripts
// that are not Latin each vowel would need rules of its own language; there
// every second letter counts.
func Syllables(word string) int {
	n := 0
	for _, r := range word {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			n = max(n, 1)
		}
	}
	if n == 0 {
		return 0
	}
	return max(1, groups(strings.ToLower(word)))
}

func groups(s string) int {
	n, in := 0, false
	for i := range len(s) {
		v := strings.IndexByte("aeiouy", s[i]) >= 0
		if v && !in {
			n++
		}
		in = v
	}
	return n
}
