package speech

import "testing"

// A phrase stands at words as they are written, or at terms of them.
func TestFindBothWays(t *testing.T) {
	whole := func(word int) Point { return Point{word, 0, 1} }
	for _, test := range []struct {
		line, phrase string
		way          Way
		want         []Point // where it begins
	}{
		{"No, I don't. Not now.", "not", ByWords, []Point{whole(3)}},
		{"No, I don't. Not now.", "not", ByTerms, []Point{{2, 1, 2}, whole(3)}},
		{"I do not know", "don't", ByTerms, []Point{whole(1)}},
		{"I couldn't’ve known", "have", ByTerms, []Point{{1, 2, 3}}},
		{"She'd freeze", "she would", ByTerms, []Point{{0, 0, 2}}},
		{"In 1987", "eighty seven", ByTerms, []Point{{1, 1, 3}}},
		{"She would go", "did", ByTerms, nil}, // words of their own
		{"She wouldn't go", "didn't", ByTerms, nil},
		{"She won't go", "shan't", ByTerms, nil},
		{"She'd go", "did", ByTerms, []Point{{0, 1, 2}}},
		{"He has, and it is", "is", ByTerms, []Point{whole(4)}},
		{"I do not know", "...", ByTerms, nil},
	} {
		line, phrase := NewPhrase(test.line), NewPhrase(test.phrase)
		spots := line.Find(phrase, test.way)
		hits := NewIndex([]*Phrase{NewPhrase("Nobody."), line}).Find(phrase, test.way)
		if len(spots) != len(test.want) || len(hits) != len(test.want) {
			t.Errorf("%q in %q: %v, in an index %v, want %v", test.phrase, test.line, spots, hits, test.want)
			continue
		}
		for i, want := range test.want {
			if spots[i].From != want || hits[i] != (Hit{1, spots[i]}) {
				t.Errorf("%q in %q: %v, in an index %v, want %v", test.phrase, test.line, spots[i], hits[i], want)
			}
		}
	}
}

// The terms of a word share its time equally.
func TestTimeOfATerm(t *testing.T) {
	words := []Timed{{Start: 1, End: 2}, {Start: 2, End: 3.5}}
	for _, test := range []struct {
		at   Point
		want float64
	}{{Point{0, 0, 1}, 1}, {Point{0, 1, 1}, 2}, {Point{1, 1, 3}, 2.5}, {Point{1, 3, 3}, 3.5}} {
		if got := test.at.In(words); got != test.want {
			t.Errorf("%v is at %v s, want %v", test.at, got, test.want)
		}
	}
}
