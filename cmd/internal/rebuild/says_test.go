package rebuild

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/cmd/internal/difference"
	"pullscore/interp"
	"pullscore/interp/plan"
)

// planOf interprets a text as a plan without errors.
func planOf(t *testing.T, text string) *Plan {
	t.Helper()
	res := interp.Interpret("a.pull", []byte(kit+text), interp.Options{})
	for _, d := range res.Findings {
		if d.Severity.String() == "error" {
			t.Fatalf("%s\n%s", d.Message, text)
		}
	}
	return &Plan{Latest: res.Plan, Good: res.Plan, Findings: res.Findings, GoodFindings: res.Findings}
}

const quietScene = `subject MARRIT at 1.6 m
subject OSKEL at 2.9 m
subject TICKET at 1.2 m
shot 1 "One"
  with camera A, lens "75", stop f/4
  start on MARRIT
  pause 1 s
  rack to OSKEL, over 1.2 s, because "he speaks"
  pause 2 s
  rack to TICKET, over 1.4 s, because "she sees it"
  pause 2 s
  rack to OSKEL, over 1.4 s, because "he waits"
  pause 2 s
`

func TestSays(t *testing.T) {
	for _, test := range []struct {
		name string
		edit []string // old, new, old, new ...
		want []string // how the phrases begin, or what is in them
	}{
		{"nothing", nil, nil},
		{"a comment", []string{"subject OSKEL", "# taller now\nsubject OSKEL"}, nil},
		{"a quicker rack", []string{`OSKEL, over 1.2 s`, `OSKEL, over 0.5 s`}, []string{
			"1 rack 1: chance >99 % -> ", "new warning: 1 pull 1: MARRIT to OSKEL lands",
		}},
		{"later", []string{"pause 1 s", "pause 2.5 s"}, []string{"1: lasts 7 s -> 8.5 s", "1 pulls 1 to 3: 1.5 s later"}},
		{"the last later", []string{"because \"she sees it\"\n  pause 2 s", "because \"she sees it\"\n  pause 3 s"}, []string{
			"1: lasts 7 s -> 8 s", "1 rack 3: lands 1 s later",
		}},
		{"a rack put in between", []string{"  rack to TICKET", "  rack to MARRIT, over 1.2 s, because \"she waits\"\n  pause 2 s\n  rack to TICKET"}, []string{
			"1: lasts 7 s -> 9 s", "1 rack 2 to MARRIT: new, lands at 4.2 s, chance", "1 rack 3: needs", "1 rack 4: lands 2 s later",
			"gone: note: 1 pull 2: the image changes its size",
		}},
		{"a rack taken out", []string{"  rack to TICKET, over 1.4 s, because \"she sees it\"\n  pause 2 s\n  rack to OSKEL, over 1.4 s, because \"he waits\"\n  pause 2 s\n", ""}, []string{
			"1: lasts 7 s -> 3 s", "1 rack 2 to TICKET: gone", "1 rack 3 to OSKEL: gone",
		}},
		{"another stop", []string{"f/4", "f/2.8"}, []string{"1: stop f/4 -> f/2.8", "1 rack 1: needs", "1 rack 2: needs", "1 rack 3: needs"}},
		{"another shot", []string{`shot 1 "One"`, `shot 2 "One"`}, []string{"2: new, 3 pulls", "1: gone"}},
		{"whom it goes to", []string{"rack to TICKET", "rack to MARRIT"}, []string{"1 rack 2: to TICKET -> MARRIT"}},
	} {
		before, after := planOf(t, quietScene), planOf(t, strings.NewReplacer(test.edit...).Replace(quietScene))
		got := says(before, after)
		if len(got) < len(test.want) || test.want == nil && len(got) > 0 {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
			continue
		}
		for _, want := range test.want {
			if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, want) }) {
				t.Errorf("%s: %q, want one that begins %q", test.name, got, want)
			}
		}
		back := says(after, before)
		if len(back) == 0 != (len(got) == 0) {
			t.Errorf("%s: %q, and back: %q", test.name, got, back)
		}
	}
}

func TestFindingsThatGo(t *testing.T) {
	before := planOf(t, strings.Replace(quietScene, "OSKEL, over 1.2 s", "OSKEL, over 0.5 s", 1))
	after := planOf(t, strings.Replace(quietScene, "  rack to OSKEL, over 1.2", "  rack to TICKET, over 1.4 s\n  pause 1 s\n  rack to OSKEL, over 1.2", 1))
	got := says(before, after)
	if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, "gone: warning: 1 pull 1: MARRIT to OSKEL lands") }) {
		t.Errorf("%q", got)
	}
}

func TestNothingIsSaidOfErrors(t *testing.T) {
	good := planOf(t, quietScene)
	stale := &Plan{Latest: &plan.Plan{}, Good: good.Good, Stale: true}
	if got := says(good, stale); got != nil {
		t.Errorf("%q", got)
	}
	if got := says(&Plan{Latest: &plan.Plan{}}, good); got != nil {
		t.Errorf("%q", got)
	}
}

// Pulls that were put in between change no match of the others, nor do pulls
// that were taken out. (One put in and one taken out may be one that was
// edited.)
func TestAlign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		insert := rapid.Bool().Draw(t, "insert")
		name := rapid.StringMatching("[A-C]")
		var before, after []*plan.Pull
		same := map[*plan.Pull]*plan.Pull{}
		for i := range rapid.IntRange(0, 12).Draw(t, "pulls") {
			p := &plan.Pull{Kind: "rack", Target: name.Draw(t, "to"), Because: fmt.Sprint("why ", i), Number: i + 1}
			before = append(before, p)
			edited := rapid.Bool().Draw(t, "edit")
			switch {
			case edited && !insert: // taken out
			case edited:
				after = append(after, &plan.Pull{Kind: "rack", Target: name.Draw(t, "new"), Because: fmt.Sprint("new ", i)})
				fallthrough
			default:
				q := *p
				after, same[p] = append(after, &q), &q
			}
		}
		kept := 0
		var seenBefore, seenAfter []*plan.Pull
		for _, m := range difference.Pulls(before, after) {
			if m.Before != nil {
				seenBefore = append(seenBefore, m.Before)
			}
			if m.After != nil {
				seenAfter = append(seenAfter, m.After)
			}
			if m.Before != nil && same[m.Before] != nil && same[m.Before] == m.After {
				kept++
			}
		}
		if kept != len(same) {
			t.Fatalf("%d of %d pulls found again", kept, len(same))
		}
		if !slices.Equal(seenBefore, before) || !slices.Equal(seenAfter, after) {
			t.Fatal("pulls are lost, or out of order")
		}
	})
}

func TestKeys(t *testing.T) {
	none := func(string) bool { return false }
	one, two := key("a/b.pull", none), key("a/c.pull", none)
	if one == two || len(one) != keyLength || one != key("a/b.pull", none) {
		t.Errorf("keys %q, %q", one, two)
	}
	if got := key("a/b.pull", func(k string) bool { return k == one }); got == one || !strings.HasPrefix(got, one) {
		t.Errorf("where %q is taken: %q", one, got)
	}
	for _, path := range []string{"", "\xff", "<script>", strings.Repeat("x", 5000), "a\nb"} {
		if k := key(path, none); strings.Trim(k, "abcdefghijklmnopqrstuvwxyz234567") != "" {
			t.Errorf("%q: key %q", path, k)
		}
	}
}
