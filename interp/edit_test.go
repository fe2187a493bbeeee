// Tests of what a cut does to a plan: its numbers follow, its text stays.

package interp_test

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/testing/cputime"
	"pullscore/lang/timecode"
)

// inCut is a plan that follows files, around the body of one shot.
func inCut(head, body string) string {
	return strings.Replace(scene(body), "use \"kit.pull\"\n", "use \"kit.pull\"\n"+head, 1)
}

// srt writes subtitles: a start and an end in seconds and a text each.
func srt(cues ...any) string {
	var b strings.Builder
	stamp := func(t float64) string {
		ms := int64(math.Round(t * 1000))
		return fmt.Sprintf("%02d:%02d:%02d,%03d", ms/3_600_000, ms/60_000%60, ms/1000%60, ms%1000)
	}
	for i := 0; i+2 < len(cues); i += 3 {
		fmt.Fprintf(&b, "%d\n%s --> %s\n%s\n\n", i/3+1, stamp(cues[i].(float64)), stamp(cues[i+1].(float64)), cues[i+2])
	}
	return b.String()
}

func codes(res *interp.Result) (list []string) {
	for _, d := range res.Findings {
		list = append(list, d.Code)
	}
	return list
}

func nearly(a plan.Number, b float64) bool { return math.Abs(float64(a)-b) < 1e-9 }

const twoLines = `NORA: "You kept it."
pause 1 s
OTTO: "I kept every ledger.", lasting 9 s
rack to LAMP, landing on "every", over 1 s, because "he means it"
`

// One plan, two cuts: lines and the pull on a word go with the cut; the plan's
// own lengths and pauses no longer count.
func TestTwoCutsOnePlan(t *testing.T) {
	text := inCut("edit \"cut.srt\"\n", twoLines)
	// "I kept every ledger" has six syllables, two of them before "every".
	for _, c := range []struct{ from, gap, long float64 }{{10, 2, 3}, {70, 0.5, 1.5}} {
		second := c.from + 1 + c.gap
		res := interpret("plan.pull", text, "cut.srt", srt(c.from, c.from+1, "You kept it.", second, second+c.long, "I kept every ledger."))
		s := res.Plan.Shots[0]
		start := 1 + c.gap
		switch {
		case !nearly(s.Lines[0].Start, 0), !nearly(s.Lines[0].End, 1), !nearly(s.Lines[1].Start, start), !nearly(s.Lines[1].End, start+c.long):
			t.Errorf("lines: %+v", s.Lines)
		case s.Lines[0].Estimated, s.Lines[1].Estimated:
			t.Error("a line of the cut is no estimate")
		case !nearly(s.Pulls[0].Land, start+c.long*2/6):
			t.Errorf("the pull lands at %v", s.Pulls[0].Land)
		case !slices.Equal(s.Lines[1].Pulls, []int{1}):
			t.Errorf("pulls on the line: %v", s.Lines[1].Pulls)
		}
		from := slices.IndexFunc(res.Plan.Defaults, func(d plan.Default) bool { return d.Name == "line times" })
		if from < 0 || res.Plan.Defaults[from].Value != "from cut.srt" {
			t.Errorf("%+v", res.Plan.Defaults)
		}
	}
}

// Without its file a plan has the times that it had before, and is told.
func TestEditThatIsNotThere(t *testing.T) {
	res := interpret("scenes/plan.pull", strings.ReplaceAll(inCut("edit \"cut.srt\"\n", twoLines), "kit.pull", "../kit.pull"))
	bare := interpret("plan.pull", scene(twoLines))
	if !slices.Contains(codes(res), "no-such-file") || !slices.Contains(res.Files, "scenes/cut.srt") {
		t.Errorf("%v %v", codes(res), res.Files)
	}
	if res.Plan.Shots[0].Pulls[0].Land != bare.Plan.Shots[0].Pulls[0].Land {
		t.Error("the pull has moved")
	}
}

