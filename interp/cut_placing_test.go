// Tests of lines that lie across a cut, and of pieces that stand by their lines.

package interp_test

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// A cutEvent is an event of a list at 24 frames a second: record and source from the hour,
// in seconds.
type cutEvent struct {
	channels, name, reel string
	record, source, long float64
}

// listOf writes a list.
func listOf(events ...cutEvent) string {
	var b strings.Builder
	b.WriteString("TITLE: LAID\nFCM: NON-DROP FRAME\n")
	label := func(hour int, s float64) string {
		fr := int(s*24 + 0.5)
		return fmt.Sprintf("%02d:%02d:%02d:%02d", hour, fr/24/60, fr/24%60, fr%24)
	}
	for i, e := range events {
		fmt.Fprintf(&b, "%03d  %-8s %-5s C        %s %s %s %s\n* FROM CLIP NAME: %s\n", i+1, e.reel, e.channels,
			label(10, e.source), label(10, e.source+e.long), label(1, e.record), label(1, e.record+e.long), e.name)
	}
	return b.String()
}

// laidPlan is a plan of five lines, 1 s apart by the plan's clock at first.
const laidPlan = `NORA: "You kept the lamp."
OTTO: "It was never mine to keep."
pause 2 s
NORA: "Then whose name is on the paper?"
OTTO: "My brother wrote it in winter."
NORA: "Put it out."
`

// laid interprets laidPlan with a list and subtitles.
func laid(list, words string) *plan.Shot {
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\nvoice OTTO\n", laidPlan), "cut.edl", list, "cut.srt", words)
	return res.Plan.Shots[0]
}

// A line over the end of a piece is whole: where the list has only the picture, it stands
// in the piece that shows most of it; where the list has the sound, in the source of that;
// and where a subtitle begins at the cut, each part stands in its own piece.
func TestLineAcrossACut(t *testing.T) {
	// Shot time 0 to 6 s and 20 to 30 s; the cut lies at 6 s of the record.
	picture := []cutEvent{{"V", "1", "A1", 0, 0, 6}, {"V", "1", "A1", 6, 20, 10}}
	with := func(more ...cutEvent) string { return listOf(append(more, picture...)...) }
	const line = "It was never mine to keep."
	early := srt(1., 3., "You kept the lamp.", 5.4, 8.4, line, 10., 11., "Then whose name is on the paper?")
	late := srt(1., 3., "You kept the lamp.", 4., 6.6, line, 10., 11., "Then whose name is on the paper?")
	parted := srt(1., 3., "You kept the lamp.", 4., 6., "It was never", 6., 8.4, "mine to keep.", 10., 11., "Then whose name is on the paper?")
	for name, c := range map[string]struct {
		list, words string
		start, end  float64
	}{
		"its sound is early":               {with(), early, 19.4, 22.4},
		"its sound is late":                {with(), late, 4, 6.6},
		"a subtitle begins at the cut":     {with(), parted, 4, 22.4},
		"a subtitle begins elsewhere":      {with(), strings.ReplaceAll(parted, "06,000", "05,000"), 18, 22.4},
		"the list has its early sound":     {with(cutEvent{"A", "1", "A1", 0, 0, 5.25}, cutEvent{"A", "1", "A1", 5.25, 19.25, 10.75}), early, 19.4, 22.4},
		"the sound is cut in the line":     {with(cutEvent{"A", "1", "A1", 0, 0, 6}, cutEvent{"A", "1", "A1", 6, 20, 10}), early, 5.4, 22.4},
		"the list says it is of the first": {with(cutEvent{"A2", "1", "A1", 0, 0, 9}, cutEvent{"A2", "1", "A1", 9, 23, 7}), early, 5.4, 8.4},
		"its sound has been moved":         {with(cutEvent{"A", "1", "A1", 5, 20, 5}), early, 20.4, 23.4},
		"the sound is of another clip":     {with(cutEvent{"A", "2", "A1", 0, 0, 16}), early, 19.4, 22.4},
		"picture and sound are one event":  {strings.ReplaceAll(with(), " V ", " B "), early, 5.4, 22.4},
	} {
		l := laid(c.list, c.words).Lines[1]
		if !nearly(l.Start, c.start) || !nearly(l.End, c.end) {
			t.Errorf("%s: %v to %v, want %v to %v", name, l.Start, l.End, c.start, c.end)
		}
	}
}

// Over a gap in the record a line is not torn to the piece behind it.
func TestLineOverAGap(t *testing.T) {
	list := listOf(cutEvent{"V", "1", "A1", 0, 0, 6}, cutEvent{"V", "2", "A2", 6, 0, 3}, cutEvent{"V", "1", "A1", 9, 40, 10})
	s := laid(list, srt(1., 3., "You kept the lamp.", 5., 8.6, "It was never mine to keep."))
	if l := s.Lines[1]; !nearly(l.Start, 5) || !nearly(l.End, 8.6) {
		t.Errorf("late: %v to %v", l.Start, l.End)
	}
	s = laid(list, srt(1., 3., "You kept the lamp.", 6.4, 10.4, "Then whose name is on the paper?"))
	if l := s.Lines[2]; !nearly(l.Start, 37.4) || !nearly(l.End, 41.4) {
		t.Errorf("early: %v to %v", l.Start, l.End)
	}
}
