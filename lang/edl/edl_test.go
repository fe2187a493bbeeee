package edl

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
	"pullscore/lang/timecode"
)

// expected is what a correct reader finds in a sample.
type expected struct {
	Channels      map[string]int
	EventLines    int `json:"event_lines"`
	EventNumbers  int `json:"event_numbers"`
	First, Last   expectedEvent
	FirstLocator  []string `json:"first_locator"`
	FromClipNames int      `json:"from_clip_names"`
	ToClipNames   int      `json:"to_clip_names"`
	HighestFrame  int      `json:"highest_frame_digit_rate_guess"`
	Locators      int
	MotionEffects int    `json:"motion_effects"`
	RecordMax     string `json:"record_max"`
	RecordMin     string `json:"record_min"`
	Mismatch      int    `json:"source_record_length_mismatch"`
	Title         string
	Transitions   map[string]int
	ZeroLength    int            `json:"zero_length_lines"`
	FCM           map[string]int `json:"fcm_lines"`
}

type expectedEvent struct {
	Clip, Num, Reel string
	Src, Rec        [2]string
}

func mustRate(t testing.TB, name string) timecode.Rate {
	t.Helper()
	rate, err := timecode.ParseRate(name)
	if err != nil {
		t.Fatal(err)
	}
	return rate
}

// The samples' rate: 25 where frame 24 occurs, 29.97 where FCM says DROP FRAME,
// else 24.
func TestSamples(t *testing.T) {
	samples.Each(t, "edl/", func(t *testing.T, name string, src []byte, want expected) {
		rate := mustRate(t, fmt.Sprint(max(24, want.HighestFrame)))
		if want.FCM["DROP FRAME"] > 0 {
			rate = mustRate(t, "29.97df")
		}
		text, _ := lines.Decode(name, src)
		list, diags := Read(text, rate)
		if d := find(diags, lang.Error); d != nil {
			t.Errorf("%d: %s", d.Range.Start.Line, d.Message)
		}
		if len(list.Events) != want.EventLines || list.Title != want.Title {
			t.Fatalf("%d events of %q, want %d of %q", len(list.Events), list.Title, want.EventLines, want.Title)
		}
		if got := count(list, diags); !reflect.DeepEqual(got, want.counts(t, rate)) {
			t.Errorf("%+v\nwant %+v", got, want.counts(t, rate))
		}
		compare(t, list.Events[0], want.First, rate)
		compare(t, list.Events[len(list.Events)-1], want.Last, rate)
		if want.HighestFrame == 25 {
			if _, diags := Read(text, mustRate(t, "24")); find(diags, lang.Error) == nil {
				t.Error("frame 24 is taken at 24 frames a second without a word")
			}
		}
	})
}

func find(diags []lang.Diagnostic, s lang.Severity) *lang.Diagnostic {
	for i := range diags {
		if diags[i].Severity == s {
			return &diags[i]
		}
	}
	return nil
}

// counts are what is counted over a list.
type counts struct {
	channels, transitions                                         map[string]int
	numbers, clips, toClips, locators, speeds, zeroLength, differ int
	recordMin, recordMax                                          int64
	firstLocator                                                  string
}

func (w expected) counts(t *testing.T, rate timecode.Rate) counts {
	locator := ""
	if w.FirstLocator != nil {
		locator = fmt.Sprint(frames(t, rate, w.FirstLocator[0]), w.FirstLocator[1:])
	}
	return counts{
		w.Channels, w.Transitions, w.EventNumbers, w.FromClipNames, w.ToClipNames, w.Locators, w.MotionEffects, w.ZeroLength,
		w.Mismatch, frames(t, rate, w.RecordMin), frames(t, rate, w.RecordMax), locator,
	}
}

func count(list *List, diags []lang.Diagnostic) counts {
	n := counts{channels: map[string]int{}, transitions: map[string]int{}, recordMin: list.Events[0].RecordIn}
	numbers := map[string]bool{}
	add := func(to *int, when bool) {
		if when {
			*to++
		}
	}
	for _, e := range list.Events {
		n.channels[e.Channels]++
		n.transitions[e.Transition]++
		numbers[e.Number] = true
		add(&n.clips, e.Clip != "")
		add(&n.toClips, e.ToClip != "")
		add(&n.speeds, e.Speed != nil)
		add(&n.zeroLength, e.RecordIn == e.RecordOut)
		n.recordMin, n.recordMax = min(n.recordMin, e.RecordIn), max(n.recordMax, e.RecordOut)
		for _, m := range e.Markers {
			if n.locators++; n.locators == 1 {
				n.firstLocator = fmt.Sprint(m.At, []string{m.Colour, m.Text})
			}
		}
	}
	n.numbers = len(numbers)
	for _, d := range diags {
		add(&n.differ, d.Code == "lengths-differ")
	}
	return n
}

