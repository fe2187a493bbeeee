package score

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/plans"
)

// A shot that needs several sheets begins with an overview that names and links all of
// them, and has the number of every move that has room.
func TestLongShotsBeginWithAnOverview(t *testing.T) {
	for _, s := range []*plan.Shot{plans.LongShot(), racks(30)} {
		pages := Score(s, sheet.Options{})
		if !strings.Contains(pages[0].Title, "overview") {
			t.Fatalf("the first page is %q", pages[0].Title)
		}
		plans.CheckPage(t, "overview", pages[0])
		cells, numbers := 0, 0
		for it := range pages[0].Root.All() {
			g, ok := it.(*draw.Group)
			switch {
			case !ok:
			case g.Name == "cell":
				cells++
				if want := sheet.PageID(s, "score", cells+1); g.Link != want {
					t.Errorf("cell %d leads to %q, want %q", cells, g.Link, want)
				}
			case g.Name == signs.Departure && g.Number > 0:
				numbers++
			}
		}
		if want := int(math.Ceil(float64(s.Duration) / 20)); cells != want {
			t.Errorf("%d sheets in the overview, want %d", cells, want)
		}
		if numbers < len(s.Pulls)/2 {
			t.Errorf("%d numbers for %d moves", numbers, len(s.Pulls))
		}
		for i, p := range pages {
			if p.Root.ID != sheet.PageID(s, "score", i+1) {
				t.Errorf("page %d has the ID %q", i+1, p.Root.ID)
			}
			if want := fmt.Sprintf("page %d of %d", i+1, len(pages)); !strings.Contains(p.Title, want) {
				t.Errorf("%q does not say %q", p.Title, want)
			}
		}
	}
}

// A shot on one sheet has no overview.
func TestShortShotsHaveNoOverview(t *testing.T) {
	if pages := Score(plans.OneRack(), sheet.Options{}); strings.Contains(pages[0].Title, "overview") {
		t.Errorf("the first page is %q", pages[0].Title)
	}
}
