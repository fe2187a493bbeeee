package brief

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// briefPages returns all pages of a brief of shots, numbered.
func briefPages(shots []*plan.Shot, opt sheet.Options) []*draw.Page {
	plans := []*plan.Plan{{Title: "Harbour office, scene 1", Shots: shots}}
	pages := CoverPages(Title(plans), Cover(plans), opt)
	for _, s := range shots {
		b := NewShot(s, opt)
		pages = append(pages, b.Pages...)
		for _, f := range b.Figures {
			pages = append(pages, f.Pages...)
		}
	}
	for i, p := range pages {
		NumberPage(p, i+1000)
	}
	return pages
}

func TestBriefsAreClean(t *testing.T) {
	for name, s := range plans.Made() {
		plans.Held(s, "wheel")
		for size, paper := range map[string]sheet.Paper{"A4": sheet.A4, "Letter": sheet.Letter} {
			for i, p := range briefPages([]*plan.Shot{s}, sheet.Options{Paper: paper}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
			}
		}
	}
}

func TestGeneratedBriefsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paper := rapid.SampledFrom([]sheet.Paper{sheet.A4, sheet.Letter}).Draw(t, "paper")
		shots := []*plan.Shot{plans.Draw(t), plans.Held(plans.Draw(t), "ring")}
		for i, p := range briefPages(shots, sheet.Options{Paper: paper}) {
			plans.CheckPage(t, fmt.Sprintf("page %d", i+1), p)
		}
	})
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