func frames(t *testing.T, rate timecode.Rate, label string) int64 {
	t.Helper()
	n, err := rate.Parse(label)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func compare(t *testing.T, e Event, want expectedEvent, rate timecode.Rate) {
	t.Helper()
	got := fmt.Sprint(e.Clip, e.Number, e.Reel, e.SourceIn, e.SourceOut, e.RecordIn, e.RecordOut)
	w := fmt.Sprint(want.Clip, want.Num, want.Reel, frames(t, rate, want.Src[0]), frames(t, rate, want.Src[1]),
		frames(t, rate, want.Rec[0]), frames(t, rate, want.Rec[1]))
	if got != w {
		t.Errorf("%s, want %s", got, w)
	}
}

// Lists of our own, a rule or a fault each: what is read, and what is told.
func TestRules(t *testing.T) {
	const (
		a = "001  R1       V     C        00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n"
		b = "002  R2       V     C        00:00:00:00 00:00:01:00 01:00:01:00 01:00:02:00\n"
	)
	for _, c := range []struct{ name, rate, src, want string }{
		{"plain", "24", "TITLE: X\n" + a + "* FROM CLIP NAME: ONE\n" + b, "001 R1 V C 24 ONE; 002 R2 V C 24"},
		{"no title, no final newline, odd comments", "24", strings.TrimSpace(a) + "\n*FROM CLIP NAME: ONE\n* * FREEZE", "001 R1 V C 24 ONE"},
		{"clip name without a star", "24", a + "FROM CLIP NAME: ONE\n", "001 R1 V C 24 ONE"},
		{"reel with blanks", "24", "000001 MY REEL 7 A2/V C 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00", "000001 MY REEL 7 A2/V C 24"},
		{"wipe", "24", "1 R B W012 030 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00", "1 R B W012+30 24"},
		{"key", "24", "1 BL NONE K O 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00", "1 BL NONE K O 24"},
		{"no transition", "24", "1 R V 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n" + b,
			"002 R2 V C 24 / 1:1 error bad-event"},
		{"a time short", "24", "1 R V C 00:00:00:00 00:00:01:00 01:00:00:00\n", " / 1:1 error bad-event"},
		{"frame 24 at 24", "24", "1 R V C 00:00:00:24 00:00:01:00 01:00:00:00 01:00:01:00\n" + b,
			"002 R2 V C 24 / 1:9 error bad-timecode"},
		{"drop-frame by FCM, with colons", "29.97", "FCM: DROP FRAME\n1 R V C 00:00:59:29 00:01:00:02 01:00:00:00 01:00:00:01",
			"1 R V C 1 drop"},
		{"drop-frame by semicolon alone", "29.97", "1 R V C 00:00:59;29 00:01:00;02 01:00:00;00 01:00:00;01", "1 R V C 1 drop"},
		{"a label that drop-frame skips", "29.97df", "FCM: DROP FRAME\n1 R V C 00:01:00;00 00:01:00;02 01:00:00;00 01:00:00;02",
			" / 2:9 error bad-timecode"},
		{"semicolons against FCM", "29.97", "FCM: NON-DROP FRAME\n1 R V C 00:00:00;00 00:00:01;00 01:00:00;00 01:00:01;00",
			"1 R V C 30 / 2:1 warning drop-differs"},
		{"drop-frame at 24", "24", "FCM: DROP FRAME\n" + a, "001 R1 V C 24 / 1:1 error drop-frame"},
		{"FCM changes", "59.94", "FCM: DROP FRAME\n1 R V C 00:01:00;04 00:01:00;05 01:00:00;00 01:00:00;01\nFCM: NON-DROP FRAME\n2 R V C 00:01:00:00 00:01:00:01 01:00:01:00 01:00:01:01",
			"1 R V C 1 drop; 2 R V C 1"},
		{"lengths differ", "24", "1 R V C 00:00:00:00 00:00:02:00 01:00:00:00 01:00:01:00", "1 R V C 24 / 1:1 warning lengths-differ"},
		{"lengths differ by a speed", "24", "1 R V C 00:00:00:00 00:00:02:00 01:00:00:00 01:00:01:00\nM2   R   048.0   00:00:00:00", "1 R V C 24 at 48"},
		{"backwards, and frozen", "24", a + "M2 R1 -024.0 00:00:01:00\n" + b + "M2 R2 000.0 00:00:00:00", "001 R1 V C 24 at -24; 002 R2 V C 24 at 0"},
		{"speed of no number", "24", a + "M2 R1 NaN 00:00:01:00", "001 R1 V C 24 / 2:7 error bad-speed"},
		{"speed of another reel", "24", a + "M2 R9 024.0 00:00:01:00", "001 R1 V C 24 / 2:4 warning unknown-line"},
		{"overlap", "24", a + "002 R2 V C 00:00:00:00 00:00:01:00 01:00:00:12 01:00:01:12", "001 R1 V C 24; 002 R2 V C 24 / 2:1 warning events-overlap"},
		{"out of order", "24", b + a, "002 R2 V C 24; 001 R1 V C 24 / 2:1 warning out-of-order"},
		{"record backwards", "24", "1 R V C 00:00:00:00 00:00:01:00 01:00:01:00 01:00:00:00", " / 1:45 error ends-before-it-starts"},
		{"marker", "24", a + "* LOC: 01:00:00:12 RED     WAIT: HERE", "001 R1 V C 24 <86412 RED WAIT: HERE>"},
		{"bad marker", "24", a + "* LOC: 01:00:00:99 RED", "001 R1 V C 24 / 2:8 error bad-timecode"},
		{"marker without time", "24", a + "* LOC:", "001 R1 V C 24 / 2:1 error bad-marker"},
		{"a marker between bars", "24", a + " |C:Blue |M:the bell |D:1\n" + b, "001 R1 V C 24 <86400 Blue the bell> bare; 002 R2 V C 24"},
		{"a marker with a note", "24", a + "3 lamps, out |D:12 |C:Red |M:lamp\n", "001 R1 V C 24 <86400 Red lamp (3 lamps, out)> bare"},
		{"a marker with a note alone", "24", a + "* FROM CLIP NAME: ONE\nlamps |M:\n", "001 R1 V C 24 ONE <86400   (lamps)>"},
		{"a name behind a marker", "24", a + " |M:bell\n* FROM CLIP NAME: ONE\n", "001 R1 V C 24 ONE <86400  bell>"},
		{"a marker of nothing", "24", " |C:Blue |M:bell |D:1\n" + a, "001 R1 V C 24 / 1:1 warning unknown-line"},
		{"LOC counts as its event does", "29.97", "1 R V C 00:01:00;02 00:01:00;05 01:01:00;02 01:01:00;05\n* LOC: 01:01:00:02 RED X", "1 R V C 3 drop <109692 RED X>"},
		{"LOC with a label that drop-frame skips", "29.97", "FCM: DROP FRAME\n1 R V C 00:01:00;02 00:01:00;05 01:01:00;02 01:01:00;05\n* LOC: 01:01:00:00 RED X", "1 R V C 3 drop / 3:8 error bad-timecode"},
		{"comments that are passed over", "24", "REM by hand\n" + a + "* COMMENT: soft\n* ASC_SOP (1 1 1)(0 0 0)(1 1 1)\n* ASC_SAT 1.0\n* FRMC START: 1001 FRMC END: 1102\n" +
			"* PATCH A1\n* REPAIR: X\n*VFX 12 ADD SNOW\nDLEDL: START\nSPLIT: AUDIO DELAY\nLAY 3\nVLAY 2\n", "001 R1 V C 24"},
		{"something else", "24", "HELLO\n" + a, "001 R1 V C 24 / 1:1 warning unknown-line"},
		{"control Z at the end", "24", a + "\x1A\x1A\x1A", "001 R1 V C 24"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, _ := lines.Decode("f.edl", []byte(c.src))
			list, diags := Read(text, mustRate(t, c.rate))
			var shown []string
			for _, e := range list.Events {
				shown = append(shown, show(e))
			}
			got := strings.Join(shown, "; ")
			for _, d := range diags {
				got += fmt.Sprintf(" / %d:%d %s %s", d.Range.Start.Line, d.Range.Start.Column, d.Severity, d.Code)
			}
			if got != c.want {
				t.Errorf("got  %s\nwant %s\n%v", got, c.want, diags)
			}
		})
	}
}

