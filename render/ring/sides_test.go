package ring

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// The lens stands where the mean of both readings says once the ring has gone half of the
// play farther along its travel: from near towards infinity, from far towards near. A
// place beyond a stop of the ring is at the stop.
func TestTwoLinesLieHalfThePlayToEitherSide(t *testing.T) {
	for _, turns := range []string{"left", "right"} {
		s := plans.BothWays()
		s.Optics.TurnsTo = turns
		var want []float64
		for _, m := range marks.Of(s) {
			sides := []float64{m.Deg - 1, m.Deg + 1}
			if m.Aside() {
				sides = []float64{m.Deg}
			}
			for _, deg := range sides {
				want = append(want, 110*math.Pi*min(max(deg, 0), 310)/360)
			}
		}
		slices.Sort(want)
		got := printedMarks(t, Strip(s, sheet.Options{}), turns == "right")
		if len(got) != len(want) || len(want) < 8 {
			t.Fatalf("turning %s: lines at %v, want %v", turns, got, want)
		}
		for i := range want {
			if math.Abs(got[i]-want[i]) > 0.05 {
				t.Errorf("turning %s: a line at %.3f mm, want %.3f", turns, got[i], want[i])
			}
		}
	}
}

// The triangle of the line for those who come from near points towards infinity, on a
// tape and on a disc that run either way.
func TestTrianglesPointTheWayThatTheFocusGoes(t *testing.T) {
	s := plans.BothWays()
	s.WheelMM, s.Gear = 80, 1.5
	for _, clockwise := range []bool{true, false} {
		d := newDial(s, marks.Of(s), 60, clockwise)
		for _, m := range d.marks {
			if !d.two(m) {
				continue
			}
			near, far := d.triangle(m.Sides[1], 1), d.triangle(m.Sides[0], -1)
			outer := math.Hypot(near[1].X-far[1].X, near[1].Y-far[1].Y)
			lines := math.Hypot(near[0].X-far[0].X, near[0].Y-far[0].Y)
			on := d.point(d.hand(m.Sides[1])+5, d.track(d.hand(m.Sides[1]))) // towards infinity
			if !(outer > lines) || math.Hypot(near[1].X-on.X, near[1].Y-on.Y) >= math.Hypot(near[0].X-on.X, near[0].Y-on.Y) {
				t.Errorf("clockwise %v: the triangles of %s point the wrong way", clockwise, m.Name)
			}
		}
	}
}

// Lines that would be nearer than 0.6 mm are one, and the page says the play; a ring that
// was marked one way has one line, and nothing is said.
func TestOneLineWhereTwoWouldBeTooNear(t *testing.T) {
	lines := len(marks.Of(plans.ThreeRacks()))
	for _, tc := range []struct {
		name  string
		ring  *plan.Ring
		two   bool
		words string
	}{
		{"no play known", nil, false, ""},
		{"0.58 mm", plans.Play(0.6), false, "This ring has 0.6° of play, too little for two lines"},
		{"0.62 mm", plans.Play(0.65), true, "Two lines to a mark"},
		{"one way", &plan.Ring{Kind: plan.Measured, Play: 2, Marked: "inf"}, false, ""},
	} {
		s := plans.ThreeRacks()
		s.Ring = tc.ring
		pages := Strip(s, sheet.Options{})
		if got := len(printedMarks(t, pages, false)); (got > lines) != tc.two {
			t.Errorf("%s: %d lines for %d marks", tc.name, got, lines)
		}
		text := plans.TextOf(pages)
		if said := strings.Contains(text, "of play"); said != (tc.words != "") || !strings.Contains(text, tc.words) {
			t.Errorf("%s: %q is not said in %q", tc.name, tc.words, text)
		}
	}
}
