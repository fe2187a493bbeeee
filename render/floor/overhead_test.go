package floor

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

func TestOverheadsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range Overhead(s, sheet.Options{Paper: paper}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
				plans.SVGOf(t, p)
			}
		}
	}
}

func TestGeneratedOverheadsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		for i, p := range Overhead(s, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
			plans.SVGOf(t, p)
		}
	})
}

// A place on the page, times the scale, is the place on the floor.
func TestFloorIsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 5)
		for i := range rapid.IntRange(1, 5).Draw(t, "subjects") {
			m.Put(fmt.Sprint("S", i), rapid.Float64Range(0.3, 300).Draw(t, "distance"), 0)
			m.Subjects[i].Across = plan.Still(rapid.Float64Range(-3, 3).Draw(t, "side"))
		}
		o := newOverhead(m.Start("S0").Shot, sheet.A4)
		for _, p := range o.people {
			shown := 0
			for _, f := range o.floors() {
				if !f.shows(p.places[0].x) {
					continue
				}
				shown++
				q := f.at(p.places[0].x, p.places[0].y)
				zero := f.at(0, 0)
				if !f.box.Holds(draw.Box{X: q.X, Y: q.Y}) {
					t.Errorf("%s stands off the floor", p.Name)
				}
				along, across := (q.X-zero.X)*f.scale/1000, (q.Y-zero.Y)*f.scale/1000
				if math.Abs(along-p.Along.At(0)) > 1e-9 || math.Abs(across-p.Across.At(0)) > 1e-9 {
					t.Errorf("%s stands at %v, %v m, want %v, %v", p.Name, along, across, p.Along.At(0), p.Across.At(0))
				}
				if digits := strings.TrimRight(strings.TrimPrefix(f.scaleText(), "1:"), "0"); !slices.Contains([]string{"1", "2", "25", "5"}, digits) {
					t.Errorf("the scale %s is not round", f.scaleText())
				}
			}
			if shown != 1 {
				t.Errorf("%s is on %d floors", p.Name, shown)
			}
		}
	})
}

// A lens of 50 mm focused at infinity sees 39.6 degrees across a picture 36 mm
// wide: 2 atan(36/100), the angle of view as handbooks of optics have it (from
// memory; the figure is worked out by hand).
func TestFieldOfViewIsTheLenss(t *testing.T) {
	m := plans.New("1", "", 5).Put("A", 2, 0)
	m.Optics.Focal, m.Optics.SensorW, m.Optics.Ring = plan.Still(0.05), 0.036, nil
	m.Optics.Start = plan.Target{Text: "inf", Distance: math.Inf(1)}
	if got := sightAt(m.Shot, 0).angle(); math.Abs(got-39.598) > 0.001 {
		t.Errorf("%v degrees, want 39.598", got)
	}
}

// A watch at hand and a house down the road each have a floor with room for
// them, and the sheet says that there are two scales.
func TestVeryNearAndVeryFarHaveTwoFloors(t *testing.T) {
	s := plans.New("1", "", 5).Put("WATCH", 0.1, 0).Put("HOUSE", 200, 0).Start("HOUSE").Shot
	o := newOverhead(s, sheet.A4)
	floors := o.floors()
	if len(floors) != 2 || floors[0].scale*100 > floors[1].scale {
		t.Fatalf("%d floors", len(floors))
	}
	for i, x := range []float64{0.1, 200} {
		if off := floors[i].at(x, 0).X - floors[i].at(0, 0).X; off < 40 {
			t.Errorf("at %v m it stands %v mm from the camera", x, off)
		}
	}
	if text := plans.TextOf(Overhead(s, sheet.Options{})); !strings.Contains(text, "at another scale") || !strings.Contains(text, "drawn larger above") {
		t.Errorf("two scales are not told in %q", text)
	}
}

// Every landing has its zone on some sheet, once.
func TestEveryLandingIsOnTheFloor(t *testing.T) {
	s := plans.LongShot()
	seen := map[int]int{}
	for _, z := range newOverhead(s, sheet.A4).foci {
		for _, n := range z.pulls {
			seen[n]++
		}
	}
	for _, p := range s.Pulls {
		if seen[p.Number] != 1 {
			t.Errorf("pull %d is shown %d times", p.Number, seen[p.Number])
		}
	}
}

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenOverheads(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three-racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly(), "pan-and-rack": plans.PanAndRack(), "all-ways": plans.AllWays()} {
		plans.CheckGolden(t, "overhead-"+name, Overhead(s, sheet.Options{}))
	}
	plans.CheckGolden(t, "overhead-near-far", Overhead(plans.NearAndFar(), sheet.Options{}))
}
