package edits

import (
	"fmt"
	"math"
	"strings"
)

// A Caption is a subtitle: one line of the plan or a part of it. Start and End are in
// seconds.
type Caption struct {
	Start, End float64
	Who, Text  string
}

// Talk returns a talk of our own, with the time of each line.
func Talk() []Caption {
	return []Caption{
		{10, 11.8, "NORA", "You didn't sign the second ledger."},
		{12.1, 14.5, "OTTO", "I've signed every page that there's been."},
		{15, 16.2, "NORA", "Listen: they're coming."},
		{16.5, 17.1, "OTTO", "Who?"},
		{17.6, 20.4, "NORA", "Twenty-five men, and one hundred and five oars."},
		{21, 22.9, "OTTO", "We can't row, she'll freeze out there."},
		{23.3, 25, "NORA", "It won't help us to wait till dawn."},
		{25.2, 25.8, "OTTO", "No."},
		{26.4, 28.6, "NORA", "I would have gone in nineteen eighty-seven."},
		{29, 30.9, "OTTO", "What is it that you are looking at?"},
		{31.2, 33.3, "NORA", "Nobody's rowing to the wreck for ten percent."},
		{33.8, 35.9, "OTTO", "Let us go home, because I am cold."},
	}
}

// SubRip writes captions as a subtitle file.
func SubRip(list []Caption) string {
	var b strings.Builder
	stamp := func(t float64) string {
		ms := int64(math.Round(t * 1000))
		return fmt.Sprintf("%02d:%02d:%02d,%03d", ms/3_600_000, ms/60_000%60, ms/1000%60, ms%1000)
	}
	for i, c := range list {
		fmt.Fprintf(&b, "%d\n%s --> %s\n%s\n\n", i+1, stamp(c.Start), stamp(c.End), c.Text)
	}
	return b.String()
}

// Plan returns a plan of the talk at a rate, in one shot called 1, with racks on words
// of its lines. It follows the list and the subtitles cut.srt, and needs no other file.
func Plan(rate, list string) string {
	var b strings.Builder
	fmt.Fprintf(&b, `plan "Test"
rate %s
watched on 12 m screen from 18 m
edit %q
edit "cut.srt" from 01:00:00:00
camera A
  sensor 24.89 x 18.66 mm
  records 3840 px
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
  mark 75 cm at 0 deg
  mark 1 m at 118 deg
  mark 2 m at 240 deg
  mark 5 m at 290 deg
  mark inf at 310 deg
subject NORA at 1.7 m
subject LAMP at 95 cm, 10 cm left
voice OTTO
shot 1
  with stop f/2.8
  start on NORA
`, rate, list)
	for i, c := range Talk() {
		if i%3 == 1 {
			to := []string{"LAMP", "NORA"}[i/3%2]
			fmt.Fprintf(&b, "  rack to %s, landing on %q, over 0.4 s, because \"the talk turns\"\n", to, strings.Trim(strings.Fields(c.Text)[0], "?.,:"))
		}
		fmt.Fprintf(&b, "  %s: %q\n", c.Who, c.Text)
	}
	return b.String()
}
