package floor

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

var bothPapers = map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter}

// tester is what *testing.T and *rapid.T share.
type tester interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// check fails for every fault of the pages of a shot.
func check(t tester, name string, s *plan.Shot, pages []*draw.Page) {
	t.Helper()
	for i, p := range pages {
		for _, faults := range [][]string{drawtest.Faults(p), drawtest.Strict(p), drawtest.Signs(p), drawtest.Units(p)} {
			for _, fault := range faults {
				t.Errorf("%s, page %d: %s", name, i+1, fault)
			}
		}
		plans.SVGOf(t, p)
	}
	for _, fault := range append(drawtest.Order(pages, sheet.Names(s)), drawtest.Links(pages)...) {
		t.Errorf("%s: %s", name, fault)
	}
}

func TestFloorsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		for size, paper := range bothPapers {
			check(t, name+", "+size, s, Draw(s, sheet.Options{Paper: paper}))
		}
	}
}

func TestGeneratedFloorsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := plans.Draw(t)
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		check(t, fmt.Sprint(paper), s, Draw(s, sheet.Options{Paper: paper}))
	})
}

// The goldens show in a review what a change does to a drawing. Set
// PULLSCORE_UPDATE=1 to write them anew, then look at them.
func TestGoldenFloors(t *testing.T) {
	for name, s := range map[string]*plan.Shot{
		"three-racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly(),
		"pan-and-rack": plans.PanAndRack(), "all-ways": plans.AllWays(), "near-far": plans.NearAndFar(),
	} {
		plans.CheckGolden(t, "floor-"+name, Draw(s, sheet.Options{}))
	}
}

// twoCameras is a floor that no shot has: camera A stands, and camera B goes along a track
// beside it.
func twoCameras() *Floor {
	f := &Floor{layout.Floor{Name: "scene 31", Places: []layout.Place{
		{Letter: "a", Name: "HALDIS", When: "to 5 s", At: layout.Spot{X: 0.42, Y: 2.9}, Slant: math.NaN()},
		{Letter: "b", Name: "HALDIS", When: "from 7 s", At: layout.Spot{X: 0.75, Y: 2.35}, Later: true, Slant: math.NaN()},
		{Letter: "c", Name: "PEVIN", At: layout.Spot{X: -0.3, Y: 2.2}, Slant: math.NaN()},
		{Letter: "d", Name: "LANTERN", At: layout.Spot{X: -0.12, Y: 1.1}, Slant: math.NaN()},
	}, Ways: []layout.Way{{Who: "HALDIS", Run: []layout.Spot{{X: 0.42, Y: 2.9}, {X: 0.75, Y: 2.35}}}}, Notes: []string{"along: parallel to the lens's axis."}, Cautions: []string{"People move here: clear and light their ways."}}}
	state := func(words string, pose plan.Pose) layout.State {
		return layout.State{Words: words, Pose: pose, Lens: 0.077, Focal: 0.075, PerSide: 0.17, Shown: true, Tapes: layout.TapesTo(pose, f.Places, words == "start")}
	}
	a := state("start", plan.Pose{})
	b, end := state("start", plan.Pose{X: 1.63, Y: 3.5, Pan: -125}), state("7 s", plan.Pose{X: 1.63, Y: 3, Pan: -125})
	f.Cameras = []layout.Camera{
		{Name: "A", States: []layout.State{a}, Zones: []layout.Zone{{Seen: a, At: 1.1, Near: 1.07, Far: 1.13, Start: true, Name: "LANTERN"}, {Seen: a, At: 2.2, Near: 2.12, Far: 2.28, Pulls: []layout.Pull{{Number: 1}}, Name: "PEVIN"}}},
		{Name: "B", States: []layout.State{b, end}, Tracks: []layout.Track{{From: layout.Spot{X: 1.63, Y: 3.5}, To: layout.Spot{X: 1.63, Y: 3}, Words: "dolly 50 cm, 5 s to 7 s"}}, Zones: []layout.Zone{{Seen: b, At: 1.5, Near: 1.42, Far: 1.6, Pulls: []layout.Pull{{Number: 1}}, Name: "PEVIN"}}},
	}
	return f
}

// Several cameras are drawn by the same functions.
func TestTwoCameras(t *testing.T) {
	for size, paper := range bothPapers {
		pages := twoCameras().Pages(paper, func(*draw.Group, sheet.Folio) {})
		for _, p := range pages {
			for _, fault := range slices.Concat(drawtest.Faults(p), drawtest.Strict(p), drawtest.Signs(p)) {
				t.Errorf("%s: %s", size, fault)
			}
		}
		if size == "A4" {
			plans.CheckGolden(t, "floor-two-cameras", pages)
		}
	}
}

// Names of 1 to 24 letters in five scripts, of 1 to 12 people near one another.
func TestNamesOfManyScripts(t *testing.T) {
	scripts := []string{"ABWÉIL", "ЖИДОЙШ", "ΔΩΜΗΣΙ", "花子夜駅行", "אבגדהש"}
	rapid.Check(t, func(t *rapid.T) {
		m := plans.New("1", "", 10)
		var names []string
		for i := range rapid.IntRange(1, 12).Draw(t, "subjects") {
			letters := rapid.SampledFrom(scripts).Draw(t, "script")
			name := rapid.StringOfN(rapid.RuneFrom([]rune(letters)), 1, 24, -1).Draw(t, "name")
			if slices.Contains(names, name) {
				name = fmt.Sprint(name, i)
			}
			names = append(names, name)
			m.Put(name, rapid.Float64Range(1, 4).Draw(t, "distance"), 0.1)
			if rapid.Bool().Draw(t, "said") {
				m.Aside(name, rapid.Float64Range(-1, 1).Draw(t, "side"))
			}
		}
		m.Start(names[0])
		if rapid.Bool().Draw(t, "dolly") {
			m.Dolly(rapid.Float64Range(-2, 2).Draw(t, "by"), 1, 4)
		}
		for i, name := range names {
			if i < 6 {
				m.Rack(name, "", "", 4+float64(i), 4.5+float64(i))
			}
		}
		m.Imperial = rapid.Bool().Draw(t, "imperial")
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		check(t, fmt.Sprint(paper), m.Shot, Draw(m.Shot, sheet.Options{Paper: paper}))
	})
}
