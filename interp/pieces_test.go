// Tests of shots that a cut shows in several pieces.

package interp_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/lang"
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

// liftPlan is the shot of liftEDL: ten racks, three of them on lines that were lifted.
const liftPlan = `lasts 32 s
NORA: "You kept the lamp."
rack to LAMP, on NORA "lamp", over 0.6 s
OTTO: "It was never mine to keep."
rack to NORA, landing on "keep", over 0.6 s
pause 5.1 s
NORA: "Then whose name is on the paper?"
rack to LAMP, on "paper", over 0.8 s
OTTO: "My brother wrote it, in the winter."
rack to NORA, on "winter", over 0.8 s
NORA: "Your brother drowned."
rack to LAMP, on "drowned", over 0.8 s
OTTO: "He came back every night."
rack to NORA, on OTTO "He", over 0.5 s
NORA: "Put it out."
rack to LAMP, on NORA "out", over 0.6 s
OTTO: "I can not put it out."
rack to NORA, on "not", over 0.6 s
NORA: "Then I will."
rack to LAMP, on NORA "will", over 0.6 s
OTTO: "Leave it."
rack to GATE, on "Leave", over 1.6 s
`

// liftWords are the lines that are left, as the cut says them. What is behind the lift
// lies 7.48 s earlier than on the set: "He" at 19.18 s, "Leave" at 29 s.
func liftWords() string {
	const lift = 7.48
	return srt(1., 3., "You kept the lamp.", 4., 6.5, "It was never mine to keep.",
		19.18-lift, 20.44-lift, "He came back every night.", 22.-lift, 23.-lift, "Put it out.",
		24.-lift, 25.5-lift, "I can not put it out.", 26.5-lift, 27.5-lift, "Then I will.", 29.-lift, 30.-lift, "Leave it.")
}

// A lift of a part of a shot: what is behind it is told by the record and by the source
// as the cut has it, and what was lifted is told once.
func TestLift(t *testing.T) {
	res := interpret("plan.pull", at25("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", liftPlan), "cut.edl", liftEDL, "cut.srt", liftWords())
	s := res.Plan.Shots[0]
	var got []string
	for _, p := range s.Pulls {
		got = append(got, strings.TrimSpace(fmt.Sprintf("%d %s %s", p.Number, p.State, p.StartRecord)))
	}
	if text := strings.Join(got, ", "); !strings.HasPrefix(text, "1 whole") || !strings.Contains(text, "3 removed, 4 removed, 5 removed, 6 whole 01:00:11:18,") || !strings.HasSuffix(text, "10 whole 01:00:21:13") {
		t.Error(text)
	}
	if p := s.Pulls[5]; !nearly(p.Start, 19.18) || p.StartSource != "10:20:29:05" || p.From != "LAMP" {
		t.Errorf("rack 6 starts at %v, source %s, from %s", p.Start, p.StartSource, p.From)
	}
	var told []string
	for _, d := range res.Findings {
		switch d.Code {
		case "removed", "line-not-in-edit", "trimmed", "across-a-cut":
			told = append(told, d.Severity.String()+" "+d.Message)
		}
		if d.Severity == lang.Error || d.Pull >= 3 && d.Pull <= 5 {
			t.Errorf("%s of pull %d: %s", d.Code, d.Pull, d.Message)
		}
	}
	if want := "note 3 lines were cut out with their picture|note 3 of 10 moves are not in the cut: racks 3, 4 and 5"; strings.Join(told, "|") != want {
		t.Errorf("%q", told)
	}
	for _, l := range s.Lines[2:5] {
		if l.State != plan.Removed || l.Start < 6.5-1e-9 || l.End > 19.18+1e-9 {
			t.Errorf("%q is %s, %v to %v", l.Text, l.State, l.Start, l.End)
		}
	}
}

// headPlan is two lines with a rack on each; a cut may begin behind the first.
const headPlan = `start on NORA
NORA: "Nobody has crossed this bar since my father lost his boat on it."
rack to LAMP, on "boat", over 2.5 s
OTTO: "Then we shall be the first."
rack to GATE, on "first", over 1 s
`

