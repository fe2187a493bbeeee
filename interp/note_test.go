package interp_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// A note is data of its shot, and changes nothing else of it.
func TestNotes(t *testing.T) {
	with := interpret("plan.pull", strings.Replace(chances, "  with stop f/2.8\n", "  note \"WATCH THE BOOM\"\n  with stop f/2.8\n  note \"It rains: keep 2 m off.\"\n", 1))
	without := interpret("plan.pull", chances)
	s, plain := with.Plan.Shots[0], without.Plan.Shots[0]
	if want := []string{"WATCH THE BOOM", "It rains: keep 2 m off."}; !slices.Equal(s.Notes, want) || plain.Notes != nil {
		t.Errorf("notes %q, want %q; without %q", s.Notes, want, plain.Notes)
	}
	if len(with.Findings) != len(without.Findings) {
		t.Errorf("%d findings with notes, %d without", len(with.Findings), len(without.Findings))
	}
	for i, p := range s.Pulls {
		if other := *plain.Pulls[i]; other.Start != p.Start || other.Land != p.Land || !reflect.DeepEqual(other.Sures, p.Sures) || other.Number != p.Number {
			t.Errorf("pull %d is from %v to %v with notes, from %v to %v without", p.Number, p.Start, p.Land, other.Start, other.Land)
		}
	}
}
