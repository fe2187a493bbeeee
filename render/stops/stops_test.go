// The stops drawing: without faults on all plans, and the same as its golden.

package stops

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/svg"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// answerOf finds the stops of a shot; nil where it can be taken at none.
func answerOf(res *interp.Result, s *plan.Shot) *stops.Answer {
	a, ok := stops.Find(res.Retake(s), res.Kit(), stops.Options{Curve: true})
	if !ok {
		return nil
	}
	return a
}

func TestStopsAreDrawnWithoutFaults(t *testing.T) {
	all := plans.Real(t)
	all["../../examples/crowd"] = []byte(crowdOfRacks())
	pages := 0
	for name, src := range all {
		res := interp.Interpret(name, src, interp.Options{})
		for _, s := range res.Plan.Shots {
			a := answerOf(res, s)
			if a == nil {
				continue
			}
			for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
				for _, page := range Stops(s, a, sheet.Options{Paper: paper}) {
					pages++
					for _, check := range []func(*draw.Page) []string{drawtest.Strict, drawtest.Signs, drawtest.Units} {
						for _, f := range check(page) {
							t.Errorf("%s, shot %s: %s", name, s.ID, f)
						}
					}
					if n := inksOfCurves(page); len(n) > 1 {
						t.Errorf("%s, shot %s: curves differ by their ink", name, s.ID)
					}
					for _, bad := range []string{"NaN", "Inf"} {
						if strings.Contains(stopsSVG(t, page), bad) {
							t.Errorf("%s, shot %s holds %s", name, s.ID, bad)
						}
					}
				}
			}
		}
	}
	if pages < 40 {
		t.Errorf("only %d pages were drawn", pages)
	}
}

// inksOfCurves returns the strokes of focus width on a page: those of the curves.
func inksOfCurves(p *draw.Page) map[draw.Ink]bool {
	inks := map[draw.Ink]bool{}
	for it := range p.Root.All() {
		if path, ok := it.(draw.Path); ok && path.Stroke.Width == draw.FocusWidth {
			inks[path.Stroke.Ink] = true
		}
	}
	return inks
}

// Every rack that a plot shows has its number on its line at both ends.
func TestCurvesHaveTheirNumbersAtBothEnds(t *testing.T) {
	res := interp.Interpret("../../examples/crowd", []byte(crowdOfRacks()), interp.Options{})
	s := res.Plan.Shots[0]
	st := newStopsPage(s, answerOf(res, s), sheet.A4)
	for name, draws := range map[string]func(*draw.Group){"landing": st.drawLanding, "seeing": st.drawSeeing} {
		var g draw.Group
		draws(&g)
		count := map[int]int{}
		for it := range g.All() {
			if sub, ok := it.(*draw.Group); ok && sub.Name == signs.Rack {
				count[sub.Number]++
			}
		}
		if len(count) == 0 {
			t.Errorf("%s: no curve has a number", name)
		}
		for n, times := range count {
			if times != 2 {
				t.Errorf("%s: rack %d has its number %d times", name, n, times)
			}
		}
	}
}

// Curves that are nearer than 1.2 mm throughout share a line, with a dot between their
// numbers; others do not.
func TestCurvesThatAreNearShareALine(t *testing.T) {
	run := func(dy float64) [][]draw.Point { return [][]draw.Point{{{X: 40, Y: 50 + dy}, {X: 90, Y: 70 + dy}}} }
	l := &line{runs: run(0)}
	for dy, want := range map[float64]bool{0: true, 1.1: true, -1.1: true, 1.3: false, -1.3: false} {
		if l.shares(run(dy)) != want {
			t.Errorf("%v mm apart: shares a line: %t", dy, !want)
		}
	}
	if once := [][]draw.Point{{{X: 40, Y: 50}, {X: 90, Y: 72}}}; l.shares(once) {
		t.Error("curves that part at an end share a line")
	}
}

// crowdOfRacks is a shot with more racks than a plot has room for, with names
// longer than a line.
func crowdOfRacks() string {
	var b strings.Builder
	fmt.Fprintln(&b, "use \"kit.pull\"")
	for i := range 12 {
		fmt.Fprintf(&b, "subject WHOEVER_STANDS_FARTHEST_FROM_THE_DOOR_%d at %d cm\n", i, 150+40*i)
	}
	fmt.Fprintf(&b, "shot 1 \"A title that is far longer than what stands over a page, and goes on\"\n  with camera B, lens \"old 85\", stop f/2.3, meter f/2\n  start on WHOEVER_STANDS_FARTHEST_FROM_THE_DOOR_0\n")
	for i := 1; i < 24; i++ {
		fmt.Fprintf(&b, "  rack to WHOEVER_STANDS_FARTHEST_FROM_THE_DOOR_%d, landing on %d s, over %d ms\n", i*5%12, 2*i, 300+100*i)
	}
	return b.String()
}

func stopsSVG(t *testing.T, p *draw.Page) string {
	t.Helper()
	var out bytes.Buffer
	if err := svg.Write(&out, p); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// The goldens show in a review what a change does to the drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenStops(t *testing.T) {
	for _, g := range []struct{ file, shot string }{{"ticket-window", "12A"}, {"two-85s", "40B"}} {
		res, err := interp.Read(filepath.Join("..", "..", "examples", g.file+".pull"), interp.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range res.Plan.Shots {
			if s.ID != g.shot {
				continue
			}
			got := stopsSVG(t, Stops(s, answerOf(res, s), sheet.Options{})[0])
			file := filepath.Join("..", "..", "testdata", "golden", "stops-"+g.file+".svg")
			if os.Getenv("PULLSCORE_UPDATE") == "1" {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s differs", file)
			}
		}
	}
}
