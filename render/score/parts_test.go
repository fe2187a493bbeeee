package score

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
	"pullscore/render/testing/plans"
)

// groupsOf returns all groups of a name on pages, outside their legends.
func groupsOf(pages []*draw.Page, name string) (list []*draw.Group) {
	var walk func(g *draw.Group)
	walk = func(g *draw.Group) {
		for _, it := range g.Items {
			if sub, ok := it.(*draw.Group); ok && sub.Name != signs.Legend {
				if sub.Name == name {
					list = append(list, sub)
				}
				walk(sub)
			}
		}
	}
	for _, p := range pages {
		walk(&p.Root)
	}
	return list
}

// Of many subjects, those who have nothing to show share a row; they come last, and the
// row says how many they are and who.
func TestTheSoftShareARow(t *testing.T) {
	m := plans.New("4", "The gallery", 8)
	for i := range 12 {
		m.Put(fmt.Sprintf("WHO%d", i+1), 1.2+1.3*float64(i), 0.02)
	}
	s := m.Start("WHO1").Rack("WHO3", "", "", 2, 3).Shot
	rows := groupsOf(Score(s, sheet.Options{}), signs.Row)
	last := rows[len(rows)-1]
	if len(rows) >= 12 || !strings.HasPrefix(last.Title, "others: ") {
		t.Fatalf("%d rows, the last is %q", len(rows), last.Title)
	}
	count := strings.Count(last.Title, "WHO")
	if want := fmt.Sprintf("others (%d)", count); last.Items[0].(draw.Text).String != want || len(rows)-1+count != 12 {
		t.Errorf("the last of %d rows is %q: %q", len(rows), last.Items[0].(draw.Text).String, last.Title)
	}
	for _, name := range []string{"WHO1", "WHO3"} {
		if !slices.ContainsFunc(rows, func(g *draw.Group) bool { return g.Title == name }) {
			t.Errorf("%s has no row", name)
		}
	}
	s.Flags = []plan.Flag{{Number: 1, Severity: "note", Code: "soft", Text: "soft", Row: "sharp", Who: "WHO9", Time: 4}}
	if rows := groupsOf(Score(s, sheet.Options{}), signs.Row); !slices.ContainsFunc(rows, func(g *draw.Group) bool { return g.Title == "WHO9" }) {
		t.Error("somebody with a finding has no row")
	}
}

// A hold stands over the focus from its landing to its end, with an end where it begins
// and where it is over.
func TestHoldsAreDrawn(t *testing.T) {
	s := plans.OneRack()
	land := s.Pulls[0].Land
	s.Held = []plan.Pause{{Start: land, End: land + 1.5}}
	pages := Score(s, sheet.Options{})
	list := groupsOf(pages, signs.Hold)
	if len(list) != 1 || len(list[0].Items) != 3 {
		t.Fatalf("%d holds", len(list))
	}
	line := list[0].Items[0].(draw.Line)
	w := bands.NewChart(s, sheet.A4).Windows[0]
	if math.Abs(line.From.X-w.X(float64(land))) > 0.01 || math.Abs(line.To.X-w.X(float64(land)+1.5)) > 0.01 {
		t.Errorf("the hold stands from %v to %v", line.From.X, line.To.X)
	}
	plans.CheckPaper(t, "hold", sheet.Names(s), pages)

	long := plans.LongShot()
	long.Held = []plan.Pause{{Start: 8, End: 15}}
	list = groupsOf(Score(long, sheet.Options{}), signs.Hold)
	if len(list) != 2 || len(list[0].Items) != 2 || len(list[1].Items) != 2 {
		t.Errorf("%d holds, want one on each of two systems with one end each", len(list))
	}
}

// Where the ring stops is drawn across the band of the hand, where the band reaches it.
func TestTheRingEndsAcrossTheHand(t *testing.T) {
	s := plans.ToInfinity()
	_, far := s.Optics.Ring.Stops()
	wide := 0
	for _, g := range groupsOf(Score(s, sheet.Options{}), signs.Stop) {
		if l := g.Items[0].(draw.Line); l.To.X-l.From.X > 100 {
			wide++
		}
	}
	if !far || wide != 1 {
		t.Errorf("%d ends across the band", wide)
	}
}

// A disc leads to its row in the table, and the row to the disc over the distances.
func TestDiscsAndRowsLeadToOneAnother(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three": plans.ThreeRacks(), "long": plans.LongShot()} {
		pages := Score(s, sheet.Options{})
		ids := draw.IDs(pages...)
		for _, row := range groupsOf(pages, "pull-row") {
			if row.ID != bands.RowID(s, row.Number) || row.Link != bands.PullID(s, row.Number) {
				t.Errorf("%s: the row of pull %d is %q and leads to %q", name, row.Number, row.ID, row.Link)
			}
		}
		for _, disc := range groupsOf(pages, "pull") {
			if _, ok := ids[disc.Link]; !ok || disc.Link != bands.RowID(s, disc.Number) {
				t.Errorf("%s: the disc of pull %d leads to %q", name, disc.Number, disc.Link)
			}
		}
	}
}

// What tells findings and no time is the paper of findings, and can be had alone.
func TestFindingsHaveSheetsOfTheirOwn(t *testing.T) {
	s := plans.LongFindings()
	told := Findings(s, sheet.Options{})
	if text := plans.TextOf(told); !strings.Contains(text, "findings · page 3 of") || strings.Contains(text, "score · page 1 of") {
		t.Errorf("%d sheets of findings: %.300s", len(told), text)
	}
	if list := groupsOf(told, "sentence"); len(list) < len(s.Flags) {
		t.Errorf("%d sentences for %d findings", len(list), len(s.Flags))
	}
	if list := Findings(plans.OneRack(), sheet.Options{}); len(list) > 0 {
		t.Errorf("%d sheets for a shot without findings", len(list))
	}
}
