package unplanned

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/interp/edit"
	"pullscore/interp/takes/recorded"
	"pullscore/lang/ale"
	"pullscore/lang/timecode"
)

// A recording is of the one clip in whose source it lies.
func TestShow(t *testing.T) {
	rate, err := timecode.ParseRate("24")
	if err != nil {
		t.Fatal(err)
	}
	const second, minute = 24, 60 * 24
	clip := func(name, reel string, source, record int64) edit.Piece {
		return edit.Piece{Clip: edit.Clip{Name: name, Reel: reel, SourceIn: source, RecordIn: record, RecordOut: record + 5*second, Speed: 1}}
	}
	three, four := clip("27A-3", "A1", 10*minute, 0), clip("27A-4", "A1", 20*minute, 5*second)
	again, other := clip("27A-3.mov", "a1", 10*minute+8*second, 10*second), clip("27A-3", "B1", 10*minute, 15*second)
	row := ale.Row{Tape: "A1", Start: 2 * minute, End: 10*minute + 9*second, Rate: rate}
	for _, c := range []struct {
		name  string
		found []edit.Piece
		rows  []ale.Row
		first int64
		want  string
	}{
		{"of two takes one", []edit.Piece{three, four}, nil, 20*minute + 1, "27A-4"},
		{"twice in the cut", []edit.Piece{three, again}, nil, 10 * minute, "27A-3 27A-3.mov"},
		{"a minute around it", []edit.Piece{three}, nil, 9*minute - 1, "27A-3"},
		{"more than that", []edit.Piece{three}, nil, 8 * minute, "the recording is 00:08:00:00 to 00:08:00:01; 27A-3 is source 00:10:00:00 to 00:10:05:00"},
		{"in the row of a list of clips", []edit.Piece{three}, []ale.Row{row}, 8 * minute, "27A-3"},
		{"of two cameras", []edit.Piece{three, other}, nil, 10 * minute, "the recording may be of 27A-3 of reel A1, or 27A-3 of reel B1: name one of them, or its reel, with --clip"},
	} {
		at := &Place{Rate: rate}
		frames := []recorded.Sample{{Number: c.first, Metres: 2}, {Number: c.first + 1, Metres: 2}}
		err := at.Show(c.found, c.rows, frames)
		var names []string
		for _, piece := range at.Plan("clip", frames).Shots[0].Pieces {
			names = append(names, piece.Clip)
		}
		got := strings.Join(names, " ")
		if err != nil {
			got = fmt.Sprint(err)
		}
		if !strings.HasPrefix(got, c.want) || at.Listed != (err == nil) {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}
