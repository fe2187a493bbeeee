package coverage

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/interp/speech"
	"pullscore/interp/wording"
)

// shotOf returns a shot of lines, each of them as "WHO words".
func shotOf(id string, lines ...string) *plan.Shot {
	s := &plan.Shot{ID: id}
	for i, text := range lines {
		who, said, _ := strings.Cut(text, " ")
		l := plan.Line{Who: who, Text: said, Start: plan.Number(i), End: plan.Number(i + 1)}
		tokens := speech.Split(said)
		for k, w := range tokens {
			end := len(said)
			if k+1 < len(tokens) {
				end = tokens[k+1].Start
			}
			l.Words = append(l.Words, plan.Word{Text: strings.TrimSpace(said[w.Start:end]), Start: float64(i), End: float64(i + 1)})
		}
		s.Lines = append(s.Lines, l)
	}
	return s
}

// joined writes the lines of a scene, and behind every word the shots that have it.
func joined(shots ...*plan.Shot) string {
	var list []string
	for _, l := range join(shots) {
		text := l.who
		for _, s := range l.slots {
			text += " " + s.text + "/"
			for _, at := range s.said {
				text += shots[at.shot].ID
			}
		}
		list = append(list, text)
	}
	return strings.Join(list, "\n")
}

func TestJoin(t *testing.T) {
	for _, c := range []struct {
		name  string
		shots []*plan.Shot
		want  string
	}{
		{"the same lines", []*plan.Shot{shotOf("a", "P Last boat tonight.", "M One way."), shotOf("b", "P Last boat tonight.", "M One way.")},
			"P Last/ab boat/ab tonight./ab\nM One/ab way./ab"},
		{"one after the other", []*plan.Shot{shotOf("a", "P Last boat tonight."), shotOf("b", "P Mind the step.")},
			"P Last/a boat/a tonight./a\nP Mind/b the/b step./b"},
		{"the end of a line", []*plan.Shot{shotOf("a", "P There has been no light on that wreck for nine years."), shotOf("b", "P that wreck for nine years.")},
			"P There/a has/a been/a no/a light/a on/a that/ab wreck/ab for/ab nine/ab years./ab"},
		{"more of a line", []*plan.Shot{shotOf("a", "M Then who rings?", "P Twice."), shotOf("b", "M Then who rings?", "P Twice. It rang twice, Captain.")},
			"M Then/ab who/ab rings?/ab\nP Twice./ab It/b rang/b twice,/b Captain./b"},
		{"a line before", []*plan.Shot{shotOf("a", "M Then who rings?"), shotOf("b", "P I heard it.", "M Then who rings?")},
			"P I/b heard/b it./b\nM Then/ab who/ab rings?/ab"},
		{"a line between", []*plan.Shot{shotOf("a", "M Then who rings?", "M Nobody rings tonight."), shotOf("b", "M Then who rings?", "P Hush.", "M Nobody rings tonight.")},
			"M Then/ab who/ab rings?/ab\nP Hush./b\nM Nobody/ab rings/ab tonight./ab"},
		{"somebody else's words", []*plan.Shot{shotOf("a", "M Then who rings?"), shotOf("b", "P Then who rings?")},
			"M Then/a who/a rings?/a\nP Then/b who/b rings?/b"},
		{"a short line by chance", []*plan.Shot{shotOf("a", "M Then who rings?", "P No."), shotOf("b", "P No.", "M Mind the step.")},
			"M Then/a who/a rings?/a\nP No./a\nP No./b\nM Mind/b the/b step./b"},
		{"short lines alone", []*plan.Shot{shotOf("a", "M You?", "P No."), shotOf("b", "M You?", "P No.")},
			"M You?/ab\nP No./ab"},
		{"a word changed, a word more", []*plan.Shot{shotOf("a", "P I saw a light on the wreck.", "M Then who rings?"), shotOf("b", "P I saw the light there on the wreck.", "M Then who rings?")},
			"P I/ab saw/ab a/ab light/ab there/b on/ab the/ab wreck./ab\nM Then/ab who/ab rings?/ab"},
		{"much the same of two things", []*plan.Shot{shotOf("a", "P You never told me of the harbour."), shotOf("b", "P You never told me of the letter.")},
			"P You/a never/a told/a me/a of/a the/a harbour./a\nP You/b never/b told/b me/b of/b the/b letter./b"},
		{"two lines in one", []*plan.Shot{shotOf("a", "P It rang twice.", "P Nobody rings tonight."), shotOf("b", "P It rang twice. Nobody rings tonight.")},
			"P It/ab rang/ab twice./ab\nP Nobody/ab rings/ab tonight./ab"},
		{"one line in two", []*plan.Shot{shotOf("a", "P It rang twice. Nobody rings tonight."), shotOf("b", "P It rang twice.", "P Nobody rings tonight.")},
			"P It/ab rang/ab twice./ab Nobody/ab rings/ab tonight./ab"},
		{"nothing said", []*plan.Shot{shotOf("a"), shotOf("b", "P …")}, ""},
	} {
		if got := joined(c.shots...); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// Every word of every shot stands at one word of the scene, said by its speaker, and the
// words of a line keep their order within a line of the scene.
func TestNothingSaidGetsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom([]string{"no", "light", "on", "that", "wreck.", "it", "rang", "twice,", "Captain.", "who", "rings?"})
		text := rapid.Map(rapid.SliceOfN(word, 1, 9), func(w []string) string { return strings.Join(w, " ") })
		line := rapid.Custom(func(t *rapid.T) string {
			return rapid.SampledFrom([]string{"P", "M", "H"}).Draw(t, "who") + " " + text.Draw(t, "text")
		})
		pool := rapid.SliceOfN(line, 1, 8).Draw(t, "pool")
		shots := make([]*plan.Shot, rapid.IntRange(1, 6).Draw(t, "shots"))
		for i := range shots {
			shots[i] = shotOf(fmt.Sprint(i), rapid.SliceOfN(rapid.OneOf(rapid.SampledFrom(pool), line), 0, 7).Draw(t, "lines")...)
		}
		at := map[*plan.Word]int{}
		in := map[*plan.Word]*sceneLine{}
		n := 0
		for _, l := range join(shots) {
			for _, s := range l.slots {
				n++
				if s.line != l || len(s.said) == 0 {
					t.Fatalf("a word %q that is not in its line, or that nobody says", s.text)
				}
				for k, say := range s.said {
					if at[say.word] > 0 || k > 0 && s.said[k-1].shot >= say.shot {
						t.Fatalf("%q is said twice", s.text)
					}
					at[say.word], in[say.word] = n, l
				}
			}
		}
		for _, s := range shots {
			for i := range s.Lines {
				checkLine(t, &s.Lines[i], at, in)
			}
		}
	})
}

