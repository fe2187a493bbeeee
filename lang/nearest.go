// Near misses: the word that was meant.

package lang

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Nearest returns the word of a list that the writer of a misspelt word most likely
// meant: the one with the fewest letters inserted, left out, changed or swapped. It
// ignores case. ok is false if no word is near enough: one slip in three letters, two in
// six, three in nine.
func Nearest(word string, among []string) (near string, ok bool) {
	const longest = 64 // nobody mistypes a longer one
	if utf8.RuneCountInString(word) > longest {
		return "", false
	}
	w := fold(word)
	best := max(1, (len(w)+2)/3) + 1
	if len(w) < 2 {
		best = 1 // one letter is near to its other case only
	}
	for _, candidate := range among {
		c := fold(candidate)
		if candidate == word || len(c) > len(w)+best || len(w) > len(c)+best {
			continue
		}
		if d := distance(w, c); d < best || d == best && ok && candidate < near {
			best, near, ok = d, candidate, true
		}
	}
	return near, ok
}

func fold(s string) []rune { return []rune(strings.ToLower(norm.NFC.String(s))) }

// distance is the optimal string alignment distance of two words.
func distance(a, b []rune) int {
	before := make([]int, len(b)+1)
	above := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