// A subtitle's frame in a shot is what exact fractions say, at every rate.
func TestTimesInTheShot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := rapid.SampledFrom(timecode.Rates()).Draw(t, "rate")
		num, den := rate.Exact()
		picture := rapid.Int64Range(0, rate.Day()/2).Draw(t, "picture")
		into := rapid.Int64Range(0, rate.Day()/4).Draw(t, "into")
		ms := rapid.Int64Range(0, 20_000).Draw(t, "ms")
		shotMS := new(big.Rat).SetFrac64(into*den*1000, num) // from the picture's start
		at, _ := shotMS.Float64()
		start := int64(at) + ms
		text := inCut(fmt.Sprintf("edit \"cut.srt\" from %s\n", rate.Format(picture)),
			fmt.Sprintf("begins at %s\nNORA: \"You kept it.\"\n", rate.Format(picture+into)))
		text = strings.Replace(text, "rate 24", "rate "+rate.String(), 1)
		res := interpret("plan.pull", text, "cut.srt", srt(float64(start)/1000, float64(start+900)/1000, "You kept it."))
		want, _ := new(big.Rat).Sub(new(big.Rat).SetInt64(start), shotMS).Float64()
		if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Lines) != 1 {
			t.Fatalf("%v", res.Findings)
		}
		line := res.Plan.Shots[0].Lines[0]
		if math.Abs(float64(line.Start)-want/1000) > 1e-6 || math.Abs(float64(line.End-line.Start)-0.9) > 1e-6 {
			t.Fatalf("at %s: the line is at %v to %v, want %v\n%s", rate, line.Start, line.End, want/1000, text)
		}
	})
}

// Moving the whole cut moves where shots lie and nothing within them.
func TestShiftedCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		by := rapid.Int64Range(0, 3600*24).Draw(t, "by")
		read := func(by int64) *plan.Shot {
			rate := timecode.Rate{}
			list := fmt.Sprintf("001 A V C 05:00:00:00 05:00:08:00 %s %s\n* FROM CLIP NAME: 1\n* LOC: %s RED knock\n",
				rate.Format(86400+by), rate.Format(86400+by+192), rate.Format(86400+by+48))
			res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", twoLines+"cue knock\nrack to NORA, on knock + 4 s, over 1 s\n"),
				"cut.edl", list, "cut.srt", srt(1+rate.Seconds(by), 2+rate.Seconds(by), "You kept it.", 2.5+rate.Seconds(by), 5+rate.Seconds(by), "I kept every ledger."))
			return res.Plan.Shots[0]
		}
		a, b := read(0), read(by)
		if b.Begins-a.Begins != by || !nearly(b.Cues[0].T, 2) {
			t.Fatalf("shots begin at %s and %s, the cue is at %v", a.BeginsAt, b.BeginsAt, b.Cues[0].T)
		}
		for i := range a.Pulls {
			if math.Abs(float64(a.Pulls[i].Land-b.Pulls[i].Land)) > 0.0011 { // subtitles have whole milliseconds
				t.Fatalf("pull %d lands at %v and %v", i+1, a.Pulls[i].Land, b.Pulls[i].Land)
			}
		}
	})
}

// A shot that is cut away from has its clock run on in the source: a line in
// its second piece is where the source has it.
func TestTwoPieces(t *testing.T) {
	const list = `001 A V C 10:00:00:00 10:00:04:00 01:00:00:00 01:00:04:00
* FROM CLIP NAME: 1
002 B V C 11:00:00:00 11:00:01:00 01:00:04:00 01:00:05:00
* FROM CLIP NAME: 2
003 A V C 10:00:09:00 10:00:15:00 01:00:05:00 01:00:11:00
* FROM CLIP NAME: 1
`
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", twoLines),
		"cut.edl", list, "cut.srt", srt(1., 2., "You kept it.", 6., 9., "I kept every ledger."))
	s := res.Plan.Shots[0]
	if !nearly(s.Lines[0].Start, 1) || !nearly(s.Lines[1].Start, 10) || !nearly(s.Pulls[0].Land, 11) || !nearly(s.Duration, 15) || s.BeginsAt != "01:00:00:00" {
		t.Errorf("%+v, %+v, lasts %v", s.Lines, s.Pulls[0], s.Duration)
	}
	if slices.Contains(codes(res), "trimmed") {
		t.Errorf("%+v", res.Findings)
	}
}

