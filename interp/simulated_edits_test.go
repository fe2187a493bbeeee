// A simulation: a talk through edits as cutters make them.

package interp_test

import (
	"math"
	"strings"
	"testing"

	"pullscore/interp/speech"
	"pullscore/interp/testing/edits"
	"pullscore/lang"
	"pullscore/lang/timecode"
)

// second is when the second of two people in one caption begins, as far as it says so:
// where the syllables of the first end, seconds. No caption has their true time, nor the
// silence between the two; in this talk they part by up to a third of a second.
func second(one, two edits.Caption) float64 {
	first, whole := speech.Duration(one.Text, 150), speech.Duration(one.Text+" "+two.Text, 150)
	return one.Start + (two.End-one.Start)*first/whole
}

// Through all edits the lines stand where the take has them: none is wrong by more
// than 60 ms where the words are exact, and at most 2 % of all; and a sound plan has
// no error.
func TestSimulatedEdits(t *testing.T) {
	const most = 0.06
	wrong, all := 0, 0
	for _, e := range edits.All {
		rate, err := timecode.ParseRate(e.Rate)
		if err != nil {
			t.Fatal(err)
		}
		list, err := e.List(rate)
		if err != nil {
			t.Fatal(err)
		}
		res := interpret("plan.pull", edits.Plan(e.Rate, "cut.edl"), "cut.edl", list, "cut.srt", e.Subtitles(rate))
		for _, d := range res.Findings {
			if d.Severity == lang.Error {
				t.Errorf("%s: %s [%s]", e.Name, d.Message, d.Code)
			}
		}
		shot := res.Plan.Shots[0]
		heard, lines := e.Heard(rate)
		for i, n := range lines {
			want := edits.Talk()[n].Start - e.Origin(rate) - e.CutOut(n)
			if strings.HasPrefix(e.Write, "two in one") && i%2 == 1 {
				want += second(heard[i-1], heard[i]) - heard[i].Start
			}
			all++
			if got := float64(shot.Lines[n].Start); math.Abs(got-want) > most {
				wrong++
				t.Logf("%s: line %d, %q, is at %.3f s, want %.3f s", e.Name, n+1, heard[i].Text, got, want)
				if e.Write == "plain" {
					t.Errorf("%s: a line of exact words is wrong", e.Name)
				}
			}
		}
	}
	if all < 180 || float64(wrong) > 0.02*float64(all) {
		t.Errorf("%d of %d lines are wrong", wrong, all)
	}
}
