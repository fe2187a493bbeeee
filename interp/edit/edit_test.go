package edit

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/speech"
	"pullscore/interp/wording"
	"pullscore/lang/edl"
	"pullscore/lang/lines"
	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// all is everything that these files have.
var all = Wanted{
	Shots: []string{"1", "2", "3", "9", "14b", "b7", "in", "out", "sound", "a2", "a1"},
	Words: wording.NewVocabulary(speech.Fold(speech.Split("Hello who is there then gone"))),
}

func decode(name, src string) *lines.Text {
	t, _ := lines.Decode(name, []byte(src))
	return t
}

// words returns how many words a cut has.
func (c *Cut) words() int {
	if c.Said == nil {
		return 0
	}
	return c.Said.Len()
}

// Files are known by their ending, and else by how they begin.
func TestKinds(t *testing.T) {
	const (
		srt  = "1\n00:00:01,000 --> 00:00:02,000\nHello.\n"
		vtt  = "WEBVTT\n\n00:01.000 --> 00:02.000\nHello.\n"
		list = "001  AX  V  C  00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00\n* FROM CLIP NAME: 3\n"
		otio = `{"OTIO_SCHEMA":"Timeline.1","tracks":{"OTIO_SCHEMA":"Stack.1","children":[]}}`
	)
	for _, c := range []struct {
		name, src string
		words     int
		clips     int
		unknown   bool
	}{
		{"a.srt", srt, 1, 0, false}, {"a.VTT", vtt, 1, 0, false}, {"a.edl", list, 0, 1, false}, {"a.otio", otio, 0, 0, false},
		{"a", srt, 1, 0, false}, {"a.txt", vtt, 1, 0, false}, {"a.lst", "TITLE: X\n" + list, 0, 1, false}, {"a.lst", list, 0, 1, false}, {"a.json", otio, 0, 0, false},
		{"a.txt", "Hello.\n", 0, 0, true}, {"a.pull", srt, 0, 0, true}, {"a", "", 0, 0, true},
	} {
		cut, diags := Read(decode(c.name, c.src), timecode.Rate{}, all)
		switch {
		case c.unknown:
			if cut != nil || len(diags) != 1 || diags[0].Code != "unknown-cut" {
				t.Errorf("%s %.10q: %+v %+v", c.name, c.src, cut, diags)
			}
		case cut == nil || len(diags) > 0 || cut.words() != c.words || len(cut.Clips) != c.clips:
			t.Errorf("%s %.10q: %+v %+v", c.name, c.src, cut, diags)
		}
	}
}

// What is no speech is left out, and words have the times of their syllables.
func TestWords(t *testing.T) {
	cut, _ := Read(decode("a.srt", "2\n00:00:03,000 --> 00:00:04,000\nMRS. DALE: Gone!\n\n"+
		"1\n00:00:01,000 --> 00:00:02,000\n[a door slams] <i>Who</i> is\nthere, [steps] then?\n\n3\n00:00:05,000 --> 00:00:06,000\n[rain]\n"), timecode.Rate{}, all)
	var got []string
	for _, w := range cut.Said.Words(0, cut.Said.Len()) {
		got = append(got, fmt.Sprintf("%s %.2f-%.2f", strings.TrimSpace(w.Text), w.Start, w.End))
	}
	if s := strings.Join(got, "|"); s != "Who 1.00-1.25|is 1.25-1.50|there, 1.50-1.75|then? 1.75-2.00|Gone! 3.00-4.00" {
		t.Errorf("%s", s)
	}
}

// Of many subtitles each keeps its words and its time, also where others say nothing.
func TestManySubtitles(t *testing.T) {
	var src, want strings.Builder
	for n := range 3*batch + 7 {
		text := "[rain]"
		if n%5 > 0 {
			text = fmt.Sprintf("Who is there %d?", 10_001+n)
			fmt.Fprintf(&want, "%d Who is there %d? ", n, 10_001+n)
		}
		at := fmt.Sprintf("%02d:%02d:%02d", n/3600, n/60%60, n%60)
		fmt.Fprintf(&src, "%d\n%s,000 --> %s,900\n%s\n\n", n, at, at, text)
	}
	cut, diags := Read(decode("a.srt", src.String()), timecode.Rate{}, all)
	var got strings.Builder
	for from := 0; from < cut.words(); {
		n := 0
		for _, w := range cut.Said.Words(from, from+20) { // the times of two may be in it
			if n > 0 && w.Start == math.Floor(w.Start) {
				break
			}
			if w.Start == math.Floor(w.Start) {
				fmt.Fprintf(&got, "%.0f ", w.Start)
			}
			if w.Part == 0 {
				got.WriteString(strings.TrimSpace(w.Text) + " ")
			}
			n++
		}
		from += n
	}
	if len(diags) > 0 || got.String() != want.String() {
		t.Errorf("%v %s", diags, got.String())
	}
}

