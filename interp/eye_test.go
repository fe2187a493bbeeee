package interp_test

import (
	"slices"
	"strings"
	"testing"
)

// A landing that the cut has taken away gives the eye nothing to look at, so that the
// next rack cannot come too soon for it.
func TestNoTimeForALandingThatIsCutAway(t *testing.T) {
	const code = "no-time-to-see"
	body := "NORA: \"Nobody has crossed this bar since my father lost his boat on it.\"\nrack to LAMP, on \"boat\", over 2.5 s\n" +
		"OTTO: \"Then we shall be the first.\"\nrack to NORA, on OTTO \"we\", over 1 s\n"
	head := "edit \"cut.edl\"\nedit \"cut.srt\" from 01:00:00:00\n"
	list := "001 A V C 10:00:05:00 10:00:13:00 01:00:00:00 01:00:08:00\n* FROM CLIP NAME: 1\n"
	res := interpret("plan.pull", inCut(head, body), "cut.edl", list, "cut.srt", srt(0., 1., "Then we shall be the first."))
	if got := codes(res); slices.Contains(got, code) || !slices.Contains(got, "removed") {
		t.Error(got)
	}
	// Where the landing is seen, it does come too soon.
	seen := strings.Replace(body, "on \"boat\", over 2.5 s", "landing on OTTO \"Then\", over 1 s", 1)
	if got := codes(interpret("plan.pull", inCut("", seen))); !slices.Contains(got, code) {
		t.Error(got)
	}
}
