// Tests of where the time of a shot begins that starts in another take.

package interp_test

import (
	"fmt"
	"testing"

	"pullscore/interp/plan"
)

// A shot whose other take comes first begins with that: no piece lies before 0, its
// length counts all of them, and record and source of every time are those of the piece.
func TestOtherTakeFirst(t *testing.T) {
	list := events([4]any{"1 TK 3", "A001", 60, 64}, [4]any{"1 TK 4", "A002", 180, 186})
	words := srt(1., 3., "Where is the rope?", 5., 7., "On the quay, by the lamp.")
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\"\nvoice OTTO\n",
		"NORA: \"Where is the rope?\"\nOTTO: \"On the quay, by the lamp.\"\ncue a on 01:00:02:00\ncue b on 6 s\n"), "cut.edl", list, "cut.srt", words)
	s := res.Plan.Shots[0]
	if len(s.Pieces) != 2 || s.Pieces[0].From != 0 || s.Pieces[0].To != 4 || s.Pieces[1].From != 4 || s.Pieces[1].To != 10 || s.Duration != 10 {
		t.Fatalf("it lasts %v, pieces %+v", s.Duration, s.Pieces)
	}
	if s.BeginsAt != "01:00:00:00" {
		t.Errorf("it begins at %s", s.BeginsAt)
	}
	if len(s.Lines) != 2 || !nearly(s.Lines[0].Start, 1) || !nearly(s.Lines[1].Start, 5) {
		t.Errorf("%+v", s.Lines)
	}
	for i, want := range []string{"2 whole 01:00:02:00 10:01:02:00", "6 whole 01:00:06:00 10:03:02:00"} {
		if c := s.Cues[i]; sayCue(c) != want {
			t.Errorf("cue %s: %s, want %s", c.Name, sayCue(c), want)
		}
	}
}

// sayCue says when a cue is, and where that lies in the cut and in its source.
func sayCue(c plan.Cue) string {
	return fmt.Sprintf("%v %s %s %s", c.T, c.State, c.StartRecord, c.StartSource)
}
