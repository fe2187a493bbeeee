package lists

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pullscore/cmd/internal/console"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/interp/testing/staged"
)

// The table of a staged scene: when each run begins, and a column for each set-up.
func TestStagedCoverage(t *testing.T) {
	var out bytes.Buffer
	if err := WriteCoverage(console.Screen{W: &out, Width: 100}, coverage.Of(staged.TwoHander().Plan, false)...); err != nil {
		t.Fatal(err)
	}
	const want = `The ticket window

                                           12A 35 mm  12B 75 mm  12C 75 mm
  0 s  MARRIT  Last boat. There and back?  sharp      sharp      out
  3 s  OSKEL   One way.                    sharp      out        sharp
5.4 s  MARRIT  You live on this side.      sharp      sharp      out
7.2 s  OSKEL   I                           faint      out        sharp
7.3 s          did. Until                  rack       out        sharp
8.2 s          the letter came.            sharp      out        sharp

Held by no set-up: nothing.
Held by one set-up alone, of several that have the words: OSKEL “I did. Until” (7.2 s, by 12C).
`
	if got := out.String(); !strings.HasPrefix(got, want) {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// What no set-up covers has a row too, who is only heard is told, and the cut has stars.
func TestStagedCoverageOfWhatNobodyHas(t *testing.T) {
	st := staged.TwoHander()
	st.Shots = st.Shots[:2]
	for _, s := range st.Shots {
		s.Covers[1] = 7
	}
	st.Scene.Lines[1].Off = true
	st.Cut("12B", 0)
	var out bytes.Buffer
	if err := WriteCoverage(console.Screen{W: &out, Width: 100}, coverage.Of(st.Plan, true)...); err != nil {
		t.Fatal(err)
	}
	for _, row := range []string{
		"  0 s  MARRIT       Last boat. There and back?     sharp      sharp*\n",
		"  3 s  OSKEL (off)  One way.                       sharp      out*\n",
		"7.2 s  OSKEL        I did. Until the letter came.\n",
		"Held by no set-up: OSKEL “I did. Until the letter came.” (7.2 s).\n",
		"The cut (*) holds all of the 10 words that it shows with their speaker.\n",
	} {
		if !strings.Contains(out.String(), row) {
			t.Errorf("no %q in\n%s", row, &out)
		}
	}
}

// More than eight set-ups stand in blocks of eight, with the rows again.
func TestManyStagedSetups(t *testing.T) {
	st := staged.TwoHander()
	home := st.Shots[0].Home
	for i := range 17 {
		st.SetUp(fmt.Sprint("13", string(rune('A'+i))), 35, home, 0, 10.6)
	}
	var out bytes.Buffer
	if err := WriteCoverage(console.Screen{W: &out, Width: 200}, coverage.Of(st.Plan, false)...); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(out.String(), "One way."); n != 3 {
		t.Errorf("the rows stand %d times:\n%s", n, &out)
	}
}

// In JSON a run of a staged scene has its times, and its cells have none; list has the
// same runs.
func TestStagedCoverageJSON(t *testing.T) {
	p := staged.TwoHander().Plan
	type run struct {
		Who, Text string
		Start     *float64 `json:"start_s"`
		End       *float64 `json:"end_s"`
		Cells     []map[string]any
	}
	var listed struct {
		Scenes []struct {
			Title    string
			Setups   []string
			Coverage []run
		}
	}
	var out bytes.Buffer
	if err := WriteJSON(&out, p, nil); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(out.Bytes(), &listed); err != nil {
		t.Fatal(err)
	}
	if len(listed.Scenes) != 1 || listed.Scenes[0].Title != "The ticket window" || len(listed.Scenes[0].Setups) != 3 {
		t.Fatalf("scenes %+v", listed.Scenes)
	}
	runs := listed.Scenes[0].Coverage
	if len(runs) != 7 || runs[1].Start == nil || *runs[1].Start != 3 || runs[1].End == nil || *runs[1].End != 3.9 || runs[1].Who != "OSKEL" {
		t.Fatalf("runs %+v", runs)
	}
	cell := runs[1].Cells[0]
	if cell["shot"] != "12A" || cell["frame"] != "in" || cell["focus"] != "sharp" || cell["held"] != true || cell["others_sharp"] == nil {
		t.Errorf("cell %v", cell)
	}
	if _, ok := cell["start_s"]; ok {
		t.Errorf("a cell with a time: %v", cell)
	}
	own, err := json.Marshal(coverage.Of(p, false)[0].Coverage)
	if err != nil {
		t.Fatal(err)
	}
	inList, err := json.Marshal(NewListing(p, nil).Scenes[0].Coverage)
	if err != nil || !bytes.Equal(own, inList) {
		t.Errorf("list has\n%s\ncoverage\n%s", inList, own)
	}
}

// A row of CSV has the time of the shot and that of the scene.
func TestStagedCoverageCSV(t *testing.T) {
	st := staged.New("Heard", 8)
	st.Person("MARRIT", 0, 0, 1.5)
	st.Line("MARRIT", "Coming.", 3, 4)
	st.Line("MARRIT", "Wait.", 7, 8)
	st.SetUp("1", 50, staged.Towards(0, 3, 1.5, 0, 0, 1.5), 2, 6)
	var out bytes.Buffer
	if err := WriteCoverageCSV(&out, coverage.Of(st.Plan, false)...); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	for _, c := range []struct {
		row        int
		name, want string
	}{
		{1, "plan", "Made by hand"}, {1, "scene", "Heard"}, {1, "shot", "1"}, {1, "start_s", "1"}, {1, "end_s", "2"}, {1, "scene_start_s", "3"}, {1, "scene_end_s", "4"}, {1, "off", "no"},
		{2, "shot", ""}, {2, "start_s", ""}, {2, "scene_start_s", "7"}, {2, "text", "Wait."}, {2, "held", "no"},
	} {
		if got := rows[c.row][column[c.name]]; got != c.want {
			t.Errorf("row %d, %s: %q, want %q", c.row, c.name, got, c.want)
		}
	}
	if out.Reset(); WriteCoverageCSV(&out, coverage.Of(&plan.Plan{}, false)...) != nil || strings.Contains(out.String(), "scene") {
		t.Errorf("a plan without scenes: %s", &out)
	}
}
