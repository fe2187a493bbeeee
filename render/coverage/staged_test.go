package coverage_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/checks/covered"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/testing/staged"
	"pullscore/lang"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/plans"

	paper "pullscore/render/coverage"
)

// flagged returns the paper of a scene that has its findings.
func flagged(t *testing.T, st *staged.Stage) (*coverage.Scene, []*draw.Page) {
	t.Helper()
	st.Scene.Flags = covered.Flags(covered.Of(st.Plan, 0, lang.Range{}, func(int, string) []lang.Edit { return nil }))
	sc := coverage.Staged(st.Plan, 0, true)
	pages := paper.Coverage(sc, sheet.Options{})
	plans.CheckPaper(t, "staged", nil, pages)
	return sc, pages
}

// What nobody holds has the letter of its finding, at its word and among what is missing;
// below stands how each camera stands and sees everybody.
func TestStagedScene(t *testing.T) {
	st := staged.TwoHander()
	st.Shots = st.Shots[:2]
	for _, s := range st.Shots {
		s.Covers[1] = 8.6
	}
	st.Shots[0].Views = []plan.SightLine{{A: "MARRIT", B: "OSKEL", EyeLine: 20.4658631, Side: 1.41161207}}
	st.Cut("12A", 0)
	st.Cut("12B", 5.4)
	st.Scene.Lines[1].Off = true
	sc, pages := flagged(t, st)
	checkShown(t, sc, pages)
	plans.CheckGolden(t, "coverage-staged", pages)
	text := plans.TextOf(pages)
	for _, want := range []string{"OSKEL (off)", "a: no set-up holds OSKEL", "c: no set-up covers OSKEL", "12A", "MARRIT to OSKEL: looks 20.5° camera right"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	flags := 0
	for _, p := range pages {
		for _, line := range groups(&p.Root, "line") {
			flags += len(groups(line, signs.Warning)) + len(groups(line, signs.Note))
			for _, setup := range groups(line, "set-up") {
				if len(groups(setup, signs.Without)) > 0 {
					t.Error("a line for what a set-up does not cover")
				}
			}
		}
	}
	if flags != 2 {
		t.Errorf("%d flags", flags)
	}
}

// Any number of set-ups is drawn without faults, also none, and lines that nobody covers.
func TestStagedScenesOfAnySize(t *testing.T) {
	for _, n := range []int{0, 1, 3, 8, 25} {
		st := staged.TwoHander()
		home := st.Shots[0].Home
		st.Shots = st.Shots[:min(n, 3)]
		for i := len(st.Shots); i < n; i++ {
			st.SetUp(fmt.Sprintf("13%c", 'A'+i), 35, home, float64(i%4), 10.6)
		}
		sc, pages := flagged(t, st)
		if len(pages) == 0 || len(sc.Setups) != n {
			t.Fatalf("%d pages of %d set-ups", len(pages), n)
		}
		text := plans.TextOf(pages)
		if strings.Contains(text, "The cut") {
			t.Errorf("%d set-ups: a scene without cuts tells of them", n)
		}
		for _, word := range []string{"boat.", "way.", "letter"} {
			if !slices.Contains(strings.Fields(text), word) {
				t.Errorf("%d set-ups: no %q", n, word)
			}
		}
	}
}
