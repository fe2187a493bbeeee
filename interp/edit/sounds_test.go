package edit

import (
	"bytes"
	"fmt"
	"testing"

	"pullscore/lang/otio"
	"pullscore/lang/timecode"
)

// What is heard of a shot is kept beside what is seen of it, by list and by timeline: of a
// list by the channels of its events, of a timeline by the kind of its tracks.
func TestSounds(t *testing.T) {
	rate25, err := timecode.ParseRate("25")
	if err != nil {
		t.Fatal(err)
	}
	const list = "TITLE: S\nFCM: NON-DROP FRAME\n" +
		"001  A1 V    C 10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1\n" +
		"002  A1 A    C 10:00:01:00 10:00:02:00 01:00:03:00 01:00:04:00\n* FROM CLIP NAME: 1\n" +
		"003  A1 A2   C 10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1\n" +
		"004  A1 AA/V C 10:00:05:00 10:00:06:00 01:00:04:00 01:00:05:00\n* FROM CLIP NAME: 1\n" +
		"005  A1 B    C 10:00:08:00 10:00:09:00 01:00:05:00 01:00:06:00\n* FROM CLIP NAME: 1\n" +
		"006  A1 A    C 10:00:08:00 10:00:09:00 00:59:00:00 00:59:01:00\n* FROM CLIP NAME: OTHER\n"
	clip := func(record, source int64) []otio.Item {
		return []otio.Item{{Kind: "Clip", Name: "1", Record: record, Frames: 25, Source: source}}
	}
	var line bytes.Buffer
	if err := otio.Write(&line, &otio.Timeline{Name: "S", Rate: rate25, Start: 90000, HasStart: true, Tracks: []otio.Track{
		{Name: "V1", Kind: "Video", Frames: 100, Items: clip(25, 1000)},
		{Name: "A1", Kind: "Audio", Frames: 100, Items: clip(10, 985)},
	}}); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, src, seen, heard string }{
		{"a.edl", list, " 90000+900000 90100+900125 90125+900200", " 90000+900000 90075+900025 90100+900125 90125+900200"},
		{"a.otio", line.String(), " 90025+1000", " 90010+985"},
	} {
		cut, diags := Read(decode(c.name, c.src), rate25, Wanted{Shots: []string{"1"}})
		if len(diags) > 0 {
			t.Fatal(diags)
		}
		said := func(pieces []Piece) (text string) {
			for _, p := range pieces {
				text += fmt.Sprintf(" %d+%d", p.RecordIn, p.SourceIn)
			}
			return text
		}
		if seen, heard := said(cut.Pieces("1")), said(cut.Heard("1")); seen != c.seen || heard != c.heard {
			t.Errorf("%s: seen%s, heard%s", c.name, seen, heard)
		}
		if cut.Start != 90000 || len(cut.Others) != 0 {
			t.Errorf("%s begins at %d, others %q", c.name, cut.Start, cut.Others)
		}
	}
}
