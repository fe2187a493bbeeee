package score

import (
	"fmt"
	"math"
	"slices"
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

// walkers returns a shot of more than ten minutes, in which one walks.
func walkers() *plan.Shot {
	m := plans.New("61", "The whole watch", 860).Put("ANNA", 1.5, 0.05).Put("BO", 2.3, 0.05).Put("WINDOW", 8, 0.2).Start("ANNA")
	names := []string{"BO", "WINDOW", "ANNA"}
	for i := range 100 {
		t := 3 + 8.5*float64(i)
		m.Line(names[i%3], "Nothing is *left to say.", t, t+2.4).Rack(names[i%3], `on "left"`, "", t+0.8, t+1.9)
	}
	return m.Walk("BO", 5, 100, 160).Walk("BO", 1.8, 400, 430).Shot
}

// A shot of more than ten minutes has rows of five minutes, each with its cells, and every
// sheet has a cell; the station of one who walks is a curve between those of the others.
func TestLongOverviewsHaveRows(t *testing.T) {
	s := walkers()
	pages := Score(s, sheet.Options{})
	ahead := slices.IndexFunc(pages, func(p *draw.Page) bool { return !strings.Contains(p.Title, "overview") })
	if ahead != 2 {
		t.Fatalf("%d pages of overview, want 2 with 2 rows and 1", ahead)
	}
	plans.CheckPaper(t, "overview", sheet.Names(s), pages[:ahead])
	for i, want := range []int{2, 1} {
		if got := strings.Count(plans.TextOf(pages[i:i+1]), "Stations"); got != want {
			t.Errorf("page %d has %d rows, want %d", i+1, got, want)
		}
	}
	cells := groupsOf(pages[:ahead], "cell")
	for i, cell := range cells {
		if want := sheet.PageID(s, "score", ahead+i+1); cell.Link != want {
			t.Errorf("cell %d leads to %q, want %q", i+1, cell.Link, want)
		}
	}
	if want := int(math.Ceil(860 / 20.0)); len(cells) != want {
		t.Errorf("%d cells, want %d", len(cells), want)
	}
	curves := 0
	for _, g := range groupsOf(pages[:ahead], "stations") {
		for _, it := range g.Items {
			if p, ok := it.(draw.Path); ok && len(p.Runs[0]) > 2 {
				curves++
			}
		}
	}
	if curves != 2 { // it walks in two of the rows
		t.Errorf("%d stations are curves", curves)
	}
}
