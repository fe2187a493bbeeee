package lists

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/interp/plan"
)

// turned returns the ferry with a camera that pans 20 degrees to the right and booms up
// while the shot runs. Where everyone then is follows by hand: ILKA at 1.7 m straight
// ahead is 1.7 cos 20 along the axis.
func turned(t *testing.T) *plan.Plan {
	t.Helper()
	p := interpret(t, ferry).Plan
	s := p.Shots[0]
	s.Optics.Rig = &plan.Rig{
		Pans:   []plan.Sweep{{Start: 2, End: 3, From: 0, To: 20, Smooth: true}},
		Slides: []plan.Slide{{Start: 8.5, End: 9, Z: 0.2}},
	}
	s.Operator = "SELM"
	s.Turns = []plan.Turn{{Kind: "pan", Target: "ILKA", Start: 2, End: 3, From: 0, To: 20, Peak: 37.5, Profile: "smooth"}}
	none := plan.None()
	s.Blocking = append(s.Blocking, plan.Blocking{Kind: "boom", Start: 8.5, End: 9, From: 0, To: 0.2, FromMM: none, ToMM: none})
	for _, u := range s.Subjects {
		v := s.ViewOf(u, 0)
		u.Seen = &plan.Seen{Tape: plan.Number(v.Tape()), Above: plan.Number(v.Above), OffAxis: plan.Number(v.OffAxis()), InFrame: []plan.Interval{{0, 2.5}, {4, 5}}}
	}
	s.Subjects[1].InFrame = []plan.Interval{{0, s.Duration}}
	return p
}

func TestTextTellsTurns(t *testing.T) {
	var out bytes.Buffer
	if err := WriteText(console.Screen{W: &out, Width: 80}, turned(t)); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	after := -1
	for _, want := range []string{
		"operator SELM", "   1  ILKA to", "      pan to ILKA, 20° right, 1 s, peak 38°/s · starts at 2 s · 10:00:02:00\n",
		"then ILKA: tape 1.7 m, focus 1.6 m, off axis 20°, out of the picture\n",
		"   2  A person,", "   3  ", "      boom 20 cm up, 0.5 s · starts at 8.5 s",
		"  frame\n", "    ILKA: in the picture 0 s to 2.5 s, 4 s to 5 s\n", "A person, whose name is longer than others: in the picture throughout\n",
	} {
		at := strings.Index(text, want)
		if at <= after {
			t.Errorf("%q is missing or not in order in\n%s", want, text)
		}
		after = max(after, at)
	}
}

func TestCSVTellsTurns(t *testing.T) {
	p := turned(t)
	var out bytes.Buffer
	if err := WriteCSV(&out, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	last := func(row int) string { return strings.Join(rows[row][len(rows[row])-len(rigColumns):], " ") }
	for row, want := range map[int]string{
		0: "tape_m above_m off_axis_deg in_frame",
		2: "   ", // goes to infinity
		3: "1.7 0 20 out",
	} {
		if got := last(row); got != want {
			t.Errorf("row %d ends in %q, want %q", row, got, want)
		}
	}
	if got := rows[1][len(rows[1])-1]; got != "edge" && got != "in" {
		t.Errorf("the first rack lands on somebody %q", got)
	}
	out.Reset()
	if err := WriteCSV(&out, interpret(t, ferry).Plan); err != nil || strings.Contains(out.String(), "tape_m") {
		t.Errorf("a camera that stands has columns of one that turns: %v", err)
	}
}

func TestJSONTellsTurns(t *testing.T) {
	text, err := json.Marshal(turned(t).Shots[0].Subjects[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"tape_m":1.7,"above_m":0,"off_axis_deg":0,"in_frame":[[0,2.5],[4,5]]`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%s is missing in %s", want, text)
		}
	}
	text, _ = json.Marshal(interpret(t, ferry).Plan.Shots[0])
	for _, not := range []string{"tape_m", "in_frame", "turns", "camera_path", "operator"} {
		if strings.Contains(string(text), not) {
			t.Errorf("a camera that stands has %s", not)
		}
	}
}
