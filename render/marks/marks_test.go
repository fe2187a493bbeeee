package marks

import (
	"slices"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// A mark has name and distance; the time only where a name has several places
// because somebody moves. Marks that nothing happens at are grey, and left out
// where they do not hold all through the shot.
func TestLabelsOfMarks(t *testing.T) {
	still := func() plans.Maker {
		return plans.New("1", "", 20).Put("NADIA", 1.7, 0.04).Put("LEDGER", 1, 0.02).Put("DOOR", 5.2, 0.3).Start("NADIA")
	}
	for _, tc := range []struct {
		name string
		shot *plan.Shot
		want []string // grey in brackets
	}{
		{"all stand", still().Rack("LEDGER", "", "", 1, 2).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m", "(DOOR, 5.2 m)"}},
		{"back again", still().Rack("LEDGER", "", "", 1, 2).Rack("NADIA", "", "", 4, 5).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m", "(DOOR, 5.2 m)"}},
		{"one walks", still().Rack("LEDGER", "", "", 1, 2).Walk("NADIA", 3.2, 3, 5).Rack("NADIA", "", "", 6, 7).Rack("LEDGER", "", "", 9, 10).Shot,
			[]string{"LEDGER, 1 m", "NADIA, 1.7 m, 0 s", "NADIA, 3.2 m, 7 s", "(DOOR, 5.2 m)"}},
		{"one walks, and nobody looks", still().Rack("LEDGER", "", "", 1, 2).Walk("DOOR", 3.2, 3, 5).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m"}},
		{"dolly", still().Dolly(0.2, 2, 4).Rack("LEDGER", "", "", 5, 6).Shot, []string{"LEDGER, 80 cm", "NADIA, 1.7 m"}},
		{"infinity", still().Rack("inf", "", "", 1, 2).Shot, []string{"(LEDGER, 1 m)", "NADIA, 1.7 m", "(DOOR, 5.2 m)", "∞"}},
	} {
		var got []string
		for _, m := range Of(tc.shot) {
			label := m.Label
			if m.Aside() {
				label = "(" + label + ")"
			}
			got = append(got, label)
		}
		if !slices.Equal(got, tc.want) {
			t.Errorf("%s: %q, want %q", tc.name, got, tc.want)
		}
	}
}
