package preview

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp"
)

// The page lists the start, the pulls and the rests in the order of time, each with
// what the pull list says of it, and marks those that are sharp less often than wanted.
func TestTellMoments(t *testing.T) {
	src := "plan \"P\"\nrate 24\nwatched on 12 m screen from 18 m\ncamera A\n  sensor 24.89 x 14 mm\n  on tripod\nlens \"L\"\n  focal 85 mm\n  closest 80 cm\n" +
		"  ring 90 deg, diameter 76 mm\n  stops f/1.4 to f/22\nwith camera A, lens \"L\", stop f/1.4\nsubject ANN at 3 m\nsubject BOX at 1.5 m\nshot 1\n  start on ANN\n" +
		"  rack to BOX, at 1 s, over 1 s\n  rack to ANN, at 3 s, over 1 s\n  follow ANN, on 5 s, until 8 s\n  ANN moves to 1.4 m over 2 s on 5.5 s, even\n  lasts 10 s\n"
	s := interp.Interpret("p.pull", []byte(src), interp.Options{}).Plan.Shots[0]
	list := tellMoments(s)
	var names []string
	last := math.Inf(-1)
	for _, m := range list {
		names = append(names, m.Name)
		if float64(m.Time) < last {
			t.Errorf("%s at %v is after %v", m.Name, m.Time, last)
		}
		last = float64(m.Time)
	}
	if want := []string{"starts on ANN", "rest", "1: to BOX", "rest", "2: to ANN", "rest", "3: follow ANN", "rest"}; !slices.Equal(names, want) {
		t.Fatalf("%q, want %q", names, want)
	}
	for i, want := range map[int]string{0: "may miss −", 1: "ANN, 0 s to 1 s: sharp ", 2: "lands ", 6: ", at worst "} {
		if !strings.Contains(list[i].Says[0], want) {
			t.Errorf("%s says %q, want %q", list[i].Name, list[i].Says, want)
		}
	}
	if got, want := list[0].Says[1], "Ring of \"L\": by the law of unit focusing: not measured"; got != want {
		t.Errorf("the page says %q, want %q", got, want)
	}
	if !strings.HasSuffix(list[2].Says[0], " by the law") {
		t.Errorf("%q does not say what it rests on", list[2].Says[0])
	}
	if !list[6].Hard || list[2].Hard != (s.Pulls[0].Chance < s.Wanted) {
		t.Errorf("hard: %+v", list)
	}
}
