package preview

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/cmd/internal/rebuild"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// toldOf returns what the page is told of the plans.
func toldOf(t *testing.T, s *Server, plans ...*rebuild.Plan) []toldPlan {
	t.Helper()
	var got struct{ Plans []toldPlan }
	if err := json.Unmarshal(newView(s, &rebuild.State{Plans: plans}, nil).data, &got); err != nil {
		t.Fatal(err)
	}
	return got.Plans
}

func TestWhatIsToldOfAPlan(t *testing.T) {
	s := serve(t, Options{})
	path, src := example(t, "lantern.pull")
	soft := strings.Replace(src, "over 1.5 s", "over 1 s", 1)
	good := reading(t, path, soft, nil)
	p := toldOf(t, s, good)[0]
	if p.Stale || len(p.Shots) != 1 || len(p.Shots[0].Pages) != 1 || p.Shots[0].FPS != 24 || len(p.Shots[0].Pulls) != 2 || p.Old != nil {
		t.Errorf("a good plan is told as %+v", p)
	}
	if len(p.Findings) != 1 {
		t.Fatalf("%d findings are told", len(p.Findings))
	}
	f, flag := p.Findings[0], good.Good.Shots[0].Flags[0]
	if f.Number != flag.Number || f.Message != flag.Text || math.Abs(float64(f.Time)-flag.Time) > 1e-6 || f.Pull != 2 {
		t.Errorf("the finding %+v has the flag %+v", f, flag)
	}
	if want := "lantern.pull:" + lineOf(t, soft, "over 1 s"); f.Place != want || !strings.HasSuffix(f.File, "lantern.pull") {
		t.Errorf("it lies at %s of %s, want %s", f.Place, f.File, want)
	}

	// With errors: they are told without numbers, since the drawing has others.
	bad := reading(t, path, strings.Replace(soft, "rack to LANTERN", "rack to LANTREN", 1), good)
	p = toldOf(t, s, bad)[0]
	if !p.Stale || len(p.Shots[0].Pages) != 1 || len(p.Old) != 1 || p.Old[0].Number != 1 {
		t.Errorf("a plan with errors is told as %+v", p)
	}
	for _, f := range p.Findings {
		if f.Number != 0 {
			t.Errorf("%q has the number of a flag that is not drawn", f.Message)
		}
	}

	// With errors from the start: nothing is drawn, and the page says so.
	p = toldOf(t, s, reading(t, path, strings.Replace(soft, "rack to LANTERN", "rack to LANTREN", 1), nil))[0]
	if !p.Stale || len(p.Shots) != 1 || len(p.Shots[0].Pages) != 0 || p.Old != nil {
		t.Errorf("a plan that never was good is told as %+v", p)
	}
}

// lineOf returns the number of the first line that has a text.
func lineOf(t *testing.T, src, text string) string {
	t.Helper()
	for i, line := range strings.Split(src, "\n") {
		if strings.Contains(line, text) {
			b, _ := json.Marshal(i + 1)
			return string(b)
		}
	}
	t.Fatalf("no line has %q", text)
	return ""
}

func TestExamplesAreTold(t *testing.T) {
	s := serve(t, Options{})
	for _, name := range []string{"crossing.pull", "gangway.pull", "kit.pull", "roll-call.pull", "small-sensor.pull", "ticket-window.pull", "two-85s.pull", "zoom.pull"} {
		path, src := example(t, name)
		p := reading(t, path, src, nil)
		told := toldOf(t, s, p)[0]
		if len(told.Findings) != len(p.Findings) || len(told.Shots) != len(p.Latest.Shots) {
			t.Errorf("%s: %d of %d findings, %d of %d shots", name, len(told.Findings), len(p.Findings), len(told.Shots), len(p.Latest.Shots))
		}
		flags := 0
		for _, shot := range p.Latest.Shots {
			flags += len(shot.Flags)
		}
		for _, f := range told.Findings {
			if f.Number > 0 {
				flags--
			}
		}
		if flags != 0 {
			t.Errorf("%s: %d flags on the drawings have no finding", name, flags)
		}
	}
}

func TestOnlyChangedPlansAreToldAnew(t *testing.T) {
	s := serve(t, Options{})
	state := exampleState(t, 1, "lantern.pull", "gangway.pull")
	before := newView(s, state, nil)
	path, src := example(t, "lantern.pull")
	after := newView(s, replaced(state, reading(t, path, src, state.Plans[0])), before)
	kept := state.Plans[1]
	if &before.plans[kept][0] != &after.plans[kept][0] {
		t.Error("a plan that is the same was told anew")
	}
	if len(after.plans) != 2 || strings.Count(string(after.data), `"version":2`) != 2 {
		t.Errorf("told %s", after.data)
	}
}

// What several findings of a shot have in common is told once.
func TestCausesAreTold(t *testing.T) {
	shot := &plan.Shot{ID: "1", Causes: []plan.Cause{{Code: "hard-to-land", Severity: "warning", Flags: []int{1, 2, 3}, Cure: "stop f/4", Mends: 2}}}
	var found []lang.Diagnostic
	for range 3 {
		found = append(found, lang.Diagnostic{Code: "hard-to-land", Severity: lang.Warning, Shot: "1", Message: "a rack"})
	}
	drawn := &plan.Plan{Shots: []*plan.Shot{shot}}
	told := tellPlan(&rebuild.Plan{Key: "a", Path: "a.pull", Latest: drawn, Good: drawn, Findings: found, GoodFindings: found})
	if len(told.Causes) != 1 || told.Causes[0].Text != "3 pulls do not land often enough in their time: stop f/4 mends 2 of them" || len(told.Findings) != 3 {
		t.Errorf("causes %+v with %d findings", told.Causes, len(told.Findings))
	}
}

// The notes of a shot are told beside its name.
func TestNotesAreTold(t *testing.T) {
	path, src := example(t, "ticket-window.pull")
	p := reading(t, path, strings.Replace(src, "  start on MARRIT", "  note \"Mind the step.\"\n  start on MARRIT", 1), nil)
	told := tellPlan(p)
	if got := told.Shots[0].Notes; !slices.Equal(got, []string{"Mind the step."}) {
		t.Errorf("the notes are %q", got)
	}
}
