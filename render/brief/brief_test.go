package brief

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/lang/testing/cases"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// briefPages returns all pages of a brief of shots, numbered.
func briefPages(t interface{ Errorf(string, ...any) }, shots []*plan.Shot, opt sheet.Options) []*draw.Page {
	plans := []*plan.Plan{{Title: "Harbour office, scene 1", Shots: shots}}
	front := len(CoverPages(Title(plans), Cover(plans, nil), opt))
	var pages []*draw.Page
	where := Places{}
	for i, s := range shots {
		b := NewShot(s, fmt.Sprintf("s1-%d", i+1), opt)
		at := b.Place
		at.Page, at.ID = front+len(pages)+1, b.First()
		where[s] = at
		for _, f := range b.Figures {
			for _, p := range f.Pages {
				NumberPage(p, front+len(pages)+1000, 2000, at.Row)
				pages = append(pages, p)
			}
		}
	}
	cover := CoverPages(Title(plans), Cover(plans, where), opt)
	if len(cover) != front {
		t.Errorf("the cover has %d pages, and %d without page numbers", len(cover), front)
	}
	for i, p := range cover {
		NumberPage(p, i+1000, 2000, "")
	}
	return append(cover, pages...)
}

func TestBriefsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		plans.Held(s, "wheel")
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range briefPages(t, []*plan.Shot{s}, sheet.Options{Paper: paper}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
			}
		}
	}
}

// A brief has all papers of its shots: 30 take some seconds. After a change of papers try
// more, -rapid.checks=500.
func TestGeneratedBriefsAreClean(t *testing.T) {
	cases.Check(t, 30, func(t *rapid.T) {
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		shots := []*plan.Shot{plans.Draw(t), plans.Held(plans.Draw(t), "ring")}
		for i, p := range briefPages(t, shots, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
		}
	})
}

// The cover names the page on which each shot begins and leads there, the number of every
// page leads back to the row of its shot, and no link leads nowhere.
func TestLinksOfBriefs(t *testing.T) {
	var shots []*plan.Shot
	for range 40 { // a cover of several pages
		shots = append(shots, plans.ThreeRacks(), plans.OneRack())
	}
	pages := briefPages(t, shots, sheet.Options{})
	for _, fault := range drawtest.Links(pages) {
		t.Error(fault)
	}
	at := draw.IDs(pages...)
	rows := 0
	for id := range at {
		if strings.HasPrefix(id, "cover-s") {
			rows++
		}
	}
	named := 0
	for _, p := range pages {
		for it := range p.Root.All() {
			g, ok := it.(*draw.Group)
			if !ok || g.Name != "cell" || g.Link == "" {
				continue
			}
			text := g.Items[0].(draw.Text).String
			if number, err := strconv.Atoi(text); err == nil {
				named++
				if at[g.Link]+1 != number {
					t.Errorf("the cover says page %d of %q, which is on page %d", number, g.Link, at[g.Link]+1)
				}
			}
		}
	}
	if rows != len(shots) || named != len(shots) {
		t.Errorf("%d rows and %d page numbers for %d shots", rows, named, len(shots))
	}
}

