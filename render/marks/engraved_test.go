package marks

import (
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// A tape is laid onto marks that say what it says: as they are written, with
// the plan's units beside them where those are others.
func TestMarksOfTheLensAreAsEngraved(t *testing.T) {
	type pair struct{ Text, Other string }
	for _, tc := range []struct {
		name     string
		change   func(*plan.Shot)
		want     []pair
		imperial bool
	}{
		{"metric plan", func(*plan.Shot) {}, []pair{{"closest 1′8″", "50.8 cm"}, {"∞", ""}, {"2′", "61 cm"}, {"3 ft", "91.4 cm"}, {"20′", "6.1 m"}}, false},
		{"imperial plan", func(*plan.Shot) {}, []pair{{"closest 1′8″", ""}, {"∞", ""}, {"2′", ""}, {"3 ft", ""}, {"20′", ""}}, true},
		{"named", func(s *plan.Shot) { s.Optics.Engraved[1] = "reach" }, []pair{{"closest 1′8″", "50.8 cm"}, {"∞", ""}, {"61 cm", ""}, {"3 ft", "91.4 cm"}, {"20′", "6.1 m"}}, false},
		{"computed", func(s *plan.Shot) { s.Optics.Marked = false }, []pair{{"closest 50.8 cm", ""}, {"∞", ""}}, false},
	} {
		s := plans.FeetLens(t)
		s.Imperial = tc.imperial
		tc.change(s)
		got := OfLens(s)
		if len(got) != len(tc.want) {
			t.Fatalf("%s: %d marks, want %d", tc.name, len(got), len(tc.want))
		}
		for i, want := range tc.want {
			if got[i].Text != want.Text || got[i].Other != want.Other {
				t.Errorf("%s: %q (%q), want %q (%q)", tc.name, got[i].Text, got[i].Other, want.Text, want.Other)
			}
		}
	}
}

// A mark that the kit gives is measured; where closest or infinity lies by default, and what
// a law puts on the ring, is computed.
func TestMeasuredMarks(t *testing.T) {
	s := plans.ThreeRacks()
	count := func() (measured, all int) {
		for _, m := range OfLens(s) {
			if all++; m.Measured {
				measured++
			}
		}
		return measured, all
	}
	if measured, all := count(); measured != 5 || all != 5 {
		t.Errorf("%d of %d marks are measured, want all 5", measured, all)
	}
	s.Ring = &plan.Ring{Kind: plan.Measured}
	for _, m := range s.Optics.Ring.Marks() {
		s.Ring.Marks = append(s.Ring.Marks, plan.RingMark{Distance: plan.Number(m.Distance), Deg: plan.Number(m.Angle), Default: m.Angle == 310})
	}
	if measured, all := count(); measured != 4 || all != 5 {
		t.Errorf("with infinity by default %d of %d marks are measured, want 4 of 5", measured, all)
	}
	s.Optics.Marked = false
	if measured, all := count(); measured != 0 || all != 2 {
		t.Errorf("by law %d of %d marks are measured, want 0 of 2", measured, all)
	}
}