func checkLine(t *rapid.T, l *plan.Line, at map[*plan.Word]int, in map[*plan.Word]*sceneLine) {
	for k := range l.Words {
		w := &l.Words[k]
		if at[w] == 0 {
			t.Fatalf("%q of %q is lost", w.Text, l.Text)
		}
		if in[w].who != l.Who {
			t.Fatalf("%s says %q of %s", in[w].who, w.Text, l.Who)
		}
		if k > 0 && in[w] == in[&l.Words[k-1]] && at[w] <= at[&l.Words[k-1]] {
			t.Fatalf("%q of %q stands before %q", w.Text, l.Text, l.Words[k-1].Text)
		}
	}
}

// The alignment leaves out as few words as any other does: the figures of small cases
// are those of a search through all.
func TestAlign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b", "c"}), 0, 6)
		a, b := words.Draw(t, "a"), words.Draw(t, "b")
		at := align(a, b)
		last, cost := -1, len(b)
		for i, k := range at {
			switch {
			case k < 0:
				cost++
				continue
			case k <= last:
				t.Fatalf("%v does not rise", at)
			case a[i] == b[k]:
				cost--
			}
			last = k
		}
		if want := distance(a, b); cost != want {
			t.Fatalf("%v with %v: %v costs %d, want %d", a, b, at, cost, want)
		}
	})
}

// distance is the edit distance by its definition.
func distance(a, b []string) int {
	if len(a) == 0 || len(b) == 0 {
		return len(a) + len(b)
	}
	if a[0] == b[0] {
		return distance(a[1:], b[1:])
	}
	return 1 + min(distance(a[1:], b), distance(a, b[1:]), distance(a[1:], b[1:]))
}

// Lines come in their time, whatever the order in which a plan lists them.
func TestLinesInTime(t *testing.T) {
	s := shotOf("a", "P First of all.", "P Then the other.")
	slices.Reverse(s.Lines)
	if got := joined(s); got != "P First/a of/a all./a\nP Then/a the/a other./a" {
		t.Error(got)
	}
}

// A line is looked for wherever it may be: counting its words first leaves out no place
// at which enough of them are found.
func TestCountingLosesNoLine(t *testing.T) {
	word := rapid.SampledFrom([]string{"a", "b", "c", "d", "e", "f", "g", "h"})
	line := rapid.Map(rapid.SliceOfN(word, 1, 12), func(w []string) string { return "P " + strings.Join(w, " ") })
	rapid.Check(t, func(t *rapid.T) {
		all := rapid.SliceOfN(line, 1, 6).Draw(t, "lines")
		j := &joiner{spoken: map[string]*spoken{}}
		for _, l := range linesOf(0, shotOf("a", all...)) {
			j.bring(&l, len(j.lines))
		}
		sp := j.spokenBy("P")
		for _, l := range linesOf(1, shotOf("b", line.Draw(t, "line"))) {
			j.vocabulary = wording.NewVocabulary(l.folds)
			stream := sp.streamOf(j.vocabulary)
			if at := stream.Place([]speech.Folded{l.folds}, 0, stream.Len())[0]; at.Likeness >= leastSame && !sp.mayHave(l.folds) {
				t.Fatalf("%v is found at %+v, and not looked for", l.folds, at)
			}
		}
	})
}
