package render

import (
	"slices"
	"testing"

	"pullscore/interp/plan"
)

// A mark has name and distance; the time only where a name has several places
// because somebody moves. Marks that nothing happens at are grey, and left out
// where they do not hold all through the shot.
func TestLabelsOfMarks(t *testing.T) {
	still := func() maker {
		return newShot("1", "", 20).subject("NADIA", 1.7, 0.04).subject("LEDGER", 1, 0.02).subject("DOOR", 5.2, 0.3).start("NADIA")
	}
	for _, tc := range []struct {
		name string
		shot *plan.Shot
		want []string // grey in brackets
	}{
		{"all stand", still().rack("LEDGER", "", "", 1, 2).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m", "(DOOR, 5.2 m)"}},
		{"back again", still().rack("LEDGER", "", "", 1, 2).rack("NADIA", "", "", 4, 5).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m", "(DOOR, 5.2 m)"}},
		{"one walks", still().rack("LEDGER", "", "", 1, 2).walk("NADIA", 3.2, 3, 5).rack("NADIA", "", "", 6, 7).rack("LEDGER", "", "", 9, 10).Shot,
			[]string{"LEDGER, 1 m", "NADIA, 1.7 m, 0 s", "NADIA, 3.2 m, 7 s", "(DOOR, 5.2 m)"}},
		{"one walks, and nobody looks", still().rack("LEDGER", "", "", 1, 2).walk("DOOR", 3.2, 3, 5).Shot, []string{"LEDGER, 1 m", "NADIA, 1.7 m"}},
		{"dolly", still().dolly(0.5, 2, 4).rack("LEDGER", "", "", 5, 6).Shot, []string{"LEDGER, 50 cm", "NADIA, 1.7 m"}},
		{"infinity", still().rack("inf", "", "", 1, 2).Shot, []string{"(LEDGER, 1 m)", "NADIA, 1.7 m", "(DOOR, 5.2 m)", "∞"}},
	} {
		var got []string
		for _, m := range ringMarks(tc.shot) {
			label := m.label
			if m.aside() {
				label = "(" + label + ")"
			}
			got = append(got, label)
		}
		if !slices.Equal(got, tc.want) {
			t.Errorf("%s: %q, want %q", tc.name, got, tc.want)
		}
	}
}
