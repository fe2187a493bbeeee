package diff

import (
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
)

// What a new cut does to the racks of a scene: one is out of it, one is earlier, and back
// again the other way round.
func TestRecut(t *testing.T) {
	read := func(cut string) State {
		res, err := interp.Read("../../../examples/ferry/"+cut+"/ferry.pull", interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return State{Name: cut, Plan: res.Plan, Findings: res.Findings}
	}
	one, three := read("cut-1"), read("cut-3")
	for _, c := range []struct {
		before, after State
		want          []string
	}{
		// By hand: 2.75 s are taken out before the second rack, which are 66 frames.
		{one, three, []string{"27A rack 1 to PEVIN is out of the cut", "27A rack 2 to CHART: 66 frames (2.75 s) earlier in the cut"}},
		{three, one, []string{"27A rack 1 to PEVIN is in the cut again", "27A rack 2 to CHART: 66 frames (2.75 s) later in the cut"}},
	} {
		var racks []string
		for _, line := range Compare(c.before, c.after).Lines() {
			if strings.HasPrefix(line, "27A rack") {
				racks = append(racks, line)
			}
		}
		if !slices.Equal(racks, c.want) {
			t.Errorf("%s to %s: %q", c.before.Name, c.after.Name, racks)
		}
	}
	run := []Pull{
		{Change: Changed, Kind: "rack", Number: 3, Details: []Detail{{Name: "in_cut", Says: "out of the cut"}}},
		{Change: Changed, Kind: "rack", Number: 4, Details: []Detail{{Name: "in_cut", Says: "out of the cut"}, {Name: "land_s", Says: "later"}}},
	}
	if got := (Shot{Change: Changed, Pulls: run}).PullPhrases(); !slices.Equal(got, []string{"pulls 3 to 4 are out of the cut"}) {
		t.Errorf("%q", got)
	}
}