// Clips and markers that are written are read back on their frames, at every
// rate, out of either form.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := rapid.SampledFrom(timecode.Rates()).Draw(t, "rate")
		start := rapid.Int64Range(0, rate.Day()-10_000).Draw(t, "start")
		source := rapid.Int64Range(0, rate.Day()-10_000).Draw(t, "source")
		length := rapid.Int64Range(1, 5000).Draw(t, "length")
		at := rapid.Int64Range(0, length-1).Draw(t, "at")

		var list, line bytes.Buffer
		if err := edl.Write(&list, &edl.List{Title: "T", Events: []edl.Event{{
			Number: "001", Reel: "A1", Channels: "V", Transition: "C", Clip: "14B",
			SourceIn: source, SourceOut: source + length, RecordIn: start, RecordOut: start + length,
			Markers: []edl.Marker{{At: start + at, Colour: "RED", Text: "knock"}},
		}}}, rate); err != nil {
			t.Fatal(err)
		}
		if err := otio.Write(&line, &otio.Timeline{Name: "T", Rate: rate, Start: start, HasStart: true, Tracks: []otio.Track{{
			Name: "V1", Kind: "Video", Frames: length, Items: []otio.Item{{
				Kind: "Clip", Name: "14b", Frames: length, Source: source,
				Markers: []otio.Marker{{Name: "knock", Start: source + at}},
			}},
		}}}); err != nil {
			t.Fatal(err)
		}
		for name, src := range map[string]string{"a.edl": list.String(), "a.otio": line.String()} {
			cut, diags := Read(decode(name, src), rate, all)
			if len(diags) > 0 {
				t.Fatalf("%s: %+v in\n%s", name, diags, src)
			}
			pieces := cut.Pieces("14B")
			if len(pieces) != 1 || len(cut.Markers) != 1 || cut.Start != start || !cut.HasStart {
				t.Fatalf("%s at %s: %+v", name, rate, cut)
			}
			p, m := pieces[0], cut.Markers[0]
			if p.RecordIn != start || p.RecordOut != start+length || p.SourceIn != source || p.Speed != 1 || m.At != start+at || m.Text != "knock" {
				t.Fatalf("%s at %s: %+v %+v", name, rate, p, m)
			}
		}
	})
}

// Of a list the clips that are seen count: no sound, no outgoing end of a
// dissolve, no clip that is switched off.
func TestWhatIsSeen(t *testing.T) {
	cut, _ := Read(decode("a.edl", `TITLE: T
FCM: NON-DROP FRAME
001  A1  AA  C        00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00
* FROM CLIP NAME: SOUND
002  A1  V   C        00:00:01:00 00:00:01:00 01:00:01:00 01:00:01:00
* FROM CLIP NAME: OUT
002  A2  V   D    012 00:00:05:00 00:00:06:00 01:00:01:00 01:00:02:00
* TO CLIP NAME: IN
003  14B B   C        00:00:01:00 00:00:03:00 01:00:02:00 01:00:03:00
M2   14B     048.0                00:00:01:00
`), timecode.Rate{}, all)
	if len(cut.Clips) != 2 || len(cut.Pieces("in")) != 1 || len(cut.Pieces("14b")) != 1 || cut.Clips[1].Speed != 2 || len(cut.Pieces("A")) != 0 {
		t.Errorf("%+v", cut.Clips)
	}
}

// A shot goes by the names of clips; by reels only where no clip has its name.
func TestReels(t *testing.T) {
	cut, _ := Read(decode("a.edl", `001  2  V  C  00:00:00:00 00:00:01:00 01:00:00:00 01:00:01:00
* FROM CLIP NAME: 1
002  9  V  C  00:00:00:00 00:00:01:00 01:00:01:00 01:00:02:00
* FROM CLIP NAME: 2
003  B7 V  C  00:00:00:00 00:00:01:00 01:00:02:00 01:00:03:00
`), timecode.Rate{}, all)
	for shot, in := range map[string]int64{"1": 86400, "2": 86424, "b7": 86448, "9": 86424} {
		if list := cut.Pieces(shot); len(list) != 1 || list[0].RecordIn != in {
			t.Errorf("shot %s: %+v", shot, list)
		}
	}
}

// A timeline of another rate is taken in seconds, and that is told.
func TestOtherRate(t *testing.T) {
	rate25, err := timecode.ParseRate("25")
	if err != nil {
		t.Fatal(err)
	}
	var line bytes.Buffer
	if err := otio.Write(&line, &otio.Timeline{Name: "T", Rate: rate25, Tracks: []otio.Track{{
		Name: "V1", Kind: "Video", Frames: 100, Items: []otio.Item{{Kind: "Clip", Name: "1", Record: 50, Frames: 50, Source: 25}},
	}}}); err != nil {
		t.Fatal(err)
	}
	cut, diags := Read(decode("a.otio", line.String()), timecode.Rate{}, all)
	if len(diags) != 1 || diags[0].Code != "other-rate" {
		t.Errorf("%+v", diags)
	}
	if c := cut.Clips[0]; c.RecordIn != 48 || c.RecordOut != 96 || c.SourceIn != 24 {
		t.Errorf("%+v", c)
	}
	cut.Move(1000)
	if c := cut.Clips[0]; c.RecordIn != 1048 || c.RecordOut != 1096 || cut.Start != 1000 || !cut.HasStart {
		t.Errorf("moved: %+v", c)
	}
}

