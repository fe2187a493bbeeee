// Tests of cuts that no cutting room would write.

package interp_test

import (
	"fmt"
	"strings"
	"testing"
)

// otioOf writes a timeline of one clip, called 1, with some numbers as they stand.
func otioOf(start, frames, effect string) string {
	at := func(value string) string {
		return fmt.Sprintf(`{"OTIO_SCHEMA": "RationalTime.1", "value": %s, "rate": 24}`, value)
	}
	return fmt.Sprintf(`{"OTIO_SCHEMA": "Timeline.1", "global_start_time": %s, "tracks": {"OTIO_SCHEMA": "Stack.1", "children": [
{"OTIO_SCHEMA": "Track.1", "kind": "Video", "children": [
{"OTIO_SCHEMA": "Clip.2", "name": "1", "effects": [%s], "source_range": {"OTIO_SCHEMA": "TimeRange.1", "start_time": %s, "duration": %s}}]}]}}`,
		at("86400"), effect, at(start), at(frames))
}

// Whatever a cut has for numbers, names and events, a fault is told at its place, and no
// shot lasts longer than a day.
func TestSenselessCuts(t *testing.T) {
	event := func(more string) string {
		return "001 A V C 10:00:00:00 10:00:05:00 01:00:00:00 01:00:05:00\n* FROM CLIP NAME: 1\n" + more
	}
	warp := func(speed string) string {
		return `{"OTIO_SCHEMA": "LinearTimeWarp.1", "time_scalar": ` + speed + `}`
	}
	const none = "plan.pull: the cut has no clips"
	for _, c := range []struct {
		file, text string
		pieces     int
		told       string // each finding that is looked for, with its file
	}{
		{"cut.edl", "", 0, none},
		{"cut.edl", "TITLE: X\n\n", 0, none},
		{"cut.edl", "\xff\xfeT\x00", 0, none},
		{"cut.edl", event(""), 1, ""},
		{"cut.edl", "\ufeff" + strings.ReplaceAll(event(""), "\n", "\r\n"), 1, ""},
		{"cut.edl", event(event("")), 1, ""}, // the same event twice
		{"cut.edl", event(strings.Replace(event(""), "001", "002", 1)), 1, "cut.edl:3: event 002 begins 120 frames before event 001 ends"},
		{"cut.edl", event("M2 A 999999999999.0 10:00:00:00\n"), 1, "cut.edl:3: “999999999999.0” is no number of frames a second"},
		{"cut.edl", event("M2 A NaN 10:00:00:00\n"), 1, "cut.edl:3: “NaN” is no number of frames a second"},
		{"cut.edl", strings.Replace(event("M2 A 9000.0 00:00:00:00\n"), "01:00:00:00 01:00:05:00", "00:00:00:00 23:59:59:00", 1), 0,
			`cut.edl:1: the times of "1" go beyond a day, plan.pull: no clip of the cut is called 1`},
		{"cut.otio", "", 0, "cut.otio:1: the file ends in the middle, " + none},
		{"cut.otio", otioOf("0", "120", ""), 1, ""},
		{"cut.otio", otioOf("1e300", "1e300", ""), 0, `cut.otio:3: the times of "1" go beyond a day, plan.pull: no clip of the cut is called 1`},
		{"cut.otio", otioOf("0", "1000000000000000000", ""), 0, `cut.otio:3: the times of "1" go beyond a day, plan.pull: no clip of the cut is called 1`},
		{"cut.otio", otioOf("-1e12", "120", ""), 0, `cut.otio:3: the times of "1" go beyond a day, plan.pull: no clip of the cut is called 1`},
		{"cut.otio", otioOf("0", "120", warp("99999")), 0, `cut.otio:3: the times of "1" go beyond a day, plan.pull: no clip of the cut is called 1`},
		{"cut.otio", otioOf("0", "120", warp("1e99")), 1, ""},
		{"cut.otio", otioOf("0", "-120", ""), 0, none},
	} {
		res := interpret("plan.pull", inCut(fmt.Sprintf("edit %q\n", c.file), "cue a on 1 s\n"), c.file, c.text)
		var told []string
		for _, d := range res.Findings {
			switch d.Code {
			case "shot-not-in-edit":
				told = append(told, d.Range.File+": "+d.Message)
			case "too-large", "bad-speed", "bad-json", "events-overlap":
				told = append(told, fmt.Sprintf("%s:%d: %s", d.Range.File, d.Range.Start.Line, d.Message))
			}
		}
		s := res.Plan.Shots[0]
		if got := strings.Join(told, ", "); got != c.told || len(s.Pieces) != c.pieces || s.Duration > 24*3600 {
			t.Errorf("%d pieces, %v s, told %q, want %d and %q of\n%.200s", len(s.Pieces), s.Duration, got, c.pieces, c.told, c.text)
		}
	}
}