func show(e Event) string {
	s := fmt.Sprintf("%s %s %s %s", e.Number, e.Reel, e.Channels, e.Transition)
	if e.Duration > 0 {
		s += fmt.Sprintf("+%d", e.Duration)
	}
	s += fmt.Sprintf(" %d", e.RecordOut-e.RecordIn)
	if e.Clip != "" {
		s += " " + e.Clip
	}
	if e.Speed != nil {
		s += fmt.Sprintf(" at %g", e.Speed.FPS)
	}
	if e.Drop {
		s += " drop"
	}
	for _, m := range e.Markers {
		note := ""
		if m.Note != "" {
			note = " (" + m.Note + ")"
		}
		s += fmt.Sprintf(" <%d %s %s%s>", m.At, m.Colour, m.Text, note)
	}
	if e.Bare {
		s += " bare"
	}
	return s
}

// Markers written and read back are equal to the frame at every rate.
func TestRoundTrip(t *testing.T) {
	for _, rate := range timecode.Rates() {
		t.Run(rate.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				word := rapid.StringMatching(`[A-Za-zÀ-ÿ0-9"&<:-]{1,12}( [A-Za-z:*]{1,8})?`)
				var want List
				at := rapid.Int64Range(0, rate.Day()/2).Draw(t, "start")
				for i := range rapid.IntRange(1, 5).Draw(t, "events") {
					length := rapid.Int64Range(1, 5000).Draw(t, "length")
					e := Event{
						Number: fmt.Sprintf("%03d", i+1), Reel: "AX", Channels: "V", Transition: cut, Drop: rate.Drop(),
						SourceIn: at, SourceOut: at + length, RecordIn: at, RecordOut: at + length, Clip: word.Draw(t, "clip"),
					}
					if fps := rapid.SampledFrom([]float64{0, 0, -25, 48, 12.5, 23.976, 1000}).Draw(t, "fps"); fps != 0 {
						e.Speed = &Speed{Reel: e.Reel, FPS: fps, Source: at}
					}
					for range rapid.IntRange(0, 3).Draw(t, "markers") {
						m := Marker{At: at + rapid.Int64Range(0, length-1).Draw(t, "at"), Colour: "RED", Text: word.Draw(t, "text")}
						e.Markers = append(e.Markers, m)
					}
					want.Events = append(want.Events, e)
					at += length
				}
				want.Title = word.Draw(t, "title")
				var b bytes.Buffer
				if err := Write(&b, &want, rate); err != nil {
					t.Fatal(err)
				}
				text, _ := lines.Decode("f.edl", b.Bytes())
				got, diags := Read(text, rate)
				if len(diags) > 0 {
					t.Fatalf("%v\n%s", diags, &b)
				}
				for i := range got.Events {
					got.Events[i].Range = lang.Range{}
					for j := range got.Events[i].Markers {
						got.Events[i].Markers[j].Range = lang.Range{}
					}
				}
				if !reflect.DeepEqual(*got, want) {
					t.Fatalf("got  %+v\nwant %+v\n%s", *got, want, &b)
				}
			})
		})
	}
}

// Whatever the file, a line that begins with a digit is an event or an error.
func FuzzRead(f *testing.F) {
	f.Add("TITLE: X\nFCM: DROP FRAME\n001  AX       V     C        00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n* LOC: 01:00:00:12 RED X\nM2 AX 024.0 00:00:00:00\n", 4)
	f.Add("1 A V C 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n2 bells |C:Red |M:x |D:1\n |M:\n", 2)
	f.Add("1 A B K B 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00", 0)
	f.Fuzz(func(t *testing.T, src string, rate int) {
		rates := timecode.Rates()
		text, _ := lines.Decode("f.edl", []byte(src))
		list, diags := Read(text, rates[((rate%len(rates))+len(rates))%len(rates)])
		wanted := 0
		for l := range text.All() {
			s := strings.Trim(l.Text, " \t\x1A")
			if s != "" && s[0] >= '0' && s[0] <= '9' && !barred().MatchString(s) {
				wanted++
			}
		}
		if len(list.Events)+len(diags) < wanted {
			t.Errorf("%d event lines, %d events, %d diagnostics", wanted, len(list.Events), len(diags))
		}
	})
}