// Timecodes in a shot count from where the plan has it begin, also where the
// cut has moved it.
func TestTimecodesInAMovedShot(t *testing.T) {
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", "begins at 02:00:00:00\nrack to LAMP, on 02:00:03:00, over 1 s, because \"why\"\n"),
		"cut.edl", "001 A V C 10:00:00:00 10:00:08:00 01:00:00:00 01:00:08:00\n* FROM CLIP NAME: 1\n")
	if s := res.Plan.Shots[0]; !nearly(s.Pulls[0].Start, 3) || s.BeginsAt != "01:00:00:00" || codes(res)[0] != "moved-in-edit" {
		t.Errorf("the rack starts at %v of a shot at %s: %v", s.Pulls[0].Start, s.BeginsAt, codes(res))
	}
}

// A line may be heard before its shot is seen; that is no mistake.
func TestSoundBeforeThePicture(t *testing.T) {
	res := interpret("plan.pull", inCut("edit \"cut.srt\" from 01:00:00:00\n", "begins at 01:00:10:00\n"+twoLines),
		"cut.srt", srt(9., 9.8, "You kept it.", 10.5, 12.5, "I kept every ledger."))
	if s := res.Plan.Shots[0]; !nearly(s.Lines[0].Start, -1) || !nearly(s.Lines[1].Start, 0.5) || slices.Contains(codes(res), "out-of-range") {
		t.Errorf("%+v %v", s.Lines, codes(res))
	}
	if i := slices.Index(codes(res), "before-the-shot"); i >= 0 && res.Findings[i].Pull == 0 {
		t.Errorf("%+v", res.Findings[i])
	}
}

// Of a word that stands often the one near the shot is meant.
func TestRepeatedWords(t *testing.T) {
	var cues []any
	for i := range 500 {
		cues = append(cues, float64(i*60), float64(i*60)+0.5, "No.")
	}
	cues[3*200+0], cues[3*200+1] = 12_003.0, 12_003.5
	res := interpret("plan.pull", inCut("edit \"cut.srt\" from 00:00:00:00\n", "begins at 03:20:00:00\nNORA: \"No.\"\n"), "cut.srt", srt(cues...))
	if s := res.Plan.Shots[0]; !nearly(s.Lines[0].Start, 3) {
		t.Errorf("the line starts at %v", s.Lines[0].Start)
	}
}

// A short line that the cut does not have is not found in what another says.
func TestShortLineInAnothers(t *testing.T) {
	for _, subtitle := range []string{"I said there is no time to lose.", "- Is it late?\n- I said there is no time."} {
		body := "NORA: \"Is it late?\"\nOTTO: \"I said there is no time to lose.\"\nNORA: \"No.\"\nOTTO: \"Then go.\"\n"
		res := interpret("plan.pull", inCut("edit \"cut.srt\"\n", body), "cut.srt", srt(1., 2., "Is it late?", 2., 5., subtitle, 6., 7., "- Yes?\n- Then go."))
		var missing []string
		for _, d := range res.Findings {
			if d.Code == "line-not-in-edit" {
				missing = append(missing, string(res.Sources["plan.pull"][d.Range.Start.Offset:d.Range.End.Offset]))
			}
		}
		if !slices.Equal(missing, []string{"NORA: \"No.\""}) {
			t.Errorf("%q: %q are missing", subtitle, missing)
		}
		if last := res.Plan.Shots[0].Lines[3]; !nearly(last.Start, 5+1./3) {
			t.Errorf("the last line is at %v", last.Start)
		}
	}
}