// Nested timelines are read to any depth. What carries a shot's name is a clip: the
// innermost of them, and none that lies wholly under others.
func TestNested(t *testing.T) {
	const (
		head  = `{"OTIO_SCHEMA":"Timeline.1","global_start_time":{"value":100,"rate":24},"tracks":{"OTIO_SCHEMA":"Stack.1","children":[`
		clip  = `{"OTIO_SCHEMA":"Clip.1","name":"%s","source_range":{"start_time":{"value":%d,"rate":24},"duration":{"value":%d,"rate":24}}}`
		row   = `{"OTIO_SCHEMA":"Track.1","name":"%s","kind":"Video","children":[%s]}`
		group = `{"OTIO_SCHEMA":"Stack.1","name":"%s","children":[%s]}`
	)
	of := fmt.Sprintf
	for _, c := range []struct{ name, src, want, told string }{
		{"a clip in a stack in a track", of(row, "v", of(group, "s", of(row, "i", of(clip, "1", 50, 10)))), "1 100-110 50; ", ""},
		{"the stack is called as a shot", of(row, "v", of(group, "2", of(row, "i", of(clip, "x", 50, 10)))), "2 100-110 0; ", ""},
		{"the clip in it as well", of(row, "v", of(group, "2", of(row, "i", of(clip, "x", 70, 4)+","+of(clip, "1", 50, 10)))), "1 104-114 50; ", ""},
		{"covered", of(row, "v", of(clip, "1", 50, 10)) + "," + of(row, "v", of(clip, "x", 0, 10)), "", "note covered"},
		{"covered in a stack that is a shot", of(row, "v", of(group, "2", of(row, "i", of(clip, "x", 50, 10)))) + "," + of(row, "v", of(clip, "y", 0, 10)), "", "note covered"},
		{"not wholly", of(row, "v", of(clip, "1", 50, 10)) + "," + of(row, "v", of(clip, "x", 0, 9)), "1 100-110 50; ", ""},
	} {
		cut, diags := Read(decode("a.otio", head+c.src+"]}}"), timecode.Rate{}, all)
		got, told := "", ""
		for _, p := range cut.Clips {
			got += fmt.Sprintf("%s %d-%d %d; ", p.Name, p.RecordIn, p.RecordOut, p.SourceIn)
		}
		for _, d := range diags {
			told += fmt.Sprintf("%s %s", d.Severity, d.Code)
		}
		if got != c.want || told != c.told {
			t.Errorf("%s: %s %s, want %s %s", c.name, got, told, c.want, c.told)
		}
	}
}

// A clip that runs backwards begins with the last frame of its source.
func TestBackwards(t *testing.T) {
	cut, _ := Read(decode("a.edl", `001 R V C 00:00:10:00 00:00:12:00 01:00:00:00 01:00:02:00
* FROM CLIP NAME: 1
M2   R       -024.0                00:00:10:00
002 R V C 00:00:20:00 00:00:20:01 01:00:02:00 01:00:05:00
* FROM CLIP NAME: 1
M2   R        000.0                00:00:20:00
`), timecode.Rate{}, all)
	if a, b := cut.Clips[0], cut.Clips[1]; a.SourceIn != 12*24-1 || a.Speed != -1 || b.SourceIn != 20*24 || b.Speed != 0 {
		t.Errorf("%+v", cut.Clips)
	}
}

// A list of markers alone has no clips, and does not say where the picture starts.
// Black is no clip, and a reel that is none is no name.
func TestMarkersAlone(t *testing.T) {
	const (
		event = "001  1  V  C  00:00:00:00 00:00:00:01 01:00:00:00 01:00:00:01\n"
		bars  = "the door |C:Blue |M:knock |D:1\n"
	)
	for _, c := range []struct {
		name, src string
		clips     int
		start     bool
	}{
		{"markers alone", event + bars + event + bars, 0, false},
		{"with a clip", event + bars + event, 2, true},
		{"with a name", event + bars + "* FROM CLIP NAME: 2\n", 1, true},
		{"black", "001  BL  V  C  00:00:00:00 00:00:00:01 01:00:00:00 01:00:00:01\n", 0, true},
		{"no reel", "001  AX  V  C  00:00:00:00 00:00:00:01 01:00:00:00 01:00:00:01\n", 0, true},
	} {
		cut, diags := Read(decode("a.edl", c.src), timecode.Rate{}, Wanted{Shots: []string{"1", "2", "ax", "bl"}})
		if len(diags) > 0 || len(cut.Clips) != c.clips || cut.HasStart != c.start {
			t.Errorf("%s: %+v %v", c.name, cut, diags)
		}
		if bars := strings.Count(c.src, "|C:"); len(cut.Markers) != 2*bars {
			t.Errorf("%s: %+v", c.name, cut.Markers)
		}
	}
}
