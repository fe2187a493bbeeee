// Tests of subtitles as they are written: with labels, sounds, contractions.

package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pullscore/interp/testing/edits"
)

// talkPlan is the plan of the talk.
func talkPlan(file string) string {
	var body strings.Builder
	for _, c := range edits.Talk() {
		fmt.Fprintf(&body, "%s: %q\n", c.Who, c.Text)
	}
	return inCut(fmt.Sprintf("edit %q\n", file), body.String())
}

// variant returns a way to write subtitles.
func variant(t *testing.T, name string) edits.Variant {
	t.Helper()
	for _, v := range edits.Variants {
		if v.Name == name {
			return v
		}
	}
	t.Fatalf("there is no way to write called %q", name)
	return edits.Variant{}
}

// However subtitles write a talk, its lines have their times: none is wrong by
// more than 60 ms. Of two in one caption the words have the time that their
// syllables have in what is said in it.
func TestWaysToWriteSubtitles(t *testing.T) {
	const most = 0.06
	paired := linesOf(t, "cut.srt", edits.SubRip(variant(t, "two in one").Write(edits.Talk())))
	for _, v := range edits.Variants {
		got := linesOf(t, "cut.srt", edits.SubRip(v.Write(edits.Talk())))
		for i, c := range edits.Talk() {
			want := [2]float64{c.Start - edits.Talk()[0].Start, c.End - edits.Talk()[0].Start}
			if v.Paired {
				want = paired[i]
			}
			if i >= len(got) || math.Abs(got[i][0]-want[0]) > most || math.Abs(got[i][1]-want[1]) > most {
				t.Errorf("%s: line %d, %q, is at %.3v, want %.3v", v.Name, i+1, c.Text, got[i], want)
			}
		}
	}
}

// Voice tags of WebVTT name speakers as labels do.
func TestVoicesInSubtitles(t *testing.T) {
	text := "WEBVTT\n\n"
	for _, c := range edits.Talk() {
		text += fmt.Sprintf("00:%06.3f --> 00:%06.3f\n<v %s>%s\n\n", c.Start, c.End, c.Who[:1]+strings.ToLower(c.Who[1:]), c.Text)
	}
	for i, got := range linesOf(t, "cut.vtt", text) {
		c := edits.Talk()[i]
		if math.Abs(got[0]-c.Start+10) > 1e-9 || math.Abs(got[1]-c.End+10) > 1e-9 {
			t.Errorf("line %d is at %v, want %v to %v", i+1, got, c.Start-10, c.End-10)
		}
	}
}

// Of two places that are equally like a line its own speaker's wins.
func TestSpeakerTellsThePlace(t *testing.T) {
	plan := inCut("edit \"cut.srt\"\n", "OTTO: \"The rope is wet.\"\npause 2 s\nNORA: \"Leave it where it is.\"\n")
	cues := srt(5.0, 6.0, "NORA: Leave it where it is.", 10.0, 11.0, "OTTO: The rope is wet.", 14.0, 15.0, "OTTO: Leave it where it is.", 18.0, 19.0, "NORA: Leave it where it is.")
	res := interpret("plan.pull", plan, "cut.srt", cues)
	if got := res.Plan.Shots[0].Lines[1].Start; !nearly(got, 8) {
		t.Errorf("the line is at %v", got)
	}
}

// linesOf returns the times of the lines of the talk in a cut.
func linesOf(t *testing.T, file, text string) (times [][2]float64) {
	t.Helper()
	res := interpret("plan.pull", talkPlan(file), file, text)
	for _, l := range res.Plan.Shots[0].Lines {
		times = append(times, [2]float64{float64(l.Start), float64(l.End)})
	}
	return times
}
