package wording

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"pgregory.net/rapid"

	"pullscore/interp/speech"
)

func fold(s string) speech.Folded { return speech.Fold(speech.Split(s)) }

// streamOf returns the stream of texts in which some lines can be looked for.
func streamOf(texts []string, lines ...speech.Folded) *Stream {
	s := New(NewVocabulary(lines...))
	for _, text := range texts {
		s.Append(text)
	}
	return s
}

// placed writes where lines are found: their first words, m for moved.
func placed(texts []string, lines ...string) string {
	var folded []speech.Folded
	for _, l := range lines {
		folded = append(folded, fold(l))
	}
	s := streamOf(texts, folded...)
	var got []string
	for _, p := range s.Place(folded, 0, s.Len()) {
		switch {
		case !p.Found():
			got = append(got, "-")
		case p.Moved:
			got = append(got, fmt.Sprint(p.Start, "m"))
		default:
			got = append(got, fmt.Sprint(p.Start))
		}
	}
	return strings.Join(got, " ")
}

// findAlone looks for a line alone.
func (s *Stream) findAlone(line speech.Folded) Hit {
	return s.Place([]speech.Folded{line}, 0, s.Len())[0].Hit
}

func TestFind(t *testing.T) {
	text := []string{"You kept the second ledger. I kept every ledger there is. You kept it, then? No. Yes, all of them."}
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
		h := streamOf(text, fold(c.line)).findAlone(fold(c.line))
		if got := fmt.Sprintf("%d-%d %.2f", h.Start, h.End, h.Likeness); got != c.want {
			t.Errorf("%q: %s, want %s", c.line, got, c.want)
		}
	}
}

