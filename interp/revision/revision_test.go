package revision

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/lang/fountain"
	"pullscore/lang/lines"
	"pullscore/lang/testing/cputime"
)

// page reads a page of a scene with these speeches, each "WHO: words".
func page(speeches ...string) *Pages {
	var text strings.Builder
	text.WriteString("INT. SHED - DAY #1#\n")
	for _, s := range speeches {
		who, words, _ := strings.Cut(s, ": ")
		fmt.Fprintf(&text, "\n%s\n%s\n", who, words)
	}
	return read(text.String(), "")
}

func read(text, scene string) *Pages {
	t, _ := lines.Decode("page.fountain", []byte(text))
	p := &Pages{}
	p.Add(fountain.Beats(t, &lines.Faults{}), "page.fountain", scene)
	return p
}

// shots makes shots with these lines, each "WHO: words".
func shots(all ...[]string) (made []*plan.Shot) {
	for i, list := range all {
		s := &plan.Shot{ID: fmt.Sprint(i + 1)}
		for _, l := range list {
			who, words, _ := strings.Cut(l, ": ")
			s.Lines = append(s.Lines, plan.Line{Who: who, Text: words})
		}
		made = append(made, s)
	}
	return made
}

// in writes changes on one line each.
func in(changes []Change) string {
	var list []string
	for _, c := range changes {
		list = append(list, strings.TrimSpace(fmt.Sprintf("%s %s.%d %s", c.Kind, c.Shot, c.Line, c.PageText)))
	}
	return strings.Join(list, "; ")
}

