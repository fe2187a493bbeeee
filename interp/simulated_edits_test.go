// A simulation: a talk through edits as cutters make them.

package interp_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/lang"
	"pullscore/lang/edl"
	"pullscore/lang/timecode"
)

// A shown is a stretch of the take of the talk that an edit shows, in seconds of the
// take, at a speed, after a gap in the record; of a second take of the same talk where
// again is set.
type shown struct {
	from, to, speed, gap float64
	again                bool
}

// pause returns the middle of the pause behind a line of the talk, by its number from
// 1; 0 is before the first.
func pause(after int) float64 {
	list := talk()
	switch {
	case after == 0:
		return list[0].start - 0.5
	case after == len(list):
		return list[after-1].end + 0.5
	}
	return (list[after-1].end + list[after].start) / 2
}

// part shows some lines, from one up to and with another.
func part(from, to int) shown { return shown{from: pause(from - 1), to: pause(to), speed: 1} }

func (s shown) at(speed float64) shown   { s.speed = speed; return s }
func (s shown) after(gap float64) shown  { s.gap = gap; return s }
func (s shown) later(sec float64) shown  { s.from += sec; return s }
func (s shown) longer(sec float64) shown { s.to += sec; return s }
func (s shown) retaken() shown           { s.again = true; return s }

// byName returns a way to write subtitles.
func byName(t *testing.T, name string) func([]caption) []caption {
	t.Helper()
	for _, v := range variants {
		if v.name == name {
			return v.write
		}
	}
	t.Fatalf("there is no way to write called %q", name)
	return nil
}

// An edit is one of the simulation.
type simulated struct {
	name  string
	rate  string
	shows []shown
	write string // how the subtitles are written
	early int    // a line of which the sound begins before its picture: J and L cuts; 0: none
}

var simulatedEdits = []simulated{
	{"whole", "24", []shown{part(1, 12)}, "plain", 0},
	{"head trimmed", "24", []shown{part(3, 12)}, "plain", 0},
	{"tail trimmed", "25", []shown{part(1, 8)}, "plain", 0},
	{"both trimmed", "24", []shown{part(4, 9)}, "labels", 0},
	{"a lift", "24", []shown{part(1, 4), part(8, 12)}, "plain", 0},
	{"two lifts", "30", []shown{part(1, 3), part(5, 7), part(10, 12)}, "remarks", 0},
	{"a lift and a gap", "24", []shown{part(1, 5), part(7, 12).after(4)}, "written out", 0},
	{"swapped", "24", []shown{part(5, 8), part(1, 4)}, "plain", 0},
	{"swapped with a rest", "25", []shown{part(9, 12), part(1, 3)}, "dashes", 0},
	{"shown again", "24", []shown{part(1, 8), part(5, 12).after(10)}, "plain", 0},
	{"faster", "24", []shown{part(1, 12).at(1.25)}, "plain", 0},
	{"slower after a lift", "24", []shown{part(1, 4), part(7, 12).at(0.5)}, "upper case", 0},
	{"sound before the picture", "24", []shown{part(4, 12).later(0.6)}, "plain", 4},
	{"sound behind the picture", "24", []shown{part(1, 7).longer(-0.6)}, "plain", 7},
	{"contracted", "24", []shown{part(1, 6), part(9, 12)}, "contracted", 0},
	{"for the hard of hearing", "23.976", []shown{part(2, 12)}, "labels with a remark", 0},
	{"sounds between", "48", []shown{part(1, 9), part(11, 12)}, "sounds between", 0},
	{"digits", "50", []shown{part(3, 11)}, "digits", 0},
	{"drop-frame", "29.97df", []shown{part(1, 5), part(8, 12)}, "without apostrophes", 0},
	{"drop-frame and a trim", "59.94df", []shown{part(2, 12)}, "tags", 0},
	{"sung", "60", []shown{part(1, 2), part(4, 5), part(7, 12)}, "music", 0},
	{"a retake", "24", []shown{part(1, 7), part(8, 12).retaken()}, "plain", 0},
	{"a retake and a lift", "29.97", []shown{part(1, 8), part(10, 12).retaken()}, "labels", 0},
	{"two in a caption", "25", []shown{part(1, 4), part(7, 12)}, "two in one with labels", 0},
	{"two in a caption, with dashes", "24", []shown{part(3, 12)}, "two in one with dashes", 0},
	{"misspelt", "24", []shown{part(1, 4), part(6, 12)}, "a word misspelt", 0},
}

