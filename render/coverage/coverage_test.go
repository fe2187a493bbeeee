package coverage_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp"
	"pullscore/interp/coverage"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"

	paper "pullscore/render/coverage"
)

var sizes = []sheet.Paper{sheet.A4, sheet.Letter}

// Real plans are drawn without faults on both papers, and every word of the scene stands
// on them with the bars that it has.
func TestRealPlans(t *testing.T) {
	drawn := 0
	for name, src := range plans.Real(t) {
		sc := coverage.Of(interp.Interpret(name, src, interp.Options{}).Plan, false)[0]
		for _, size := range sizes {
			pages := paper.Coverage(sc, sheet.Options{Paper: size})
			drawn += len(pages)
			plans.CheckPaper(t, name, nil, pages)
			for _, fault := range drawtest.Links(pages) {
				t.Errorf("%s: %s", name, fault)
			}
			checkBars(t, name, sc, pages)
		}
	}
	if drawn < 30 {
		t.Errorf("only %d pages", drawn)
	}
}

// Scenes of any number of set-ups and lines are drawn without faults.
func TestGeneratedScenes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &plan.Plan{Title: rapid.SampledFrom([]string{"", "The last boat", "The last boat, scene 27: the wheelhouse of the night ferry, as it leaves the pier in the fog of the last of October"}).Draw(t, "title")}
		for i := range rapid.IntRange(1, 7).Draw(t, "shots") {
			s := plans.Draw(t)
			s.ID = fmt.Sprintf("%s%d", rapid.SampledFrom([]string{"", "27", "a set-up with a very long name "}).Draw(t, "id"), i)
			p.Shots = append(p.Shots, s)
			if i > 0 && len(s.Lines) > 0 && rapid.Bool().Draw(t, "same lines") {
				s.Lines = p.Shots[0].Lines
			}
		}
		sc := coverage.Of(p, false)[0]
		pages := paper.Coverage(sc, sheet.Options{Paper: rapid.SampledFrom(sizes).Draw(t, "paper")})
		plans.CheckPaper(t, "generated", nil, pages)
		checkBars(t, "generated", sc, pages)
	})
}

// Four hundred set-ups of one line stand below its words, some at a time.
func TestManySetups(t *testing.T) {
	p := &plan.Plan{Title: "Many"}
	for i := range 400 {
		s := plans.ThreeRacks()
		s.ID = fmt.Sprint(i)
		p.Shots = append(p.Shots, s)
	}
	sc := coverage.Of(p, false)[0]
	pages := paper.Coverage(sc, sheet.Options{})
	plans.CheckPaper(t, "many", nil, pages)
	checkBars(t, "many", sc, pages)
	if pages := paper.Coverage(coverage.Of(&plan.Plan{}, false)[0], sheet.Options{}); pages != nil {
		t.Error("a plan without lines is drawn")
	}
}

type tester interface {
	Helper()
	Errorf(string, ...any)
}

// checkBars fails where a bar does not begin and end with words above it, or where a word
// that a set-up has does not have a bar that says what its cell says.
func checkBars(t tester, name string, sc *coverage.Scene, pages []*draw.Page) {
	t.Helper()
	bars := map[string]int{} // of words with a bar, by set-up
	for _, p := range pages {
		for _, block := range groups(&p.Root, "line") {
			words := groups(block, "words")[0].Items
			for _, setup := range groups(block, "set-up") {
				for _, it := range setup.Items {
					g, ok := it.(*draw.Group)
					if !ok || g.Name == signs.Rack || g.Name == signs.Shown || len(g.Items) == 0 {
						continue
					}
					x1, x2, ok := ends(g)
					if !ok {
						continue
					}
					first := slices.IndexFunc(words, func(w draw.Item) bool { return math.Abs(w.(draw.Text).Box().X-x1) < 0.01 })
					last := slices.IndexFunc(words, func(w draw.Item) bool { return math.Abs(w.(draw.Text).Box().Right()-x2) < 0.01 })
					if first < 0 || last < first {
						t.Errorf("%s: line %d, set-up %s: a bar %s from %.2f to %.2f", name, block.Number, setup.Title, g.Name, x1, x2)
						continue
					}
					if g.Name != signs.Without {
						bars[setup.Title] += last - first + 1
					}
				}
			}
		}
	}
	for i, s := range sc.Setups {
		if bars[s.Shot] != s.Words {
			t.Errorf("%s: set-up %d %s has bars at %d words, and has %d", name, i, s.Shot, bars[s.Shot], s.Words)
		}
	}
}

