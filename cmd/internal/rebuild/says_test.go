package rebuild

import (
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
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

// heldOffice is a plan of a scene of which 18A alone has the words, looking so many degrees
// further to the right.
func heldOffice(turned float64) *Plan {
	p := plans.Scene()
	sc, s := p.Scenes[0], p.Shots[0]
	for i := range s.Optics.Rig.Tilts { // it rests on PEVIN
		s.Optics.Rig.Tilts[i].To = s.Optics.Rig.Tilts[i].From
	}
	s.Optics.Rig.Pans = s.Optics.Rig.Pans[:1]
	s.Pulls = s.Pulls[:1]
	s.Optics.Rig.Pans[0].To += turned
	s.FillSeen()
	p.Shots, sc.Setups, sc.Cuts = p.Shots[:1], sc.Setups[:1], nil
	return &Plan{Latest: p, Good: p}
}

// Which words came to be held, and which are not any more, is said in one line, the last.
func TestSaysWhatIsHeld(t *testing.T) {
	on, off := heldOffice(0), heldOffice(40)
	for _, c := range []struct {
		before, after *Plan
		want          string
	}{
		{on, off, "scene “The office”: held by none any more: PEVIN on “So was the letter.”"},
		{off, on, "scene “The office”: now held: PEVIN on “So was the letter.” (by 18A)"},
	} {
		got := says(c.before, c.after)
		if len(got) < 2 || got[len(got)-1] != c.want || slices.ContainsFunc(got[:len(got)-1], func(text string) bool { return strings.Contains(text, "held") }) {
			t.Errorf("%q, want at the end %q", got, c.want)
		}
	}
	if got := says(on, heldOffice(0)); len(got) > 0 {
		t.Errorf("nothing changed: %q", got)
	}
}
