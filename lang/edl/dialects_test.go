package edl

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pullscore/lang"
	"pullscore/lang/lines"
	"pullscore/lang/testing/samples"
)

// dialect is what a correct reader finds in a sample about the cut: rows of all event
// lines, or of the clips alone.
type dialect struct {
	Title   *string
	Rate    string
	Lines   [][]any // a tag cannot hold the name of this field, which has commas
	Clips   any     `json:"clips_name_take_recIn_recOut_srcIn_speed"`
	None    *int    `json:"clips"`
	Markers [][]string
	Notes   [][]string `json:"markers_text_note_record"`
	Black   int
}

// rate is the sample's, or the lowest of 24 and 25 that has its frames.
func (w dialect) rate() string {
	if w.Rate != "" {
		return w.Rate
	}
	if strings.Contains(fmt.Sprint(w.Lines), ":24 ") {
		return "25"
	}
	return "24"
}

func TestDialectSamples(t *testing.T) {
	samples.EachCut(t, "edl/", func(t *testing.T, name string, src []byte, raw json.RawMessage) {
		var want dialect
		if err := json.Unmarshal(raw, &want); err != nil {
			t.Fatal(err)
		}
		want.Lines = linesOf(t, raw)
		rate := mustRate(t, want.rate())
		text, _ := lines.Decode(name, src)
		list, diags := Read(text, rate)
		for _, d := range diags {
			if d.Severity == lang.Error || d.Code == "unknown-line" {
				t.Errorf("%d: %s", d.Range.Start.Line, d.Message)
			}
		}
		if want.Title != nil && list.Title != *want.Title {
			t.Errorf("title %q, want %q", list.Title, *want.Title)
		}
		var rows, clips, markers []string
		black, bare := 0, 0
		for _, e := range list.Events {
			video := strings.ContainsAny(e.Channels, "VB")
			rows = append(rows, fmt.Sprint(strings.TrimLeft(e.Number, "0"), " ", e.Reel, " ", video, " ", rate.Format(e.SourceIn), " ", rate.Format(e.SourceOut), " ",
				rate.Format(e.RecordIn), " ", rate.Format(e.RecordOut), " ", e.Name()))
			for _, m := range e.Markers {
				markers = append(markers, fmt.Sprint(m.Text, " ", m.Note, " ", rate.Format(m.At)))
			}
			speed := 1.0
			if e.Speed != nil {
				speed = e.Speed.FPS
			}
			switch {
			case e.Bare:
				bare++
			case e.Black():
				black++
			default:
				clips = append(clips, fmt.Sprint(e.Name(), " ", rate.Format(e.RecordIn), " ", rate.Format(e.RecordOut), " ", rate.Format(e.SourceIn), " ", speed))
			}
		}
		if want.Lines != nil {
			var wanted []string
			for _, row := range want.Lines {
				wanted = append(wanted, strings.TrimSuffix(fmt.Sprintln(row[:8]...), "\n"))
			}
			same(t, "events", rows, wanted)
		}
		if list, ok := want.Clips.([]any); ok {
			var wanted []string
			for _, row := range list {
				c := row.([]any)
				wanted = append(wanted, fmt.Sprint(c[0], " ", c[2], " ", c[3], " ", c[4], " ", c[5]))
			}
			same(t, "clips", clips, wanted)
		}
		if want.None != nil && *want.None != len(list.Events)-bare {
			t.Errorf("%d clips, want %d", len(list.Events)-bare, *want.None)
		}
		var wanted []string
		for _, m := range want.Markers {
			wanted = append(wanted, fmt.Sprint(m[0], "  ", m[1]))
		}
		for _, m := range want.Notes {
			wanted = append(wanted, fmt.Sprint(m[0], " ", m[1], " ", m[2]))
		}
		if wanted != nil {
			same(t, "markers", markers, wanted)
		}
		if want.Lines == nil && black != want.Black {
			t.Errorf("%d events are black, want %d", black, want.Black)
		}
	})
}