// checkShown fails where a bar that the cut shows has no heavy bar at its left, or one that
// it does not show has one.
func checkShown(t *testing.T, sc *coverage.Scene, pages []*draw.Page) {
	t.Helper()
	drawn, bars := 0, 0
	for _, p := range pages {
		for _, setup := range groups(&p.Root, "set-up") {
			drawn += len(groups(setup, signs.Shown))
		}
	}
	for _, l := range sc.Lines {
		for i := range sc.Setups {
			last := false
			for k := range l.Words {
				c, ok := l.Words[k].Cell(i)
				if shown := ok && c.Shown(); shown && !last {
					bars++
				}
				last = ok && c.Shown()
			}
		}
	}
	if drawn < bars || bars < 4 {
		t.Errorf("%d heavy bars, and the cut shows %d parts of lines", drawn, bars)
	}
}

// ends returns where the widest shape of a bar begins and ends; ok is false where the
// group holds only words.
func ends(g *draw.Group) (x1, x2 float64, ok bool) {
	x1, x2 = math.Inf(1), math.Inf(-1)
	for _, it := range g.Items {
		switch it := it.(type) {
		case draw.Rect:
			half := it.Stroke.Width / 2
			if it.Fill != draw.None && it.Stroke.Ink == draw.None {
				half = 0
			}
			if g.Name == signs.Chance && it.Fill == draw.Paper {
				continue
			}
			if g.Name == signs.Chance { // its frame is drawn on the edges
				half = 0
			}
			x1, x2, ok = min(x1, it.Box.X-half), max(x2, it.Box.Right()+half), true
		case draw.Line:
			x1, x2, ok = min(x1, it.From.X), max(x2, it.To.X), true
		}
	}
	return x1, x2, ok
}

// groups returns the groups of a name below another, in order.
func groups(g *draw.Group, name string) (list []*draw.Group) {
	for it := range g.All() {
		if sub, ok := it.(*draw.Group); ok && sub.Name == name {
			list = append(list, sub)
		}
	}
	return list
}

// wheelhouse is a scene of which the set-ups have everything that a bar can say.
const wheelhouse = `plan "The wheelhouse: the light on the wreck"
rate 24
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
lens "32"
  focal 32 mm
  stops f/1.8 to f/21
  closest 40 cm
  ring 310 deg, diameter 110 mm
with camera A, lens "75", stop f/4
subject PEVIN at 1.6 m, 5 cm right, deep 4 cm
subject CHART at 1.2 m, 15 cm left
subject HALDIS at 2.9 m, 20 cm right
subject OSK at 2.4 m, 34 cm left, deep 4 cm
subject MERROW at 2.6 m, 40 cm right, deep 4 cm
voice PURSER

shot 27A
  with lens "32"
  start on PEVIN
  PEVIN: "The tide was slack. I saw a light.", lasting 3 s
  HALDIS: "There has been no light on that wreck for nine years.", lasting 4 s
  rack to CHART, landing on "that", over 1.2 s
  OSK: "Hush.", lasting 1 s
  rack to MERROW, on end of OSK, over 0.35 s
  MERROW: "Nine years and one night.", lasting 2.5 s

shot 27B
  start on HALDIS
  HALDIS: "that wreck for nine years.", lasting 2 s
  PURSER: "All aboard.", lasting 1 s
  rack to MERROW, on end of PURSER, over 1 s
  OSK: "Hush.", lasting 1 s
  MERROW: "Nine years and one night.", lasting 2.5 s
  PEVIN: "Then who rings?", lasting 1 s

shot 27C
  with stop f/11
  start on PEVIN
  PEVIN moves to 1.6 m, 50 cm right over 1 s, at 0.5 s
  PEVIN: "Then who rings?", lasting 1 s
  OSK: "The bell does. It rang twice, Captain, and then it rang no more.", lasting 3 s
  rack to OSK, landing on "Captain", over 0.5 s
`

// What has been looked at stays as it is.
func TestGolden(t *testing.T) {
	p := interp.Interpret("wheelhouse.pull", []byte(wheelhouse), interp.Options{}).Plan
	for i, piece := range []plan.Piece{{From: 0, To: 6}, {From: 0, To: 4}, {From: 0.4, To: 2.5}} {
		piece.Speed, p.Shots[i].Pieces = 1, []plan.Piece{piece}
	}
	p.Shots[1].Lines[0].InCut = &plan.InCut{State: plan.Removed}
	sc := coverage.Of(p, true)[0]
	pages := paper.Coverage(sc, sheet.Options{})
	plans.CheckPaper(t, "wheelhouse", nil, pages)
	for _, name := range []string{signs.Speaker, signs.Hardly, signs.Other, signs.Out, signs.Blocked, signs.Without, signs.Chance, signs.Shown} {
		if len(groups(&pages[0].Root, name)) < 2 { // in the legend too
			t.Errorf("no bar is %s", name)
		}
	}
	checkBars(t, "wheelhouse", sc, pages)
	checkShown(t, sc, pages)
	plans.CheckGolden(t, "coverage-wheelhouse", pages)
}