// Subtitles that count from elsewhere than the list are told of once, with how
// far they are away; a short line alone may be anywhere by chance.
func TestLinesElsewhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := timecode.Rate{}
		away := rapid.Int64Range(-3600, 3600).Filter(func(s int64) bool { return s < -60 || s > 60 }).Draw(t, "seconds away")
		begins := rapid.Int64Range(0, 600).Draw(t, "begins")
		const picture = 4000
		list := fmt.Sprintf("001 A V C 05:00:00:00 05:00:08:00 %s %s\n* FROM CLIP NAME: 1\n", rate.Format(24*(picture+begins)), rate.Format(24*(picture+begins+8)))
		head := fmt.Sprintf("edit \"cut.edl\"\nedit \"cut.srt\" from %s\n", rate.Format(24*(picture+away)))
		at := float64(begins)
		for body, want := range map[string]int{twoLines: 1, "NORA: \"No.\"\n": 0} {
			res := interpret("plan.pull", inCut(head, body), "cut.edl", list,
				"cut.srt", srt(at, at+1, "You kept it.", at+2, at+4, "I kept every ledger.", at+5, at+6, "No."))
			var told []float64
			for _, d := range res.Findings {
				if d.Code == "lines-elsewhere" {
					told = append(told, d.Figures[0].Value)
				}
			}
			if len(told) != want || want == 1 && told[0] != float64(away) || slices.Contains(codes(res), "line-not-in-edit") != (want == 0) {
				t.Fatalf("%v is told of %d s in %v", told, away, codes(res))
			}
		}
	})
}

// What is wrong in the file of a cut is told at its place there, and its text
// is there to be quoted.
func TestFaultsInACut(t *testing.T) {
	res := interpret("plan.pull", inCut("edit \"cut.srt\"\n", twoLines),
		"cut.srt", "\uFEFF1\r\n00:00:01,00 --> 00:00:02,000\r\nYou kept it.\r\n\r\n2\r\n00:00:05,000 --> 00:00:04,000\r\nI kept every ledger.\r\n")
	var got []string
	for _, d := range res.Findings {
		if d.Range.File == "cut.srt" {
			got = append(got, fmt.Sprintf("%d:%d %s %s", d.Range.Start.Line, d.Range.Start.Column, d.Code,
				res.Sources["cut.srt"][d.Range.Start.Offset:d.Range.End.Offset]))
		}
	}
	if want := []string{"2:1 ambiguous-time 00:00:01,00", "6:18 ends-before-it-starts 00:00:04,000"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// A hundred faults do not hide everything else.
func TestManyFaults(t *testing.T) {
	res := interpret("plan.pull", inCut("edit \"cut.srt\"\n", twoLines), "cut.srt", strings.Repeat("1\n00:00:01,0 --> 00:00:02,000\nWord.\n\n", 100))
	worst := slices.IndexFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == "more-faults" })
	if worst < 0 || res.Findings[worst].Severity != lang.Error || !strings.HasPrefix(res.Findings[worst].Message, "80 more faults") {
		t.Errorf("%+v", res.Findings)
	}
}

// The frames that a rack loses are those that lie in no piece, counted one by
// one.
func TestTrimmedFrames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		used := rapid.Int64Range(1, 60).Draw(t, "first piece")
		gap := rapid.Int64Range(1, 60).Draw(t, "gap")
		again := rapid.Int64Range(1, 60).Draw(t, "second piece")
		start := rapid.Int64Range(-40, 200).Draw(t, "start")
		long := rapid.Int64Range(5, 120).Draw(t, "length")
		rate := timecode.Rate{}
		at := func(n int64) string { return rate.Format(n) }
		list := fmt.Sprintf("001 A V C %s %s %s %s\n* FROM CLIP NAME: 1\n002 A V C %s %s %s %s\n* FROM CLIP NAME: 1\n",
			at(1000), at(1000+used), at(5000), at(5000+used),
			at(1000+used+gap), at(1000+used+gap+again), at(5000+used), at(5000+used+again))
		res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", fmt.Sprintf("rack to LAMP, on %d fr, over %d fr, because \"why\"\n", start, long)), "cut.edl", list)
		lost := 0
		for n := start; n < start+long; n++ {
			if !(n >= 0 && n < used || n >= used+gap && n < used+gap+again) {
				lost++
			}
		}
		told := 0.0
		for _, d := range res.Findings {
			switch d.Code {
			case "trimmed":
				told = d.Figures[0].Value
			case "removed":
				told = float64(long)
			}
			if d.Code == "before-the-shot" {
				t.Fatalf("%s: what lies before the cut is trimmed", d.Message)
			}
		}
		if told != float64(lost) {
			t.Fatalf("%v frames lost, by count %d, in\n%s", told, lost, list)
		}
	})
}

