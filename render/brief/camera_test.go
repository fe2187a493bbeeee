package brief

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/testing/plans"
)

// A row for every turn and every way of the camera, in the order of their starts, and
// none for a camera on its axis.
func TestCameraTable(t *testing.T) {
	s := plans.AllWays()
	s.Operator = "INES"
	table := cameraTable(s)
	want := []string{"pan with PEVIN", "track 60 cm right", "tilt, 6° down", "boom 45 cm down", "pan to HANDS", "dolly 40 cm in", "tilt, 10° up"}
	if len(table.Rows) != len(want) {
		t.Fatalf("%d rows, want %d: %v", len(table.Rows), len(want), table.Rows)
	}
	for i, row := range table.Rows {
		if !strings.HasPrefix(row[0], want[i]) {
			t.Errorf("row %d is %q, want %q", i, row[0], want[i])
		}
	}
	if len(table.Sentences) != 1 || table.Sentences[0] != "INES pans and tilts." {
		t.Errorf("it says %q", table.Sentences)
	}
	for _, plain := range []*plan.Shot{plans.WalkAndDolly(), plans.OneRack()} {
		if len(cameraTable(plain).Rows)+len(pictureTable(plain).Rows) > 0 {
			t.Errorf("%s has a table of its camera", plain.ID)
		}
	}
}

// The tape is straight to the subject, the focus its part along the axis.
func TestPictureTable(t *testing.T) {
	s := plans.PanAndRack()
	for _, u := range s.Subjects {
		seen := plan.Seen{}
		for _, in := range s.Framed(u) {
			seen.InFrame = append(seen.InFrame, plan.Interval{plan.Number(in[0]), plan.Number(in[1])})
		}
		u.Seen = &seen
	}
	table := pictureTable(s)
	if len(table.Rows) != 3 || len(table.Columns) != 5 {
		t.Fatalf("%v, %v", table.Columns, table.Rows)
	}
	// LETTER: 1.4 m along and 62 cm aside are 1.53 m, 23.9 degrees off.
	if got := strings.Join(table.Rows[1][:4], "; "); got != "LETTER; 1.53 m; 1.4 m; 23.9°" {
		t.Errorf("LETTER is at %q", got)
	}
	if got := table.Rows[2][4]; strings.Contains(got, "picture") || !strings.HasSuffix(got, " to 10 s") {
		t.Errorf("DOOR is %q", got)
	}
}
