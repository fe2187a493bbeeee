package interp_test

import (
	"os"
	"reflect"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
)

// A copy of a shot is taken anew as the shot is, has its lines, and its cures tried.
func TestCopiesOfShots(t *testing.T) {
	const path = "../examples/two-85s.pull"
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	res := interp.Interpret(path, src, interp.Options{})
	if len(res.Plan.Shots) < 2 {
		t.Fatalf("%+v", res.Findings)
	}
	for _, s := range res.Plan.Shots {
		alone := *s
		was, ok := res.Retake(s)(stops.Change{Stop: 8})
		is, okToo := res.Retake(&alone)(stops.Change{Stop: 8})
		if !ok || !okToo || is.Shot.ID != s.ID || !reflect.DeepEqual(was.Faults, is.Faults) {
			t.Errorf("%s: a copy is taken anew as %v, %v", s.ID, is, okToo)
		}
		first, last := res.Lines(s)
		if a, b := res.Lines(&alone); a != first || b != last || first == 0 {
			t.Errorf("%s: a copy is in lines %d to %d, want %d to %d", s.ID, a, b, first, last)
		}
		res.TryTogether([]*plan.Shot{s, &alone})
		if len(alone.Together) != len(s.Together) {
			t.Errorf("%s: a copy has %d cures tried, want %d", s.ID, len(alone.Together), len(s.Together))
		}
	}
}