// A piece that runs at twice its speed goes through the shot twice as fast.
func TestSpeedOfPieces(t *testing.T) {
	for _, c := range []struct {
		list string
		want float64
	}{
		{"001 A V C 10:00:00:00 10:00:08:00 01:00:00:00 01:00:04:00\n* FROM CLIP NAME: 1\nM2 A 048.0 10:00:00:00\n", 3},
		{"001 A V C 10:00:00:00 10:00:04:00 01:00:00:00 01:00:04:00\n* FROM CLIP NAME: 1\n* LOC: 01:00:01:12 RED OTHER\n", 1.5},
	} {
		res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", "cue knock\n"), "cut.edl", c.list+"* LOC: 01:00:01:12 RED KNOCK\n")
		if s := res.Plan.Shots[0]; !nearly(s.Cues[0].T, c.want) {
			t.Errorf("the cue is at %v, want %v", s.Cues[0].T, c.want)
		}
	}
}

// A page that is given with the options takes the place of those that the plan
// names, and what it has otherwise comes as data too.
func TestPageOfTheOptions(t *testing.T) {
	const page = "INT. A #1#\n\nNORA\nYou kept it.\n\nOTTO\nI kept no ledger.\n\nINT. B #2#\n\nOTTO\nNo.\n"
	src := scene(twoLines + "cue knock on end of OTTO\nrack to NORA, on knock, over 1 s\n")
	res := interp.Interpret("plan.pull", []byte("script \"none.fountain\"\n"+src), interp.Options{
		ReadFile: func(path string) ([]byte, error) {
			if path == "kit.pull" {
				return []byte(kitText), nil
			}
			return nil, fmt.Errorf("%s is not to be read", path)
		},
		Script: &interp.Script{Path: "page.fountain", Text: []byte(page), Scene: "1"},
	})
	if len(res.Revision) != 1 {
		t.Fatalf("%+v", res.Revision)
	}
	c := res.Revision[0]
	if c.Kind != "changed" || c.Line != 1 || c.PageText != "I kept no ledger." || c.PageLine != 6 || !slices.Equal(c.Pulls, []int{1, 2}) {
		t.Errorf("%+v", c)
	}
	i := slices.IndexFunc(res.Findings, func(d lang.Diagnostic) bool { return d.Code == "line-changed" })
	if i < 0 || res.Findings[i].Detail != "It says: “I kept no ledger”. Pulls 1 and 2 depend on it." || slices.Contains(codes(res), "no-such-file") {
		t.Errorf("%+v", res.Findings)
	}
	if none := interpret("plan.pull", src); none.Revision != nil {
		t.Error("without a page nothing was compared")
	}
}

// A file's own cuts and pages stand in for those that it uses.
func TestEditsOfUsedFiles(t *testing.T) {
	cut := []string{"a.srt", srt(1., 2., "You kept it."), "sub/b.srt", srt(1., 4., "You kept it."),
		"sub/b.pull", "edit \"b.srt\"\n", "c.pull", "use \"sub/b.pull\"\n"}
	for head, want := range map[string]float64{
		"use \"sub/b.pull\"\nedit \"a.srt\"\n": 1,
		"use \"sub/b.pull\"\nuse \"c.pull\"\n": 3,
	} {
		res := interpret("plan.pull", inCut(head, "NORA: \"You kept it.\"\n"), cut...)
		if l := res.Plan.Shots[0].Lines[0]; !nearly(l.End-l.Start, want) {
			t.Errorf("with %q the line is %v s long", head, l.End-l.Start)
		}
	}
}

// A move that is used twice has each of its lines where the cut has it.
func TestLinesInAMove(t *testing.T) {
	text := inCut("edit \"cut.srt\"\n", "ask()\npause 1 s\nask()\n") + "move ask()\n  NORA: \"Where is it?\"\n"
	res := interpret("plan.pull", text, "cut.srt", srt(1., 2., "Where is it?", 4., 4.5, "Where is it?"))
	if s := res.Plan.Shots[0]; !nearly(s.Lines[1].Start, 3) || !nearly(s.Lines[1].End, 3.5) {
		t.Errorf("%+v %v", s.Lines, res.Findings)
	}
}

