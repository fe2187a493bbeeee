package render

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/optics/ring"
)

// feetLens is a shot with a lens that is engraved in feet.
func feetLens(t *testing.T) *plan.Shot {
	t.Helper()
	foot := plan.Inch * plan.InchesPerFoot
	law, err := ring.FromMarks([]ring.Mark{
		{Distance: 20 * plan.Inch, Angle: 0}, {Distance: 2 * foot, Angle: 62}, {Distance: 3 * foot, Angle: 150},
		{Distance: 20 * foot, Angle: 290}, {Distance: math.Inf(1), Angle: 310},
	}, 310)
	if err != nil {
		t.Fatal(err)
	}
	s := threeRacks()
	s.Optics.Ring = law
	s.Optics.Engraved = []string{`1'8"`, "2'", "3 ft", "20'", "inf"}
	return s
}

// A tape is laid onto marks that say what it says: as they are written, with
// the plan's units beside them where those are others.
func TestMarksOfTheLensAreAsEngraved(t *testing.T) {
	type pair struct{ text, other string }
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
		s := feetLens(t)
		s.Imperial = tc.imperial
		tc.change(s)
		got := lensMarks(s)
		if len(got) != len(tc.want) {
			t.Fatalf("%s: %d marks, want %d", tc.name, len(got), len(tc.want))
		}
		for i, want := range tc.want {
			if got[i].text != want.text || got[i].other != want.other {
				t.Errorf("%s: %q (%q), want %q (%q)", tc.name, got[i].text, got[i].other, want.text, want.other)
			}
		}
	}
}

func TestStripsAndCoversHaveTheEngravedMarks(t *testing.T) {
	s := feetLens(t)
	pages := Strip(s, Options{})
	for _, p := range pages {
		checkPage(t, "strip", p)
	}
	for _, want := range []string{"closest 1′8″ (50.8 cm)", "2′ (61 cm)", "20′ (6.1 m)"} {
		if text := textOf(pages); !strings.Contains(text, want) {
			t.Errorf("the strip has no %q: %q", want, text)
		}
	}
	want := "1′8″ (50.8 cm) at 0°, 2′ (61 cm) at 62°, 3 ft (91.4 cm) at 150°, 20′ (6.1 m) at 290°, ∞ at 310°"
	if got := marksOf(s, false); got != want {
		t.Errorf("the cover has %q, want %q", got, want)
	}
}
