package wording

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/speech"
)

// A short line is what somebody says, not words of what somebody else says.
func TestShortLines(t *testing.T) {
	for _, c := range []struct {
		name  string
		texts []string
		lines []string
		want  string
	}{
		{"in another's line", []string{"I said there is no time to lose."}, []string{"No."}, "-"},
		{"in another's line that the plan has", []string{"I said there is no time to lose."}, []string{"I said there is no time to lose.", "No."}, "0 -"},
		{"at the end of another's line", []string{"She says to leave it"}, []string{"Leave it!"}, "-"},
		{"at the beginning of another's line", []string{"No time to lose."}, []string{"No."}, "-"},
		{"in a part of a sentence", []string{"I told you, no, he is out."}, []string{"No."}, "-"},
		{"in a line, then alone", []string{"There is no time.", "No."}, []string{"No."}, "4"},
		{"a sentence", []string{"There is time. No. Go on."}, []string{"No."}, "3"},
		{"a whole subtitle", []string{"Is there time", "no", "then go"}, []string{"No."}, "3"},
		{"a new line", []string{"- Is there time\n- no"}, []string{"No."}, "3"},
		{"quoted", []string{"Is there time? “No.” Then go."}, []string{"No."}, "3"},
		{"a pause in a sentence", []string{"There is... no... time."}, []string{"No."}, "-"},
		{"a pause between two", []string{"There is time... No… Go."}, []string{"No."}, "3"},
		{"one sentence in several lines", []string{"No, never, I kept it."}, []string{"No,", "never,", "I kept it."}, "0 1 2"},
		{"some words of a longer one", []string{"He said that he kept it all for you"}, []string{"He kept it."}, "-"},
		{"the half of one", []string{"So he kept it all"}, []string{"He kept it."}, "1"},
		{"between commas", []string{"We looked for it in the hold, he kept it, and nobody asked."}, []string{"He kept it."}, "7"},
		{"over two subtitles", []string{"He kept", "it."}, []string{"He kept it."}, "0"},
		{"short over two subtitles", []string{"Leave", "it!"}, []string{"Leave it!"}, "0"},
		{"one that is another's end", []string{"You open it.", "Open it."}, []string{"Open it.", "You open it."}, "3 0m"},
		{"one that is the end of a longer", []string{"You open the door.", "Wait.", "Open the door."}, []string{"You open the door.", "Wait.", "Open the door."}, "0 4 5"},
		{"the same words twice", []string{"There is no time to lose."}, []string{"There is no time to lose.", "There is no time to lose."}, "0 -"},
		{"other letters", []string{"今日はとても寒いですね。はい。"}, []string{"はい"}, "11"},
	} {
		got := placed(c.texts, c.lines...)
		if got != c.want && !(c.want == "3 0m" && got == "3m 0") { // either may be the one that moved
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// No word of a text is part of two lines, whatever is said; and what counts as
// found is like the line.
func TestWordsAreTakenOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom([]string{"a", "b", "c", "d.", "e,", "f"})
		texts := rapid.SliceOfN(rapid.Map(rapid.SliceOfN(word, 0, 15), func(w []string) string { return strings.Join(w, " ") }), 1, 5).Draw(t, "texts")
		lines := rapid.SliceOfN(rapid.Map(rapid.SliceOfN(word, 0, 8), func(w []string) speech.Folded { return fold(strings.Join(w, " ")) }), 1, 8).Draw(t, "lines")
		s := streamOf(texts, lines...)
		taken := make([]bool, s.Len())
		end := 0
		for i, p := range s.Place(lines, 0, s.Len()) {
			if !p.Found() {
				continue
			}
			for w := p.Start; w < p.End; w++ {
				if taken[w] {
					t.Fatalf("word %d is taken twice, again by %v", w, lines[i])
				}
				taken[w] = true
			}
			if !p.Moved {
				if p.Start < end {
					t.Fatalf("%v at %d is behind one that ends at %d", lines[i], p.Start, end)
				}
				end = p.End
			}
			if p.Likeness < Least || p.Likeness == 1 && !s.Same(lines[i], p.Start, p.End) {
				t.Fatalf("%v is like %d-%d: %g", lines[i], p.Start, p.End, p.Likeness)
			}
		}
	})
}

// A set of places has what was added and nothing else.
func TestBits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOf(rapid.IntRange(0, 300)).Draw(t, "places")
		var b bits
		for _, i := range list {
			b.add(i)
		}
		for i := range 320 {
			if b.has(i) != slices.Contains(list, i) {
				t.Fatal(fmt.Sprint(i, list))
			}
		}
	})
}

// What is said ends as a sentence does, and rows count as blanks.
func TestEndsSaid(t *testing.T) {
	signs := []string{".", "..", "!", "?", "\u2026", "\u3002", "\uff01", "\uff1f", "\n", " ", ",", "-", "\u2014", ""}
	for _, a := range signs {
		for _, b := range signs {
			for _, c := range signs {
				for _, next := range []string{"a", "A", "1", "é", ""} {
					gap := a + b + c
					if got, want := endsSaid(gap, next), endsSentence(strings.ReplaceAll(gap, "\n", " "), next); got != want {
						t.Fatalf("%q before %q: %v, want %v", gap, next, got, want)
					}
				}
			}
		}
	}
}