// Lines that hang on one another and on pulls, in a cut or out of it, end, and
// those of the cut are where it has them.
func TestAskedAheadInACut(t *testing.T) {
	body := "rack to LAMP, on OTTO \"every\", over 1 s, because \"why\"\nhold 1 s\n" +
		"NORA: \"You kept it.\", on OTTO \"kept\" + 1 s\nOTTO: \"I kept every ledger.\"\n"
	for _, head := range []string{"edit \"cut.srt\"\n", "edit \"cut.srt\" from 01:00:00:00\n"} {
		res := interpret("plan.pull", inCut(head, "begins at 01:00:00:00\n"+body), "cut.srt", srt(5., 6., "I kept every ledger.", 1., 2., "You kept it."))
		checkSane(t, res)
		for _, s := range res.Plan.Shots {
			if len(s.Lines) == 2 && !nearly(s.Lines[1].Start-s.Lines[0].Start, 4) {
				t.Errorf("%q: %+v", head, s.Lines)
			}
		}
	}
}

// Cuts that are made to take for ever.
func TestHostileCuts(t *testing.T) {
	body := repeat(300, func(i int) string { return fmt.Sprintf("NORA: \"no no no no no no %d\"", i%3) }) + "rack to LAMP, over 1 s"
	many := make([]any, 0, 90_000)
	for i := range 30_000 {
		many = append(many, float64(i), float64(i)+0.5, "no no no no no no")
	}
	for _, c := range []struct{ name, file, text string }{
		{"the same words", "cut.srt", srt(many...)},
		{"one word", "cut.srt", srt(0., 1., strings.Repeat("no ", 200_000))},
		{"brackets", "cut.srt", srt(0., 1., strings.Repeat("[", 100_000))},
		{"negative and far", "cut.vtt", "WEBVTT\n\n99999:59:59.999 --> 99999:59:59.999\nno no no no no no 1\n"},
		{"pieces", "cut.edl", repeat(20_000, func(i int) string {
			return fmt.Sprintf("%06d 1 V C 00:00:00:00 00:00:00:01 00:00:00:00 00:00:00:01", i)
		})},
		{"nested", "cut.otio", strings.Repeat(`{"children":[`, 100_000)},
	} {
		t.Run(c.name, func(t *testing.T) {
			took := cputime.Of(func() {
				checkSane(t, interpret("plan.pull", inCut("edit \""+c.file+"\"\n", body), c.file, c.text))
			})
			if took > 20*time.Second {
				t.Errorf("it took %v", took)
			}
		})
	}
}

// Whatever stands in the file of a cut or on a page, the plan comes out whole.
func FuzzEdit(f *testing.F) {
	f.Add("cut.srt", srt(1., 2., "You kept it.", 3., 4., "I kept every ledger."))
	f.Add("cut.vtt", "WEBVTT\n\n00:01.000 --> 00:02.000\n<v NORA>You kept it.\n")
	f.Add("cut.edl", "001 1 V C 23:59:59:00 00:00:01:00 00:00:00:00 00:00:02:00\nM2 1 -024.0 23:59:59:00\n* LOC: 00:00:01:00 RED knock\n")
	f.Add("cut.otio", `{"OTIO_SCHEMA":"Clip.1","name":"1","source_range":{"start_time":{"value":-1e300,"rate":24},"duration":{"value":1e18,"rate":24}}}`)
	f.Add("page.fountain", "INT. A #1#\n\nNORA\nYou kept it.\n")
	f.Add("%!.srt", "1\n00:00:01,000 --> 00:00:02,%!\nYou kept it.\n") // quoted in findings
	f.Fuzz(func(t *testing.T, name, text string) {
		if strings.HasSuffix(name, ".pull") || name == "" || strings.ContainsAny(name, "\"\\/\n\r") || strings.Trim(name, ". ") == "" {
			t.Skip()
		}
		head := fmt.Sprintf("edit %q\n", name)
		if strings.HasSuffix(name, ".fountain") {
			head = fmt.Sprintf("script %q\n", name)
		}
		checkSane(t, interpret("plan.pull", inCut(head, twoLines+"cue knock\nrack to NORA, on knock + 2 s\n"), name, text))
	})
}