// cutOf lays an edit into the record: its list, and the captions of the lines that are
// heard in it, in seconds from the start of the picture.
func (e *simulated) cutOf(t *testing.T, rate timecode.Rate) (list string, heard []caption, lines []int) {
	t.Helper()
	const lead = 48 // frames of another shot before it
	start, err := rate.Parse("01:00:00:00")
	if err != nil {
		t.Fatal(err)
	}
	source := 10 * start
	events := []edl.Event{{Number: "001", Reel: "A0", Channels: "V", Transition: "C", Clip: "OTHER", SourceOut: lead, RecordIn: start, RecordOut: start + lead}}
	record := start + lead
	for i, s := range e.shows {
		in, out := rate.Frames(s.from), rate.Frames(s.to)
		record += rate.Frames(s.gap)
		long := int64(math.Round(float64(out-in) / s.speed))
		event := edl.Event{Number: fmt.Sprintf("%03d", i+2), Reel: "A1", Channels: "V", Transition: "C", Clip: "1",
			SourceIn: source + in, SourceOut: source + out, RecordIn: record, RecordOut: record + long}
		if s.again {
			event.Clip, event.Reel = "1 TK 2", "A2"
			event.SourceIn, event.SourceOut = event.SourceIn+rate.Frames(900), event.SourceOut+rate.Frames(900)
		}
		if s.speed != 1 {
			num, den := rate.Exact()
			event.Speed = &edl.Speed{Reel: "A1", FPS: s.speed * float64(num) / float64(den), Source: source + in}
		}
		events = append(events, event)
		begin := rate.Seconds(record - start)
		for n, c := range talk() {
			if c.start < s.from && n+1 != e.early || c.end > s.to && n+1 != e.early || c.start > s.to || c.end < s.from {
				continue
			}
			t0 := rate.Seconds(in)
			where := func(at float64) float64 { // beyond the piece only the clock goes on
				inside := max(t0, min(at, rate.Seconds(out)))
				return begin + (inside-t0)/s.speed + at - inside
			}
			heard = append(heard, caption{where(c.start), where(c.end), c.who, c.text})
			lines = append(lines, n)
		}
		record += long
	}
	var text bytes.Buffer
	if err := edl.Write(&text, &edl.List{Title: "SIMULATED", Events: events}, rate); err != nil {
		t.Fatal(err)
	}
	return text.String(), heard, lines
}

// origin is what the shot's time counts from: the first frame that is used, in seconds of the take.
func (e *simulated) origin(rate timecode.Rate) float64 {
	first := slices.MinFunc(e.shows, func(a, b shown) int { return int(math.Copysign(1, a.from-b.from)) })
	return rate.Seconds(rate.Frames(first.from))
}

// cutOut is how much of the take lies between what an edit shows of it, up to where the
// second take begins that has a line; that take goes on where the first ends.
func (e *simulated) cutOut(line int) (sec float64) {
	for i, s := range e.shows {
		if s.again && talk()[line].start >= s.from {
			sec += s.from - e.shows[i-1].to
		}
	}
	return sec
}

// simulatedPlan is a plan of the talk with racks on words of its lines.
func simulatedPlan(rate string) string {
	var body strings.Builder
	for i, c := range talk() {
		if i%3 == 1 {
			to := []string{"LAMP", "NORA"}[i/3%2]
			fmt.Fprintf(&body, "rack to %s, landing on %q, over 0.4 s, because \"the talk turns\"\n", to, strings.Trim(strings.Fields(c.text)[0], "?.,:"))
		}
		fmt.Fprintf(&body, "%s: %q\n", c.who, c.text)
	}
	plan := inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", body.String())
	return strings.Replace(plan, "rate 24\n", "rate "+rate+"\n", 1)
}

// Through all edits the lines stand where the take has them: none is wrong by more
// than 60 ms where the words are exact, and at most 2 % of all; and a sound plan has
// no error.
func TestSimulatedEdits(t *testing.T) {
	const most = 0.06
	wrong, all := 0, 0
	for _, e := range simulatedEdits {
		rate, err := timecode.ParseRate(e.rate)
		if err != nil {
			t.Fatal(err)
		}
		list, heard, lines := e.cutOf(t, rate)
		res := interpret("plan.pull", simulatedPlan(e.rate), "cut.edl", list, "cut.srt", variantCues(byName(t, e.write)(slices.Clone(heard))))
		for _, d := range res.Findings {
			if d.Severity == lang.Error {
				t.Errorf("%s: %s [%s]", e.name, d.Message, d.Code)
			}
		}
		shot := res.Plan.Shots[0]
		for i, n := range lines {
			if strings.HasPrefix(e.write, "two in one") && i%2 == 1 {
				continue // the caption does not say when the second of them speaks
			}
			want := talk()[n].start - e.origin(rate) - e.cutOut(n)
			all++
			if got := float64(shot.Lines[n].Start); math.Abs(got-want) > most {
				wrong++
				t.Logf("%s: line %d, %q, is at %.3f s, want %.3f s", e.name, n+1, heard[i].text, got, want)
				if e.write == "plain" {
					t.Errorf("%s: a line of exact words is wrong", e.name)
				}
			}
		}
	}
	if all < 180 || float64(wrong) > 0.02*float64(all) {
		t.Errorf("%d of %d lines are wrong", wrong, all)
	}
}