// A head that has been cut away is no mistake of the plan: what was in it comes before
// the cut, and where there is no time left for it, it is done when the next move starts.
func TestHeadTrims(t *testing.T) {
	for _, c := range []struct {
		name  string
		words string
		first string
	}{
		{"short", srt(0., 1., "Then we shall be the first."), "01:00:00:"},
		{"long", srt(4., 5., "Then we shall be the first."), "01:00:04:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			list := "001 A V C 10:00:05:00 10:00:13:00 01:00:00:00 01:00:08:00\n* FROM CLIP NAME: 1\n"
			body := strings.Replace(headPlan, "start on NORA\n", "", 1)
			res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", body), "cut.edl", list, "cut.srt", c.words)
			for _, d := range res.Findings {
				if d.Severity == lang.Error {
					t.Errorf("%s: %s", d.Code, d.Message)
				}
			}
			s := res.Plan.Shots[0]
			if gap := float64(s.Lines[1].Start - s.Lines[0].End); gap < 0 || gap > 1 {
				t.Errorf("between the lines are %v s", gap)
			}
			one, two := s.Pulls[0], s.Pulls[1]
			if one.State != plan.Removed || two.State != plan.Whole || two.From != "LAMP" || two.To != "GATE" || !strings.HasPrefix(two.StartRecord, c.first) {
				t.Errorf("rack 1 is %s; rack 2 from %s to %s is %s from %s", one.State, two.From, two.To, two.State, two.StartRecord)
			}
			if one.Land > two.Start || !nearly(two.FromM, 0.95) {
				t.Errorf("rack 1 lands at %v, rack 2 starts at %v from %v m", one.Land, two.Start, two.FromM)
			}
		})
	}
}

// Lines for which the cut leaves no time between two others go back as a whole, and the
// moves on them are done between those that are seen, in the order written.
func TestNoTimeForWhatIsCutOut(t *testing.T) {
	body := `NORA: "You kept the lamp."
rack to LAMP, on "kept", over 1 s
OTTO: "It was never mine to keep, and I never said that it was."
rack to GATE, on "never said", over 1.5 s
rack to LAMP, over 1.5 s
NORA: "Put it out."
rack to NORA, on "out", over 1 s
`
	list := "001 A V C 10:00:00:00 10:00:03:00 01:00:00:00 01:00:03:00\n* FROM CLIP NAME: 1\n" +
		"002 A V C 10:00:03:12 10:00:08:00 01:00:03:00 01:00:07:12\n* FROM CLIP NAME: 1\n"
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", body),
		"cut.edl", list, "cut.srt", srt(1., 2.5, "You kept the lamp.", 3., 4., "Put it out."))
	var got []string
	s := res.Plan.Shots[0]
	for i, p := range s.Pulls {
		got = append(got, fmt.Sprintf("%s to %s %s", p.From, p.To, p.State))
		if i > 0 && p.Start < s.Pulls[i-1].Land-1e-9 {
			t.Errorf("pull %d starts at %v, before %v", p.Number, p.Start, s.Pulls[i-1].Land)
		}
	}
	if want := "NORA to LAMP whole, LAMP to GATE removed, GATE to LAMP removed, LAMP to NORA whole"; strings.Join(got, ", ") != want {
		t.Errorf("%q", got)
	}
	for _, d := range res.Findings {
		if d.Severity == lang.Error {
			t.Errorf("%s: %s", d.Code, d.Message)
		}
	}
}

// A line that subtitles leave out of a shot that is in the cut as one run stays where
// the plan has it, with its picture and its moves.
func TestLineOnlyNotHeard(t *testing.T) {
	list := "001 A V C 10:00:00:00 10:00:12:00 01:00:00:00 01:00:12:00\n* FROM CLIP NAME: 1\n"
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", `NORA: "You kept the lamp."
OTTO: "Never."
rack to LAMP, on "Never", over 1 s
NORA: "Put it out."
`), "cut.edl", list, "cut.srt", srt(1., 2., "You kept the lamp.", 9., 10., "Put it out."))
	if p := res.Plan.Shots[0].Pulls[0]; p.State != plan.Whole || p.StartRecord == "" {
		t.Errorf("%+v", p.InCut)
	}
	if got := codes(res); !slices.Contains(got, "line-not-in-edit") || slices.Contains(got, "removed") {
		t.Error(got)
	}
}
