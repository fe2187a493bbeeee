package export

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/lang/edl"
	"pullscore/lang/timecode"
)

// A showing is an event of the cut in the tests, in frames from its first.
type showing struct {
	reel           string
	record, frames int64
	source         int64
	speed          float64
}

// recut is a shot in seven events: a lift, a gap in the record, twice the speed, half of
// it, backwards, as a still, and a part once more.
var recut = []showing{
	{reel: "A1", record: 0, frames: 100, source: 0, speed: 1},
	{reel: "A1", record: 100, frames: 50, source: 200, speed: 1},
	{reel: "A1", record: 180, frames: 40, source: 260, speed: 2},
	{reel: "A1", record: 220, frames: 20, source: 350, speed: 0.5},
	{reel: "A1", record: 240, frames: 30, source: 89, speed: -1},
	{reel: "A1", record: 270, frames: 25, source: 210, speed: 0},
	{reel: "A1", record: 300, frames: 60, source: 20, speed: 1},
}

// Where the record and the source of the tests begin: a few frames before a minute, at
// which drop-frame labels leave some out.
func begins(rate timecode.Rate) (record, source int64) {
	record, _ = rate.Parse("01:00:58:00")
	source, _ = rate.Parse("10:20:57:00")
	return record, source
}

// recutList writes the events as a list, which names its clips 4.
func recutList(t *testing.T, rate timecode.Rate) []byte {
	record, source := begins(rate)
	list := edl.List{Title: "T"}
	num, den := rate.Exact()
	for i, u := range recut {
		e := edl.Event{
			Number: fmt.Sprintf("%03d", i+1), Reel: u.reel, Channels: "V", Transition: "C", Clip: "4",
			RecordIn: record + u.record, RecordOut: record + u.record + u.frames, SourceIn: source + u.source,
		}
		e.SourceOut = e.SourceIn + max(1, int64(float64(u.frames)*u.speed))
		if u.speed < 0 {
			e.SourceIn, e.SourceOut = source+u.source+1-u.frames, source+u.source+1
		}
		if u.speed != 1 {
			e.Speed = &edl.Speed{Reel: u.reel, FPS: u.speed * float64(num) / float64(den), Source: e.SourceIn}
		}
		list.Events = append(list.Events, e)
	}
	var b bytes.Buffer
	if err := edl.Write(&b, &list, rate); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// inCut interprets a plan of one shot that follows a list.
func inCut(t *testing.T, rate timecode.Rate, name string, list []byte) *plan.Plan {
	t.Helper()
	src := "plan \"P\"\nrate " + rate.String() + "\nedit \"" + name + `"
camera A
  sensor 24 x 18 mm
lens "long"
  focal 50 mm
  stops f/2.8 to f/22
  closest 80 cm
  ring 300 deg, diameter 90 mm
subject NORA at 2 m
subject OTTO at 4 m
shot 4
  with camera A, lens "long", stop f/4
  start on NORA
  cue knock on 30 fr
  rack to OTTO, on 40 fr, over 40 fr
  rack to NORA, on 120 fr, over 40 fr
  rack to OTTO, on 190 fr, over 30 fr
  rack to NORA, on 280 fr, over 40 fr
`
	res := interp.Interpret("made.pull", []byte(src), interp.Options{ReadFile: func(path string) ([]byte, error) {
		if path != name {
			return nil, fmt.Errorf("no file %s", path)
		}
		return list, nil
	}})
	for _, d := range res.Findings {
		if d.Severity == lang.Error && d.Code != "faster-than-a-hand" && d.Code != "cannot-hold-both" {
			t.Fatalf("%d: %s: %s", d.Range.Start.Line, d.Code, d.Message)
		}
	}
	return res.Plan
}

// wanted are the events of the tests with the markers that they have: by hand, in
// frames of the shot.
func wanted(rate timecode.Rate) (list []string) {
	moments := []struct {
		at   int64
		text string
	}{
		{30, "knock"}, {40, "1 rack to OTTO"}, {80, "1 lands on OTTO"},
		{190, "3 rack to OTTO"}, {220, "3 lands on OTTO"}, {280, "4 rack to NORA"}, {320, "4 lands on NORA"},
	}
	record, source := begins(rate)
	for i, u := range recut {
		var markers []string
		for r := range u.frames {
			shows := float64(u.source) + float64(r)*u.speed
			for _, m := range moments {
				if shows == float64(m.at) && (u.speed != 0 || r == 0) {
					markers = append(markers, fmt.Sprintf("%d %s", record+u.record+r, m.text))
				}
			}
			if i == 1 && r == 0 { // it enters within the rack
				markers = append(markers, fmt.Sprintf("%d 3 rack to OTTO, 10 fr before the cut", record+u.record))
			}
		}
		list = append(list, event{"4", u.reel, record + u.record, u.frames, source + u.source, u.speed, markers}.String())
	}
	return list
}

// A shot that is cut up is written event by event, at every rate, as another reader
// finds it; and our own readers find the same pieces again.
func TestPiecesRoundTrip(t *testing.T) {
	for _, rate := range timecode.Rates() {
		t.Run(rate.String(), func(t *testing.T) {
			p := inCut(t, rate, "cut.edl", recutList(t, rate))
			var list, line bytes.Buffer
			if err := EDL(&list, p); err != nil {
				t.Fatal(err)
			}
			if err := OTIO(&line, p); err != nil {
				t.Fatal(err)
			}
			want := strings.Join(wanted(rate), "\n")
			if got := strings.Join(texts(otherEDL(list.String(), rate)), "\n"); got != want {
				t.Errorf("edl:\n%s\nwant\n%s", got, want)
			}
			if got := strings.Join(texts(otherOTIO(t, line.Bytes())), "\n"); got != want {
				t.Errorf("otio:\n%s\nwant\n%s", got, want)
			}
			pieces := func(p *plan.Plan) (list []string) {
				for _, u := range p.Shots[0].Pieces {
					list = append(list, fmt.Sprintf("%s %d %d %d %.4f %.4f to %.4f", u.Clip, u.In, u.Out, u.Source, u.Speed, u.From, u.To))
				}
				return list
			}
			for name, text := range map[string][]byte{"back.edl": list.Bytes(), "back.otio": line.Bytes()} {
				if got, want := pieces(inCut(t, rate, name, text)), pieces(p); !slices.Equal(got, want) {
					t.Errorf("%s:\n%s\nwant\n%s", name, strings.Join(got, "\n"), strings.Join(want, "\n"))
				}
			}
			if n := Away(p.Shots[0]); n != 1 {
				t.Errorf("%d moves are away", n)
			}
		})
	}
}

// The rows of a shot say where the cut shows them, and those of the cut alone are what
// it shows, frame by frame.
func TestRowsOfTheCut(t *testing.T) {
	rate := timecode.Rate{}
	s := inCut(t, rate, "cut.edl", recutList(t, rate)).Shots[0]
	record, source := begins(rate)
	var all, shown bytes.Buffer
	if err := CSV(&all, s); err != nil {
		t.Fatal(err)
	}
	if err := csvInCut(&shown, s); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&all).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	col := slices.Index(rows[0], "record")
	for frame, want := range map[int]string{
		0: rate.Format(record), 99: rate.Format(record + 99), 100: "", 150: "", 199: "", 210: rate.Format(record + 110), 262: rate.Format(record + 181),
	} {
		row := rows[frame+1]
		if row[col] != want || row[1] != rate.Format(source+int64(frame)) {
			t.Errorf("frame %d is at %q, source %s", frame, row[col], row[1])
		}
	}
	rows, err = csv.NewReader(&shown).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	n := 1
	for _, u := range recut {
		for r := range u.frames {
			when, _ := strconv.ParseFloat(rows[n][2], 64)
			if want := (float64(u.source) + float64(r)*u.speed) / 24; rows[n][col] != rate.Format(record+u.record+r) || when < want-1e-5 || when > want+1e-5 {
				t.Fatalf("row %d is at %s and %v s, want %v", n, rows[n][col], when, want)
			}
			n++
		}
	}
	if n != len(rows) {
		t.Errorf("%d rows, want %d", len(rows), n)
	}
}

// A name of the list that is not the shot's own stands before the markers of its events.
func TestMarkersNameTheirShot(t *testing.T) {
	rate := timecode.Rate{}
	p := inCut(t, rate, "cut.edl", recutList(t, rate))
	for i := range p.Shots[0].Pieces {
		p.Shots[0].Pieces[i].Clip = "4-2"
	}
	var list bytes.Buffer
	if err := EDL(&list, p); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"* FROM CLIP NAME: 4-2\n", " 4 1 rack to OTTO\n", " 4 knock\n"} {
		if !strings.Contains(list.String(), want) {
			t.Errorf("no %q in\n%s", want, &list)
		}
	}
}