// Plans of one title are told apart by their files, in several folders by those too.
func TestTitlesOfOneName(t *testing.T) {
	for _, test := range []struct{ titles, files, want []string }{
		{[]string{"Ferry", "Quay"}, []string{"a.pull", "b.pull"}, []string{"Ferry", "Quay"}},
		{[]string{"Ferry", "Ferry", "Quay"}, []string{"x/a.pull", "x/b.pull", "c.pull"}, []string{"Ferry (a.pull)", "Ferry (b.pull)", "Quay"}},
		{[]string{"Ferry", "Ferry"}, []string{"x/a.pull", "y/a.pull"}, []string{"Ferry (x/a.pull)", "Ferry (y/a.pull)"}},
		{[]string{"", ""}, []string{"a.pull", "b.pull"}, []string{"A plan without a title (a.pull)", "A plan without a title (b.pull)"}},
	} {
		var plans []*plan.Plan
		for i, title := range test.titles {
			plans = append(plans, &plan.Plan{Title: title, File: test.files[i]})
		}
		if got := Titles(plans); !slices.Equal(got, test.want) {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

// No table is printed that a drawing of the shot shows too: the pulls, the findings and the
// marks are on drawings, and a log to fill in is one of them.
func TestNothingIsPrintedTwice(t *testing.T) {
	b := NewShot(plans.ThreeRacks(), "s1-1", sheet.Options{})
	var names []string
	for _, f := range b.Figures {
		names = append(names, f.Name)
		if !f.Words {
			continue
		}
		text := plans.TextOf(f.Pages)
		for _, heading := range []string{"Pulls", "Findings", "How far somebody may miss the mark", "Takes"} {
			if strings.Contains(text, heading) {
				t.Errorf("%q is printed in words", heading)
			}
		}
	}
	if want := []string{"Score", "Ring", "Floor", "Log", "In words"}; !slices.Equal(names, want) {
		t.Errorf("the papers are %q, want %q", names, want)
	}
}

// What the plan asks to print stands first at its shot, in its order.
func TestNotesArePrinted(t *testing.T) {
	s := plans.OneRack()
	s.Notes = []string{"WATCH THE BOOM", "No second take after dark."}
	b := NewShot(s, "s1-1", sheet.Options{})
	if first := b.Sheet[0]; first.Heading != "Notes" || !slices.Equal(first.Sentences, s.Notes) {
		t.Errorf("the first passage is %q: %q", first.Heading, first.Sentences)
	}
	last := b.Figures[len(b.Figures)-1]
	text := plans.TextOf(last.Pages)
	if at := strings.Index(text, s.Notes[0]); !last.Words || at < 0 || strings.Index(text, s.Notes[1]) < at {
		t.Errorf("printed is %q", text)
	}
}

func TestBriefTitle(t *testing.T) {
	for _, tc := range []struct {
		titles []string
		want   string
	}{
		{[]string{"Night ferry, scene 3"}, "Night ferry, scene 3"},
		{[]string{"Night ferry, scene 3", "Night ferry, scene 12"}, "Night ferry: 2 scenes"},
		{[]string{"One", "Another"}, "2 scenes"},
		{[]string{"", "Night ferry"}, "2 scenes"},
		{[]string{""}, "A plan without a title"},
		{[]string{"花, 1", "芽, 2"}, "2 scenes"},
	} {
		var plans []*plan.Plan
		for _, title := range tc.titles {
			plans = append(plans, &plan.Plan{Title: title})
		}
		if got := Title(plans); got != tc.want {
			t.Errorf("%q: %q, want %q", tc.titles, got, tc.want)
		}
	}
}

func TestWorstFinding(t *testing.T) {
	s := plans.OneRack()
	if got := worstFinding(s); got != "none" {
		t.Errorf("%q for a shot without findings", got)
	}
	s.Flags = []plan.Flag{{Severity: "note", Text: "a note"}, {Severity: "warning", Text: "first warning"}, {Severity: "warning", Text: "second"}}
	if got, want := worstFinding(s), "warning: first warning (and 2 more)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// The cover names the marks of the lens as they are engraved.
func TestCoversHaveTheEngravedMarks(t *testing.T) {
	s := plans.FeetLens(t)
	want := "1′8″ (50.8 cm) at 0°, 2′ (61 cm) at 62°, 3 ft (91.4 cm) at 150°, 20′ (6.1 m) at 290°, ∞ at 310°"
	if got := marks.EngravedText(s, false); got != want {
		t.Errorf("the cover has %q, want %q", got, want)
	}
}

// The papers of a scene stand before those of its first shot: its floor, its marks in words
// with their ways from the zero point in both units, and the card of tapes.
func TestScenesComeFirst(t *testing.T) {
	p := plans.TicketWindow()
	if i, ok := SceneBefore(p, p.Shots[0]); !ok || i != 0 {
		t.Errorf("before the first shot comes scene %d, %v", i, ok)
	}
	if _, ok := SceneBefore(p, p.Shots[1]); ok {
		t.Error("the scene comes before its second shot too")
	}
	b := NewScene(p, 0, "s1-1-scene", sheet.Options{}, Figure{Name: "Nothing"})
	var names []string
	var pages []*draw.Page
	for _, f := range b.Figures {
		names, pages = append(names, f.Name), append(pages, f.Pages...)
		for _, p := range f.Pages {
			if plans.CheckPage(t, f.Name, p); !f.Words {
				plans.CheckPaper(t, f.Name, nil, f.Pages)
			}
		}
	}
	if got := strings.Join(names, ", "); got != "Floor of the scene, Marks, Tapes" {
		t.Errorf("its papers are %s", got)
	}
	for _, fault := range drawtest.Links(pages) {
		t.Error(fault)
	}
	for _, want := range []string{"40 cm right", "1′3¾″", "1.3 m upstage", "the near corner of the counter", "GATE"} {
		if text := plans.TextOf(pages); !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
}
