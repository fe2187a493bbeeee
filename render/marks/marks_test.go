package marks

import (
	"math"
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

// A mark lies half of the play to either side of the mean where the ring was marked both
// ways and something lands there, and never beyond a stop that holds the ring.
func TestSidesOfAMark(t *testing.T) {
	for _, tc := range []struct {
		name         string
		change       func(*plan.Ring)
		ledger, atIn [2]float64 // from where the mark lies, degrees
	}{
		{"both ways", func(*plan.Ring) {}, [2]float64{-1.5, 1.5}, [2]float64{-1.5, 0}},
		{"slips", func(r *plan.Ring) { r.Ends = "slip" }, [2]float64{-1.5, 1.5}, [2]float64{-1.5, 1.5}},
		{"one way", func(r *plan.Ring) { r.Marked = "inf" }, [2]float64{}, [2]float64{}},
		{"play not known", func(r *plan.Ring) { r.Play = plan.None() }, [2]float64{}, [2]float64{}},
	} {
		s := plans.New("1", "", 20).Put("NADIA", 1.7, 0.04).Put("LEDGER", 1.2, 0.02).Put("DOOR", 5.2, 0.3).Start("NADIA").
			Rack("LEDGER", "", "", 1, 2).Rack("inf", "", "", 4, 5).Shot
		s.Ring = plans.Play(3)
		tc.change(s.Ring)
		want := map[string][2]float64{"LEDGER": tc.ledger, "NADIA": tc.ledger, "∞": tc.atIn, "DOOR": {}}
		list := Of(s)
		if len(list) != len(want) {
			t.Fatalf("%s: %d marks, want %d", tc.name, len(list), len(want))
		}
		for _, m := range list {
			for i, off := range want[m.Name] {
				if got := m.Sides[i] - m.Deg; math.Abs(got-off) > 1e-9 {
					t.Errorf("%s: side %d of %s lies %v deg off, want %v", tc.name, i, m.Name, got, off)
				}
			}
		}
	}
}
