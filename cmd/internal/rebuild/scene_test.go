package rebuild

import (
	"slices"
	"strings"
	"testing"
)

// stagedKit is the kit of the staged plan.
const stagedKit = `camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
`

// stagedPlan has a scene with three set-ups, and one with a set-up of its own.
const stagedPlan = `use "kit.pull"
rate 24
watched on 12 m screen from 18 m
with camera A, lens "75", stop f/4
scene "The ticket window"
  mark GATE at 40 cm right, 1.3 m upstage
  subject MARRIT at 0 m right, eyes 1.5 m, deep 4 cm
  subject OSKEL at GATE, eyes 1.6 m, deep 4 cm
  MARRIT: "Last boat.", on 1 s, lasting 1 s
  OSKEL: "One way.", on 3 s, lasting 1 s
shot 12A
  covers all
  camera at 80 cm right, 2.2 m downstage, 1.5 m high, aims at MARRIT and OSKEL
  measured MARRIT 2.36 m
  start on MARRIT
  rack to OSKEL, landing on "one", over 1.2 s
shot 12B
  covers all
  camera at 1 m right, 1.3 m upstage, 1.5 m high, aims at MARRIT
  start on MARRIT
shot 12C
  covers all
  matches 12B
  camera at 50 cm right, 35 cm downstage, 1.6 m high, aims at OSKEL
  start on OSKEL
scene "The boat"
  subject ILKA at 0 m right, eyes 1.6 m
  ILKA: "There it goes.", on 1 s, lasting 1 s
shot 13A
  covers all
  camera at 2 m downstage, 1.6 m high, aims at ILKA
  start on ILKA
`

// A save in a scene has the shots under it drawn anew that it changes, and no others; one
// that only shifts lines has none. What came to be held, or not to be, is said at the end.
func TestASaveInAScene(t *testing.T) {
	first, before := drawings(t, stagedPlan, stagedKit, nil)
	for _, d := range first.Findings {
		if d.Severity.String() == "error" {
			t.Fatalf("line %d: %s", d.Range.Start.Line, d.Message)
		}
	}
	for _, c := range []struct {
		name, old, new string
		drawn          []string
		last           string // what is said last
	}{
		{"nothing", "", "", nil, ""},
		{"a comment above", "scene \"The ticket window\"", "# as agreed\nscene \"The ticket window\"", nil, ""},
		{"a mark", "GATE at 40 cm right", "GATE at 90 cm right", []string{"12A", "12B", "12C"}, ""},
		{"a line", "MARRIT: \"Last boat.\", on 1 s", "MARRIT: \"Last boat.\", on 1.2 s", []string{"12A", "12B", "12C"}, ""},
		{"a camera", "camera at 50 cm right, 35 cm downstage", "camera at 60 cm right, 35 cm downstage", []string{"12C"}, ""},
		{"the other scene", "ILKA at 0 m right", "ILKA at 10 cm right", []string{"13A"}, ""},
		{"a stop", "  matches 12B\n", "  matches 12B\n  with stop f/1.8\n", []string{"12C"}, ""},
		{"a camera that looks past ILKA", "aims at ILKA", "aims at ILKA, 40 deg left", []string{"13A"}, "scene “The boat”: held by none any more: ILKA on “There it goes.”"},
	} {
		text := strings.Replace(stagedPlan, c.old, c.new, 1)
		now, after := drawings(t, text, stagedKit, before)
		var drawn []string
		for _, s := range now.Plan.Shots {
			if after[s.ID][0].shot != before[s.ID][0].shot {
				drawn = append(drawn, s.ID)
			}
		}
		if !slices.Equal(drawn, c.drawn) {
			t.Errorf("%s: drawn anew are %v, want %v", c.name, drawn, c.drawn)
		}
		said := says(&Plan{Latest: first.Plan, Good: first.Plan, GoodFindings: first.Findings}, &Plan{Latest: now.Plan, Good: now.Plan, GoodFindings: now.Findings})
		if (len(said) > 0) != (len(c.drawn) > 0) {
			t.Errorf("%s: said is %q", c.name, said)
		}
		if c.last != "" && said[len(said)-1] != c.last {
			t.Errorf("%s: said is %q, want at the end %q", c.name, said, c.last)
		}
	}
}