func linesOf(t *testing.T, raw json.RawMessage) (rows [][]any) {
	t.Helper()
	var all map[string]json.RawMessage
	if err := json.Unmarshal(raw, &all); err != nil {
		t.Fatal(err)
	}
	if lines, ok := all["lines_event_reel_video_srcIn_srcOut_recIn_recOut_clip_[shot,take,camera,note]"]; ok {
		if err := json.Unmarshal(lines, &rows); err != nil {
			t.Fatal(err)
		}
	}
	return rows
}

func same(t *testing.T, what string, got, want []string) {
	t.Helper()
	if a, b := strings.Join(got, "\n"), strings.Join(want, "\n"); a != b {
		t.Errorf("%s:\n%s\nwant\n%s", what, a, b)
	}
}

// What the picture of an event is called.
func TestNames(t *testing.T) {
	const at = " 00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n"
	for _, c := range []struct{ name, src, want string }{
		{"a clip", "1 A1 V C" + at + "* FROM CLIP NAME: ONE\n* SOURCE FILE: one.mov", "ONE"},
		{"a file", "1 A1 V C" + at + "* SOURCE FILE: one.mov", "one.mov"},
		{"a reel", "1 A1 V C" + at, "A1"},
		{"no reel", "1 AX V C" + at + "2 AUX V C" + at + "3 BL V C" + at + "4 black V C" + at, "||~|~"},
		{"a dissolve on one line", "1 A1 V D 012" + at + "* FROM CLIP NAME: ONE\n* TO CLIP NAME: TWO", "TWO"},
		{"a dissolve on two", "1 A1 V C" + at + "1 A2 V D 012" + at + "* FROM CLIP NAME: ONE\n* TO CLIP NAME: TWO", "ONE|TWO"},
		{"a fade to black", "1 A1 V C" + at + "1 BL V D 012" + at + "* FROM CLIP NAME: ONE", "ONE|~ONE"},
		{"two cuts", "1 A1 V C" + at + "1 A2 V C" + at + "* FROM CLIP NAME: TWO", "A1|TWO"},
		{"picture and sound of one number", "1 A1 A C" + at + "1 A2 V D 012" + at + "* FROM CLIP NAME: ONE\n* TO CLIP NAME: TWO", "A1|TWO"},
	} {
		text, _ := lines.Decode("f.edl", []byte(c.src))
		list, _ := Read(text, mustRate(t, "24"))
		var got []string
		for _, e := range list.Events {
			name := e.Name()
			if e.Black() {
				name = "~" + name
			}
			got = append(got, name)
		}
		if s := strings.Join(got, "|"); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
	}
}

// Markers are written as most programs read them: colons, colours in capitals, text
// from one column on and not too long.
func TestMarkersWritten(t *testing.T) {
	rate := mustRate(t, "29.97df")
	at, _ := rate.Parse("01:00:00;12")
	long := strings.Repeat("Ærø ", 20)
	list := &List{Title: "T", Events: []Event{{
		Number: "001", Reel: "A1", Channels: "V", Transition: cut, SourceIn: at, SourceOut: at + 9, RecordIn: at, RecordOut: at + 9, Clip: long,
		Speed:   &Speed{Reel: "A1", FPS: -12.5, Source: at},
		Markers: []Marker{{At: at, Colour: "red", Text: "27A 1 rack"}, {At: at + 1, Colour: "Magenta", Text: long}},
	}}}
	var b bytes.Buffer
	if err := Write(&b, list, rate); err != nil {
		t.Fatal(err)
	}
	name := strings.TrimSpace(long)
	want := "TITLE: T\nFCM: DROP FRAME\n\n" +
		"001  A1       V     C        01:00:00;12 01:00:00;21 01:00:00;12 01:00:00;21\n" +
		"* FROM CLIP NAME: " + name + "\n" +
		"M2   A1       -012.5 01:00:00;12\n" +
		"* LOC: 01:00:00:12 RED     27A 1 rack\n" +
		"* LOC: 01:00:00:13 MAGENTA " + name[:len("Ærø ")*14] + "Ærø…\n"
	if got := b.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
