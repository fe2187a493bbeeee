// Tests of near misses.

package lang

import (
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	subjects := []string{"DOOR", "NADIA", "LEDGER", "Élodie"}
	tests := []struct{ word, want string }{
		{"DORA", "DOOR"},
		{"door", "DOOR"},
		{"LEGDER", "LEDGER"}, // two letters swapped
		{"NADJA", "NADIA"},
		{"e\u0301lodie", "Élodie"}, // another case, another normal form
		{"WOMBAT", ""},
		{"DOOR", ""}, // it is there already, so it was not meant
		{"X", ""},
		{strings.Repeat("DOOR", 20), ""},
	}
	for _, test := range tests {
		if got, ok := Nearest(test.word, subjects); got != test.want || ok != (test.want != "") {
			t.Errorf("Nearest(%q) = %q, %v", test.word, got, ok)
		}
	}
	if got, _ := Nearest("rakc", Keywords()); got != "rack" {
		t.Errorf("the keyword nearest to rakc is %q", got)
	}
}

// TestDistance checks pairs that textbooks use. CA to ABC is 3 where no part
// is edited twice (optimal string alignment), 2 in the unrestricted distance:
// L. Boytsov, Indexing methods for approximate dictionary searching, 2011,
// section 2.1, from memory.
func TestDistance(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"ab", "ba", 1}, {"", "abc", 3}, {"same", "same", 0}} {
		if got := distance([]rune(test.a), []rune(test.b)); got != test.want {
			t.Errorf("distance(%q, %q) = %d, not %d", test.a, test.b, got, test.want)
		}
	}
}

// TestDistanceBesideLevenshtein compares with a library's Levenshtein
// distance, which counts a swap as two changes and all else alike.
func TestDistanceBesideLevenshtein(t *testing.T) {
	word := rapid.StringMatching(`[abcé]{0,8}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		got := distance([]rune(a), []rune(b))
		lev := levenshtein.Distance(a, b, nil)
		if got > lev || 2*got < lev {
			t.Errorf("distance(%q, %q) = %d beside %d", a, b, got, lev)
		}
		if back := distance([]rune(b), []rune(a)); back != got {
			t.Errorf("distance(%q, %q) is %d one way and %d the other", a, b, got, back)
		}
	})
}
