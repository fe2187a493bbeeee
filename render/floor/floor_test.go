package floor

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
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
