// A floor that is turned: nothing changes for a camera that turns with it.

package interp_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// turnedPair draws a scene twice: before a camera that looks straight ahead, and with
// everything turned to the right before one that first pans there.
func turnedPair(r *rand.Rand) (straight, turned string) {
	var a, b strings.Builder
	both := func(format string, args ...any) {
		fmt.Fprintf(&a, format+"\n", args...)
		fmt.Fprintf(&b, format+"\n", args...)
	}
	cm := func(lo, hi int) int { return lo + r.IntN(hi-lo+1) }
	place := func(what string, after string) {
		far, left := cm(150, 600), cm(1, 30)
		fmt.Fprintf(&a, "%s %d cm, %d cm left%s\n", what, far, left, after)
		fmt.Fprintf(&b, "%s %d cm, %d cm right%s\n", what, left, far, after)
	}
	profile := func(even string) string { return []string{"", ", " + even}[r.IntN(2)] }
	both("plan \"Turned\"\nrate 24")
	place("subject ANNA at", ", deep 10 cm")
	place("subject BRAM at", "")
	both("%s", strings.Join(rigKit[:3], "\n"))
	both("lens \"fifty\"\n  focal 50 mm\n  stops f/2 to f/22\n  closest 40 cm\n  ring 200 deg, diameter 90 mm")
	both("shot 1\n  with camera A, lens \"fifty\", stop f/4\n  start on BRAM\n  lasts 14 s")
	fmt.Fprintln(&b, "  pan right 90 deg, on 0 s, over 0.5 s")
	both("  rack to BRAM, on 1 s, over 0.8 s")
	both("  rack to ANNA, on 2 s, over 1 s%s", profile("even"))
	both("  follow ANNA, on 3.2 s, until 8.5 s")
	place("  ANNA moves to", fmt.Sprintf(", on 3.5 s, over %d.5 s%s", cm(2, 4), profile("smooth")))
	both("  dolly %s %d cm, on %d s, over 2 s%s", []string{"in", "out"}[r.IntN(2)], cm(10, 80), cm(4, 6), profile("even"))
	if r.IntN(2) == 0 { // else the straight camera has no rig at all
		both("  track %s %d cm, on %d s, over 1.5 s%s", []string{"left", "right"}[r.IntN(2)], cm(10, 80), cm(4, 7), profile("even"))
		both("  boom up %d cm, on %d s, over 1.5 s", cm(10, 80), cm(4, 7))
	}
	both("  rack to BRAM, on 9 s, over 1.2 s")
	both("  rack to ANNA, on 11 s, over 1.4 s")
	return a.String(), b.String()
}

// restsBehind returns the rests behind the pan.
func restsBehind(sh *plan.Shot) []plan.Rest {
	return slices.DeleteFunc(slices.Clone(sh.Rests), func(r plan.Rest) bool { return r.Start < 1.5 })
}

// figuresOf returns the figures of a value, as JSON has them.
func figuresOf(t *testing.T, v any) (figures map[string]any) {
	t.Helper()
	data, err := json.Marshal(v)
	if err == nil {
		err = json.Unmarshal(data, &figures)
	}
	if err != nil {
		t.Fatal(err)
	}
	return figures
}

// sameFigure tells whether two figures are the same to a billionth.
func sameFigure(a, b any) bool {
	x, okX := a.(float64)
	y, okY := b.(float64)
	if !okX || !okY {
		return fmt.Sprint(a) == fmt.Sprint(b)
	}
	return math.Abs(x-y) <= 2e-8*math.Max(1e-2, math.Abs(x))
}

func TestTurnedFloorChangesNoFigure(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 90))
	lags, bare := 0, 0
	for range 40 {
		straight, turned := turnedPair(r)
		a, b := interpret("a.pull", straight).Plan.Shots[0], interpret("b.pull", turned).Plan.Shots[0]
		if len(a.Pulls) != 5 || len(b.Pulls) != 5 {
			t.Fatalf("%d and %d pulls\n%s", len(a.Pulls), len(b.Pulls), turned)
		}
		if !a.Optics.Turns() && b.Optics.Turns() && a.Pulls[2].Lag > 0.001 {
			lags++
		}
		if a.Optics.Rig == nil {
			bare++
		}
		for i := 1; i < len(a.Pulls); i++ {
			compareFigures(t, a.Pulls[i], b.Pulls[i], straight)
		}
		was, is := restsBehind(a), restsBehind(b)
		if len(was) != len(is) {
			t.Fatalf("%d and %d rests\n%s", len(was), len(is), turned)
		}
		for i := range was {
			compareFigures(t, was[i], is[i], straight)
		}
	}
	if lags < 30 || bare < 10 {
		t.Errorf("only %d follows lag, and %d cameras have no rig: too few", lags, bare)
	}
}

// compareFigures reports figures that differ, but for where they are written.
func compareFigures[T *plan.Pull | plan.Rest](t *testing.T, a, b T, text string) {
	t.Helper()
	was, is := figuresOf(t, a), figuresOf(t, b)
	for name, v := range was {
		if name != "line" && name != "column" && name != "file" && name != "miss" && !sameFigure(v, is[name]) {
			t.Errorf("%s is %v, and %v with the floor turned\n%s", name, v, is[name], text)
		}
	}
	if len(was) != len(is) {
		t.Errorf("%d and %d figures", len(was), len(is))
	}
}
