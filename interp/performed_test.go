// A simulation: talks played exactly as they are planned, and cut anywhere.

package interp_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/testing/edits"
	"pullscore/lang"
)

// How many talks are played; PULLSCORE_TALKS sets another number, to be tried by hand.
const (
	talks    = 40
	talksVar = "PULLSCORE_TALKS"
)

// aTalk makes the body of a shot: lines of the talk with racks, cues, pauses, actions
// and movements between, of which none is in the way of another.
func aTalk(r *rand.Rand) string {
	var b strings.Builder
	say := func(form string, args ...any) { fmt.Fprintf(&b, form+"\n", args...) }
	for i, c := range edits.Talk()[:5+r.IntN(4)] {
		say("%s: %q", c.Who, c.Text)
		words := strings.Fields(c.Text)
		word := strings.Trim(words[r.IntN(min(2, len(words)))], "?.,:")
		to := []string{"NORA", "LAMP"}[r.IntN(2)]
		switch r.IntN(10) {
		case 0:
			say("rack to %s, on %q, over 0.6 s\npause 1 s", to, word)
		case 1:
			say("pause 1 s\nrack to %s, over 0.6 s\npause 1.2 s", to)
		case 2:
			say("NORA moves 5 cm nearer over 1 s, on %q\npause 1 s", word)
		case 3:
			say("pause 0.5 s\ncue c%d\nrack to %s, on c%d, over 0.7 s\npause 1 s", i, to, i)
		case 4:
			say("rack to NORA, on %q, over 0.7 s\npause 1 s\nfollow NORA\nNORA moves 5 cm farther over 1 s\npause 1.5 s", word)
		case 5:
			say("dolly in 2 cm over 0.5 s, on %q\npause 1 s", word)
		case 6:
			say("action \"the rope slips\", lasting 1.5 s\nrack to %s, over 0.6 s\npause 1 s", to)
		case 7:
			say("pause 1 s\nrack to LAMP, over 0.7 s\nhold 0.7 s\nrack to NORA, over 0.7 s\npause 1 s")
		case 8:
			say("pause 1.5 s")
		}
	}
	return b.String()
}

// A kept part of a take, in seconds.
type kept struct{ from, to float64 }

// cutAnywhere keeps one to three parts of a take.
func cutAnywhere(r *rand.Rand, long float64) (parts []kept) {
	frame := func(t float64) float64 { return math.Round(t*24) / 24 }
	most := 1 + r.IntN(3)
	for at := r.Float64() * long * 0.6; at < long-1 && len(parts) < most; {
		to := min(long, at+1+r.Float64()*long*0.7)
		parts = append(parts, kept{frame(at), frame(to)})
		at = to + 1 + r.Float64()*4
	}
	return parts
}

// played writes the list of the parts, and the captions of the lines that are heard
// whole in one of them.
func played(s *plan.Shot, parts []kept) (list string, heard []edits.Caption) {
	label := func(hours int, t float64) string {
		f := int(math.Round(t * 24))
		return fmt.Sprintf("%02d:%02d:%02d:%02d", hours, f/24/60, f/24%60, f%24)
	}
	record := 0.0
	for i, p := range parts {
		long := p.to - p.from
		list += fmt.Sprintf("%03d A V C %s %s %s %s\n* FROM CLIP NAME: 1\n", i+1, label(10, p.from), label(10, p.to), label(1, record), label(1, record+long))
		for _, l := range s.Lines {
			if float64(l.Start) >= p.from && float64(l.End) <= p.to {
				heard = append(heard, edits.Caption{Start: float64(l.Start) - p.from + record, End: float64(l.End) - p.from + record, Text: l.Text})
			}
		}
		record += long
	}
	return list, heard
}

// compare tells where a shot along a cut differs from the shot as it was played.
func compare(t *testing.T, as, cut *plan.Shot, parts []kept) {
	t.Helper()
	for i, p := range cut.Pulls {
		start, land := float64(as.Pulls[i].Start), float64(as.Pulls[i].Land)
		within, apart := false, p.Kind != "follow"
		for _, k := range parts {
			within = within || start >= k.from+0.01 && land <= k.to-0.01
			apart = apart && (land < k.from-0.01 || start > k.to+0.01)
		}
		if want := start - parts[0].from; p.State != plan.Removed && math.Abs(float64(p.Start)-want) > 0.01 {
			t.Errorf("pull %d starts at %v, want %v", p.Number, p.Start, want)
		}
		if apart && p.State != plan.Removed || within && p.State == plan.Part {
			t.Errorf("pull %d is %s", p.Number, p.State)
		}
	}
	for i, l := range cut.Lines {
		if want := float64(as.Lines[i].Start) - parts[0].from; l.State == plan.Whole && math.Abs(float64(l.Start)-want) > 0.01 {
			t.Errorf("line %d starts at %v, want %v", i+1, l.Start, want)
		}
	}
}

// A sound plan that was played as it is written has no error along any cut of it, and
// what is seen stands where it was played.
func TestCutAnywhere(t *testing.T) {
	n, sound := talks, 0
	if text := os.Getenv(talksVar); text != "" {
		n, _ = strconv.Atoi(text)
	}
	for seed := range n {
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		body := aTalk(r)
		alone := interpret("plan.pull", inCut("", body))
		shot := alone.Plan.Shots[0]
		parts := cutAnywhere(r, float64(shot.Duration))
		list, heard := played(shot, parts)
		if countErrors(alone.Findings) > 0 || len(heard) == 0 {
			continue
		}
		sound++
		res := interpret("plan.pull", inCut("edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n", body), "cut.edl", list, "cut.srt", edits.SubRip(heard))
		for _, d := range res.Findings {
			if d.Severity == lang.Error {
				t.Errorf("%s [%s]", d.Message, d.Code)
			}
		}
		compare(t, shot, res.Plan.Shots[0], parts)
		if t.Failed() {
			t.Fatalf("seed %d, parts %v of\n%s", seed, parts, body)
		}
	}
	if sound < n/2 {
		t.Errorf("only %d of %d talks are sound", sound, n)
	}
}
