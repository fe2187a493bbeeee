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
					for _, f := range drawtest.Faults(page) {
						t.Errorf("%s, shot %s: %s", name, s.ID, f)
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
