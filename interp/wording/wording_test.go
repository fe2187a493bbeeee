package wording

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"pgregory.net/rapid"

	"pullscore/interp/speech"
)

func fold(s string) speech.Folded { return speech.Fold(speech.Split(s)) }

func TestFind(t *testing.T) {
	s := New(fold("You kept the second ledger. I kept every ledger there is. You kept it, then? No. Yes, all of them."))
	for _, c := range []struct{ line, want string }{
		{"You kept the second ledger.", "0-5 1.00"},
		{"you KEPT the second ledger", "0-5 1.00"},
		{"I have kept every ledger there is", "5-11 0.86"},
		{"You kept it then", "11-15 1.00"},
		{"No.", "15-16 1.00"},
		{"Never in my life", "0-0 0.00"},
		{"I kept every old ledger there was", "5-11 0.71"},
		{"", "0-0 0.00"},
	} {
		h := s.Find(fold(c.line), 0, len(s.words))
		if got := fmt.Sprintf("%d-%d %.2f", h.Start, h.End, h.Likeness); got != c.want {
			t.Errorf("%q: %s, want %s", c.line, got, c.want)
		}
	}
}

func TestPlace(t *testing.T) {
	s := New(fold("Stop. Where is the rope? No. On the quay, by the lamp. No. Stop. Then fetch it before the tide turns."))
	for _, c := range []struct {
		lines []string
		want  string
	}{
		{[]string{"Stop.", "Where is the rope?", "No.", "On the quay, by the lamp.", "No.", "Stop."}, "0 1 5 6 12 13"},
		{[]string{"Where is the rope?", "No.", "Then fetch it before the tide turns."}, "1 5 14"},
		{[]string{"On the quay by the lamp", "Where is the rope", "Then fetch it before the tide turns"}, "6 1m 14"},
		{[]string{"Where is the old rope?", "On the quay, under the lamp.", "Nothing like it."}, "1 6 -"},
	} {
		var lines []speech.Folded
		for _, l := range c.lines {
			lines = append(lines, fold(l))
		}
		var got []string
		for _, p := range s.Place(lines) {
			switch {
			case !p.Found():
				got = append(got, "-")
			case p.Moved:
				got = append(got, fmt.Sprint(p.Start, "m"))
			default:
				got = append(got, fmt.Sprint(p.Start))
			}
		}
		// Of two lines that changed places either may be the one that moved.
		if g := strings.Join(got, " "); g != c.want && g != "6m 1 14" {
			t.Errorf("%q: %s, want %s", c.lines, g, c.want)
		}
	}
}

// The cost of an alignment against a general library's edit distance: with one
// letter a word, that of the whole stretch is never smaller.
func TestCostAgreesWithEditDistance(t *testing.T) {
	letters := rapid.StringMatching(`[abcd]{1,12}`)
	rapid.Check(t, func(t *rapid.T) {
		line, text := letters.Draw(t, "line"), letters.Draw(t, "text")
		s := New(strings.Split(text, ""))
		h := s.compare(strings.Split(line, ""), 0, len(text))
		least := len(line)
		for i := range text {
			for j := i; j <= len(text); j++ {
				least = min(least, levenshtein.Distance(line, text[i:j], nil))
			}
		}
		want := 1 - float64(least)/float64(len(line))
		if diff := h.Likeness - want; diff > 1e-9 || diff < -1e-9 {
			t.Fatalf("%q in %q: %g, want %g", line, text, h.Likeness, want)
		}
		if got := levenshtein.Distance(line, text[h.Start:h.End], nil); got != least {
			t.Fatalf("%q in %q: the stretch %q costs %d, want %d", line, text, text[h.Start:h.End], got, least)
		}
	})
}

// Every line of a text is found where it stands, if it is there once.
func TestLinesOfTheTextAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-h]{1,2}`), 20, 200).Draw(t, "words")
		s := New(words)
		from := rapid.IntRange(0, len(words)-3).Draw(t, "from")
		to := rapid.IntRange(from+1, min(len(words), from+12)).Draw(t, "to")
		line := speech.Folded(words[from:to])
		p := s.Place([]speech.Folded{line})[0]
		if p.Likeness != 1 || !slices.Equal(words[p.Start:p.End], line) {
			t.Fatalf("%v is placed at %+v", line, p)
		}
	})
}

// A text made to take for ever does not.
func TestHostileTexts(t *testing.T) {
	same := slices.Repeat([]string{"no"}, 300_000)
	s := New(same)
	if h := s.Find(same[:1000], 0, len(same)); h.Likeness != 1 {
		t.Errorf("%+v", h)
	}
	lines := make([]speech.Folded, 50)
	for i := range lines {
		lines[i] = same[:60]
	}
	for i, p := range s.Place(lines) {
		if !p.Found() || p.Start != i*60 {
			t.Fatalf("line %d is at %+v", i, p)
		}
	}
}

func TestIncreasing(t *testing.T) {
	got := increasing([]int{5, 1, 2, 9, 3, 4})
	if want := []bool{false, true, true, false, true, true}; !slices.Equal(got, want) {
		t.Errorf("%v", got)
	}
}

func BenchmarkPlace(b *testing.B) {
	var text strings.Builder
	for i := range 30_000 {
		fmt.Fprintf(&text, "word%d and the rope of the %d boat. ", i%977, i%131)
	}
	words := fold(text.String())
	s := New(words)
	var lines []speech.Folded
	for i := 0; i+8 < len(words); i += 200 {
		lines = append(lines, words[i:i+8])
	}
	b.ReportMetric(float64(len(lines)), "lines")
	for b.Loop() {
		s.Place(lines)
	}
}
