// Tests of shots that a cut shows in several pieces.

package interp_test

import (
	"fmt"
	"strings"
	"testing"
)

// liftEDL is a shot of 32 s at 25 frames a second from which 7.48 s are taken out.
const liftEDL = `TITLE: LIFT
FCM: NON-DROP FRAME
001  A021     V     C        10:20:10:00 10:20:21:13 01:00:00:00 01:00:11:13
* FROM CLIP NAME: 1
002  A021     V     C        10:20:29:00 10:20:42:00 01:00:11:13 01:00:24:13
* FROM CLIP NAME: 1
`

// at25 is inCut at 25 frames a second.
func at25(head, body string) string {
	return strings.Replace(inCut(head, body), "rate 24", "rate 25", 1)
}

// The list places each piece by its source, so that a time behind the lift is earlier
// in the record by what was taken out.
func TestLiftedPieces(t *testing.T) {
	res := interpret("plan.pull", at25("edit \"cut.edl\"\n", "cue a on 5 s\ncue b on 15 s\ncue c on 19.18 s\n"), "cut.edl", liftEDL)
	s := res.Plan.Shots[0]
	var got []string
	for _, p := range s.Pieces {
		got = append(got, fmt.Sprintf("%d %s %s %s %s-%s %v-%v line %d", p.Number, p.Clip, p.Reel, p.SourceIn, p.RecordIn, p.RecordOut, p.From, p.To, p.Line))
	}
	for _, c := range s.Cues {
		got = append(got, fmt.Sprintf("%s %s %s %s", c.Name, c.State, c.StartRecord, c.StartSource))
	}
	want := `1 1 A021 10:20:10:00 01:00:00:00-01:00:11:13 0-11.52 line 3
2 1 A021 10:20:29:00 01:00:11:13-01:00:24:13 19-32 line 5
a whole 01:00:05:00 10:20:15:00
b removed  10:20:25:00
c whole 01:00:11:18 10:20:29:05`
	if text := strings.Join(got, "\n"); text != want {
		t.Errorf("got\n%s", text)
	}
	if !nearly(s.Duration, 32) {
		t.Errorf("it lasts %v", s.Duration)
	}
}

// Neighbours that go on are one piece, as if the list had one event.
func TestJoinedPieces(t *testing.T) {
	list := "001 A V C 10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1\n" +
		"002 A V C 10:00:02:00 10:00:08:00 01:00:02:00 01:00:08:00\n* FROM CLIP NAME: 1\n"
	for text, want := range map[string]int{
		list: 1,
		strings.Replace(list, "002 A", "002 B", 1):                                     2,
		strings.Replace(list, "01:00:02:00 01:00:08:00", "01:00:03:00 01:00:09:00", 1): 2,
		list + "M2 A 048.0 10:00:02:00\n":                                              2,
	} {
		res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", "cue a on 1 s\n"), "cut.edl", text)
		if n := len(res.Plan.Shots[0].Pieces); n != want {
			t.Errorf("%d pieces, want %d, of\n%s", n, want, text)
		}
	}
}

// A piece that runs backwards begins where it ends, and a still shows one instant.
func TestPiecesBackwardsAndStill(t *testing.T) {
	list := "001 A V C 10:00:00:00 10:00:02:00 01:00:00:00 01:00:02:00\n* FROM CLIP NAME: 1\n" +
		"002 A V C 10:00:04:23 10:00:03:23 01:00:02:00 01:00:03:00\n* FROM CLIP NAME: 1\nM2 A -024.0 10:00:04:23\n" +
		"003 A V C 10:00:06:00 10:00:06:01 01:00:03:00 01:00:05:00\n* FROM CLIP NAME: 1\nM2 A 000.0 10:00:06:00\n"
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", "cue a on 4.5 s\ncue b on 6 s\ncue c on 5.5 s\n"), "cut.edl", list)
	var got []string
	for _, c := range res.Plan.Shots[0].Cues {
		got = append(got, c.State+" "+c.StartRecord)
	}
	if want := "whole 01:00:02:11, whole 01:00:03:00, removed "; strings.Join(got, ", ") != want {
		t.Errorf("%q", got)
	}
}