func TestCompare(t *testing.T) {
	scene := []string{"NORA: Where is the rope?", "OTTO: On the quay, by the lamp. It is wet.", "NORA: Then fetch it.", "OTTO: No."}
	for _, c := range []struct {
		name string
		plan []*plan.Shot
		page *Pages
		want string
	}{
		{"nothing", shots(scene), page(scene...), ""},
		{"case and punctuation", shots([]string{"Nora: WHERE is the rope -", "OTTO: on the quay by the lamp; it is wet", "NORA: Then... fetch it", "OTTO: No"}), page(scene...), ""},
		{"a speech split", shots([]string{scene[0], "OTTO: On the quay,", "OTTO: by the lamp.", "OTTO: It is wet.", scene[2], scene[3]}), page(scene...), ""},
		{"a speech over two shots", shots([]string{scene[0], "OTTO: On the quay, by the lamp."}, []string{"OTTO: It is wet.", scene[2], scene[3]}), page(scene...), ""},
		{"from two sides", shots(scene, scene), page(scene...), ""},
		{"a word", shots(scene), page(scene[0], "OTTO: On the quay, by the bell. It is wet.", scene[2], scene[3]), "changed 1.1 On the quay, by the bell. It is wet."},
		{"a word more", shots(scene), page(scene[0], scene[1], "NORA: Then fetch it now.", scene[3]), "changed 1.2 Then fetch it now."},
		{"a word before", shots(scene), page(scene[0], scene[1], "NORA: Well then fetch it.", scene[3]), "changed 1.2 Well then fetch it."},
		{"a word less", shots(scene), page(scene[0], "OTTO: On the quay, by the lamp. It's wet.", scene[2], scene[3]), "changed 1.1 On the quay, by the lamp. It's wet."},
		{"all words", shots(scene), page(scene[0], "OTTO: Sunk.", scene[2], scene[3]), "changed 1.1 Sunk."},
		{"a short line alone, longer", shots([]string{"NORA: Last boat."}), page("NORA: Last boat today."), "changed 1.0 Last boat today."},
		{"a short line alone, in another's", shots([]string{"NORA: Last boat."}), page("OTTO: Last boat today."), "gone 1.0"},
		{"gone", shots(scene), page(scene[0], scene[1], scene[3]), "gone 1.2"},
		{"new", shots(scene), page(scene[0], scene[1], "NORA: How wet?", scene[2], scene[3]), "new .-1 How wet?"},
		{"moved", shots(scene), page(scene[2], scene[0], scene[1], scene[3]), "moved 1.2 Then fetch it."},
		{"a part", shots(scene[1:3]), page(scene...), "new .-1 Where is the rope?; new .-1 No."},
		{"another speaker", shots(scene), page(scene[0], scene[1], "OTTO: Then fetch it.", scene[3]), "speaker 1.2 Then fetch it."},
		{"one of two speakers", shots([]string{scene[0], "OTTO: No."}), page(scene[0], "NORA & OTTO: No."), ""},
		{"none of two speakers", shots([]string{scene[0], "IDA: No."}), page(scene[0], "NORA AND OTTO: No."), "speaker 1.1 No."},
		{"a short line in the shot behind", shots(scene, []string{"OTTO: Yes."}), page(append([]string{"NORA: Yes."}, append(scene, "OTTO: Yes.")...)...), "new .-1 Yes."},
		{"a short line from two sides", shots(scene, []string{"OTTO: No."}), page(scene...), ""},
		{"a shot that stands before the one before", shots(scene[2:], scene[:2]), page(scene...), ""},
		{"an empty page", shots(scene[:1]), page(), "gone 1.0"},
		{"a line without a word", shots([]string{"NORA: ...", scene[0]}), page(scene[0]), ""},
		{"no lines", shots(nil), page(scene...), ""},
		{"one in another's", shots([]string{"TOMAS: Open it.", "INES: You open it."}), page("INES: You open it.", "TOMAS: Open it."), "moved 1.0 Open it."},
		{"one in another's, between others", shots([]string{scene[0], "TOMAS: Open it.", "INES: You open it.", scene[1]}), page(scene[0], "INES: You open it.", "TOMAS: Open it.", scene[1]), "moved 1.1 Open it."},
		{"a word in another's", shots([]string{scene[0], scene[3]}), page(scene[0], "NORA: There is no time."), "gone 1.1; new .-1 There is no time."},
		{"a short one with a word more", shots(scene), page(scene[0], scene[1], scene[2], "OTTO: No, never."), "changed 1.3 No, never."},
		{"one speech in short lines", shots([]string{scene[0], "OTTO: No,", "OTTO: never,", "OTTO: I kept it."}), page(scene[0], "OTTO: No, never, I kept it."), ""},
		{"other letters", shots([]string{"小林: 縄はどこですか"}), page("@小林: 縄はあそこですか"), "changed 1.0 縄はあそこですか"},
	} {
		if got := in(Compare(c.plan, c.page)); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Of a page only the scene that is meant counts, and speeches of scenes that
// the plan has nothing of are not new.
func TestScenes(t *testing.T) {
	const text = "INT. A #1#\n\nNORA\nYes.\n\nOTTO\nWhy?\n\nINT. B #2a#\n\nNORA\nYes.\n\nINT. C\n\nOTTO\nNever.\n"
	p := shots([]string{"NORA: Yes."})
	if got := in(Compare(p, read(text, "2A"))); got != "" {
		t.Errorf("scene 2A: %s", got)
	}
	if got := in(Compare(p, read(text, ""))); got != "new .-1 Why?" {
		t.Errorf("all scenes: %s", got)
	}
	if got := in(Compare(p, read(text, "9"))); got != "gone 1.0" {
		t.Errorf("no scene: %s", got)
	}
}

// A plan made of a page is not told of anything; each speech taken out of the
// page is gone, and each put in is new.
func TestOneSpeechOutOrIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "speeches")
		var scene []string
		for i := range n {
			words := rapid.SliceOfN(rapid.StringMatching(`[a-z]{3,6}`), 3, 8).Draw(t, "words")
			scene = append(scene, fmt.Sprintf("%s: %s only%d.", []string{"NORA", "OTTO"}[i%2], strings.Join(words, " "), i))
		}
		p := shots(scene)
		if got := in(Compare(p, page(scene...))); got != "" {
			t.Fatalf("the same page: %s", got)
		}
		// Without the first or the last, which leave no gap that another could fill.
		k := rapid.SampledFrom([]int{0, n - 1}).Draw(t, "without")
		changes := Compare(p, page(slices.Delete(slices.Clone(scene), k, k+1)...))
		if len(changes) != 1 || changes[0].Kind != Gone || changes[0].Line != k {
			t.Fatalf("without %d: %s", k, in(changes))
		}
		changes = Compare(shots(slices.Delete(slices.Clone(scene), k, k+1)), page(scene...))
		if len(changes) != 1 || changes[0].Kind != New {
			t.Fatalf("with %d more: %s", k, in(changes))
		}
	})
}

// A script of a hundred thousand words, all of a few, takes a moment.
func TestLongScript(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	words := strings.Fields("yes no the rope boat lamp tide wet go stop")
	var scene []string
	for i := range 12_000 {
		text := fmt.Sprintf("%s:", []string{"NORA", "OTTO"}[i%2])
		for range 8 {
			text += " " + words[rng.IntN(len(words))]
		}
		scene = append(scene, text)
	}
	if took := cputime.Of(func() { Compare(shots(scene[5000:5400]), page(scene...)) }); took > 10*time.Second {
		t.Errorf("it took %v", took)
	}
}
