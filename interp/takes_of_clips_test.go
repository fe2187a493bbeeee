package interp_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// events writes a list of the clips of a cut at 24 frames a second, one behind the other:
// name, reel, and the source in and out in seconds from ten o'clock.
func events(list ...[4]any) string {
	var b strings.Builder
	b.WriteString("TITLE: TAKES\nFCM: NON-DROP FRAME\n")
	label := func(hour, s int) string { return fmt.Sprintf("%02d:%02d:%02d:00", hour, s/60, s%60) }
	at := 0
	for i, e := range list {
		from, to := e[2].(int), e[3].(int)
		fmt.Fprintf(&b, "%03d  %-8s V     C        %s %s %s %s\n* FROM CLIP NAME: %s\n",
			i+1, e[1], label(10, from), label(10, to), label(1, at), label(1, at+to-from), e[0])
		at += to - from
	}
	return b.String()
}

// Which take each piece of shot 1 is of, by name, statement, list of clips and source.
func TestTakesOfClips(t *testing.T) {
	const ale = "Heading\nFIELD_DELIM\tTABS\nFPS\t24\n\nColumn\nName\tScene\tTake\tTape\tStart\tEnd\n\nData\n" +
		"a\t1\t7\tA001\t10:00:00:00\t10:02:00:00\nb\t1\t8\tA001\t10:02:00:00\t10:04:00:00\n"
	two := events([4]any{"1", "A001", 60, 64}, [4]any{"1", "A001", 180, 186})
	for name, c := range map[string]struct {
		list, head, shot string
		want             string // takes of the pieces, their shot times, the findings
	}{
		"one take":             {events([4]any{"1", "A001", 60, 64}), "", "", "(0-4)"},
		"a take in its name":   {events([4]any{"1-3", "A001", 60, 64}), "", "", "3(0-4)"},
		"two takes":            {events([4]any{"1-3", "A001", 60, 64}, [4]any{"1 TK 4.MOV", "A001", 180, 186}), "", "", "3(0-4) 4(4-10) several-takes"},
		"another shot":         {events([4]any{"1-3", "A001", 60, 64}, [4]any{"1A-4", "A001", 180, 186}), "", "", "3(0-4)"},
		"one take, far apart":  {events([4]any{"1-3", "A001", 60, 64}, [4]any{"1-3", "A001", 180, 186}), "", "", "3(0-4) 3(120-126)"},
		"by its source":        {two, "", "", "10:01:00:00(0-4) 10:03:00:00(4-10) several-takes takes-guessed"},
		"near by":              {events([4]any{"1", "A001", 60, 64}, [4]any{"1", "A001", 90, 96}), "", "", "(0-4) (30-36)"},
		"by a list of clips":   {two, "clips \"day.ale\"\n", "", "7(0-4) 8(4-10) several-takes"},
		"another tape":         {strings.ReplaceAll(two, "A001", "A009"), "clips \"day.ale\"\n", "", "10:01:00:00(0-4) 10:03:00:00(4-10) several-takes takes-guessed"},
		"named":                {events([4]any{"the light", "A001", 60, 64}), "", "clip \"the *\"\n", "(0-4)"},
		"named, with its take": {events([4]any{"the light", "A001", 60, 64}), "", "clip \"THE LIGHT\", take \"2\", reel \"a0?1\"\n", "2(0-4)"},
		"of another reel":      {events([4]any{"the light", "A001", 60, 64}), "", "clip \"the light\", reel \"B*\"\n", " no-such-clip"},
		"by where it begins": {two, "", "clip \"1\", take \"5\", from 10:00:00:00 to 10:02:00:00\nclip \"1\", take \"6\", from 10:03:00:00 to 10:03:00:01\n",
			"5(0-4) 6(4-10) several-takes"},
		"none is named so":    {two, "", "clip \"2*\"\n", " no-such-clip"},
		"the name counts not": {events([4]any{"1", "A001", 60, 64}, [4]any{"x", "A001", 180, 186}), "", "clip \"x\"\n", "(0-6)"},
		"from behind to":      {two, "", "clip \"1\", from 10:02:00:00 to 10:01:00:00\n", " out-of-range"},
	} {
		res := interpret("plan.pull", inCut("edit \"cut.edl\"\n"+c.head, c.shot), "cut.edl", c.list, "day.ale", ale)
		var pieces []string
		for _, p := range res.Plan.Shots[0].Pieces {
			pieces = append(pieces, fmt.Sprintf("%s(%v-%v)", p.Take, p.From, p.To))
		}
		got := strings.Join(pieces, " ")
		for _, d := range res.Findings {
			switch d.Code {
			case "several-takes", "takes-guessed", "no-such-clip", "shot-not-in-edit", "out-of-range", "bad-clips":
				got += " " + d.Code
			}
		}
		if inWords(got) != inWords(c.want) {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// inWords returns words in one order.
func inWords(words string) string {
	list := strings.Fields(words)
	slices.Sort(list)
	return strings.Join(list, " ")
}

// A shot that no clip is called after is told with the names that resemble it.
func TestNearClips(t *testing.T) {
	list := events([4]any{"V1-2", "A001", 60, 64}, [4]any{"1-B-7-Q", "A001", 60, 64}, [4]any{"2", "A001", 60, 64}, [4]any{"window", "A001", 60, 64})
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\n", ""), "cut.edl", list)
	for _, d := range res.Findings {
		if d.Code == "shot-not-in-edit" {
			if !strings.HasSuffix(d.Detail, `The nearest are V1-2, 1-B-7-Q and 2. Write clip "V1-2" under the shot if it is one of them.`) {
				t.Errorf("%s", d.Detail)
			}
			return
		}
	}
	t.Error("nothing is told")
}

// Two takes of one clip, the answer taken from the second: the shot is as long as both
// pieces, and the second goes on where the first ends. One long shot from the source of
// the one to that of the other would last more than six minutes.
func TestAnswerFromAnotherTake(t *testing.T) {
	list := events([4]any{"1", "A001", 60, 65}, [4]any{"1", "A001", 444, 449})
	const words = "1\n00:00:01,000 --> 00:00:03,000\nWhere is the rope?\n\n2\n00:00:05,000 --> 00:00:07,000\nOn the quay, by the lamp.\n"
	res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\"\nvoice OTTO\n",
		"NORA: \"Where is the rope?\"\nOTTO: \"On the quay, by the lamp.\"\n"), "cut.edl", list, "cut.srt", words)
	s := res.Plan.Shots[0]
	if len(s.Pieces) != 2 || !nearly(s.Duration, 10) || s.Pieces[1].From != 5 || s.Pieces[1].To != 10 {
		t.Errorf("it lasts %v, pieces %+v", s.Duration, s.Pieces)
	}
	if len(s.Lines) != 2 || !nearly(s.Lines[0].Start, 1) || !nearly(s.Lines[1].Start, 5) {
		t.Errorf("%+v", s.Lines)
	}
}