func TestPlace(t *testing.T) {
	text := []string{"Stop. Where is the rope? No. On the quay, by the lamp. No. Stop. Then fetch it before the tide turns."}
	for _, c := range []struct {
		lines []string
		want  string
	}{
		{[]string{"Stop.", "Where is the rope?", "No.", "On the quay, by the lamp.", "No.", "Stop."}, "0 1 5 6 12 13"},
		{[]string{"Where is the rope?", "No.", "Then fetch it before the tide turns."}, "1 5 14"},
		{[]string{"On the quay by the lamp", "Where is the rope", "Then fetch it before the tide turns"}, "6 1m 14"},
		{[]string{"Where is the old rope?", "On the quay, under the lamp.", "Nothing like it."}, "1 6 -"},
	} {
		// Of two lines that changed places either may be the one that moved.
		if g := placed(text, c.lines...); g != c.want && g != "6m 1 14" {
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
		letters := speech.Folded(strings.Split(line, ""))
		s := streamOf([]string{strings.Join(strings.Split(text, ""), " ")}, letters)
		h := s.compare(wanted{words: s.vocabulary.numbers(letters)}, 0, len(text))
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

// Every line of a text is found, word for word, whatever is said around it.
func TestLinesOfTheTextAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-h]{1,2}`), 20, 200).Draw(t, "words")
		from := rapid.IntRange(0, len(words)-3).Draw(t, "from")
		to := rapid.IntRange(from+1, min(len(words), from+12)).Draw(t, "to")
		line := speech.Folded(words[from:to])
		said := func(words []string) string { return strings.Join(words, " ") }
		text := said(words[:from]) + ". " + said(line) + "! " + said(words[to:])
		p := streamOf([]string{text}, line).findAlone(line)
		if p.Likeness != 1 || !slices.Equal(words[p.Start:p.End], line) {
			t.Fatalf("%v is placed at %+v", line, p)
		}
	})
}

// What is found in a part of a text is what is found in that part alone,
// whatever other words there are around it.
func TestPartOfAText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		some := func(name string) speech.Folded {
			return rapid.SliceOfN(rapid.StringMatching(`[a-e]`), 0, 40).Draw(t, name)
		}
		before, part, after := some("before"), some("part"), some("after")
		lines := []speech.Folded{some("line"), some("next")}
		said := func(words ...speech.Folded) []string { return []string{strings.Join(slices.Concat(words...), " ")} }
		alone := streamOf(said(part), lines...).Place(lines, 0, len(part))
		among := streamOf(said(before, part, after), lines...).Place(lines, len(before), len(before)+len(part))
		for i := range among {
			if among[i].Found() {
				among[i].Start -= len(before)
				among[i].End -= len(before)
			}
			if among[i] != alone[i] {
				t.Fatalf("%v: %+v among others, %+v alone", lines[i], among[i], alone[i])
			}
		}
	})
}

// A stream takes a few bytes for a word, and says when there are too many.
func TestMostWords(t *testing.T) {
	s := New(NewVocabulary(fold("rope")))
	s.words = make([]int32, MostWords-1)
	if !s.Append("rope") || s.Append("rope") || s.Len() != MostWords || !s.Same(fold("rope"), MostWords-1, MostWords) {
		t.Errorf("%d words", s.Len())
	}
}

// A text made to take for ever does not.
func TestHostileTexts(t *testing.T) {
	same := slices.Repeat([]string{"no"}, 300_000)
	s := streamOf([]string{strings.Join(same, " ")}, same[:1])
	if h := s.findAlone(same[:1000]); h.Likeness != 1 {
		t.Errorf("%+v", h)
	}
	lines := make([]speech.Folded, 50)
	for i := range lines {
		lines[i] = same[:60]
	}
	for i, p := range s.Place(lines, 0, len(same)) {
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
	s := streamOf([]string{text.String()}, words)
	var lines []speech.Folded
	for i := 0; i+8 < len(words); i += 200 {
		lines = append(lines, words[i:i+8])
	}
	b.ReportMetric(float64(len(lines)), "lines")
	for b.Loop() {
		s.Place(lines, 0, len(words))
	}
}

// A talk that would make a stream too long is taken as far as it fits, by whole subtitles.
func TestMostWordsOfTalk(t *testing.T) {
	v := NewVocabulary(fold("rope"))
	s := New(v)
	s.words = make([]int32, MostWords-3)
	var talk Talk
	l := New(v).Listener()
	for _, text := range []string{"", "the rope", "- a rope", "rope"} {
		l.Listen(&talk, text, []Voice{{0, 1}})
	}
	if ends, ok := s.Take(&talk); ok || !slices.Equal(ends, []int{MostWords - 3, MostWords - 1}) || s.Len() != MostWords-1 {
		t.Errorf("%v %v: %d words", ends, ok, s.Len())
	}
}

// What is said is the same however it is shared out to talks and listeners.
func TestTalks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SampledFrom([]string{"a", "rope", "Rope.", "don't", "no!", "7", "120345", "and", "...", "…", ",", "-", "--", "\n", "wreck"})
		texts := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) string {
			return strings.Join(rapid.SliceOfN(words, 0, 6).Draw(t, "words"), " ")
		}), 1, 12).Draw(t, "texts")
		v := NewVocabulary(speech.FoldText("a rope do not no one hundred seven").Folded)
		whole, parts := New(v), New(v)
		var one, part Talk
		l, m := New(v).Listener(), New(v).Listener()
		for _, text := range texts {
			var voices []Voice
			for at := range text {
				if rapid.IntRange(0, 9).Draw(t, "turn") == 0 {
					voices = append(voices, Voice{at, int32(rapid.IntRange(-1, 2).Draw(t, "by"))})
				}
			}
			l.Listen(&one, text, voices)
			if m.Listen(&part, text, voices); rapid.Bool().Draw(t, "cut") {
				parts.Take(&part)
				part.Reset()
				m = New(v).Listener()
			}
		}
		whole.Take(&one)
		parts.Take(&part)
		if !reflect.DeepEqual(whole, parts) {
			t.Fatalf("%q:\n%+v\n%+v", texts, whole, parts)
		}
	})
}
