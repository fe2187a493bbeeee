package rebuild

import (
	"slices"
	"strings"
	"testing"

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
	before := planOf(t, quietScene)
	for _, test := range []struct {
		name, old, new string
		want           []string // how the phrases begin
	}{
		{"nothing", "", "", nil},
		{"a comment", "subject OSKEL", "# taller now\nsubject OSKEL", nil},
		{"a quicker rack", "OSKEL, over 1.2 s", "OSKEL, over 0.5 s", []string{
			"1 rack 1 to OSKEL: chance >99 % -> ", "1 new warning: pull 1: MARRIT to OSKEL lands",
		}},
	} {
		got := says(before, planOf(t, strings.Replace(quietScene, test.old, test.new, 1)))
		if !slices.EqualFunc(got, test.want, strings.HasPrefix) {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
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
