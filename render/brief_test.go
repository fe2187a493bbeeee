package render

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// briefPages returns all pages of a brief of shots, numbered.
func briefPages(shots []*plan.Shot, opt Options) []*draw.Page {
	plans := []*plan.Plan{{Title: "Harbour office, scene 1", Shots: shots}}
	pages := BriefCoverPages(BriefTitle(plans), BriefCover(plans), opt)
	for _, s := range shots {
		b := NewBriefShot(s, opt)
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
	for name, s := range madeShots() {
		for size, paper := range map[string]Paper{"A4": A4, "Letter": Letter} {
			for i, p := range briefPages([]*plan.Shot{s}, Options{Paper: paper}) {
				checkPage(t, fmt.Sprintf("%s, %s, page %d", name, size, i+1), p)
			}
		}
	}
}

func TestGeneratedBriefsAreClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paper := rapid.SampledFrom([]Paper{A4, Letter}).Draw(t, "paper")
		shots := []*plan.Shot{drawShot(t), drawShot(t)}
		for i, p := range briefPages(shots, Options{Paper: paper}) {
			checkPage(t, fmt.Sprintf("page %d", i+1), p)
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
		if got := BriefTitle(plans); got != tc.want {
			t.Errorf("%q: %q, want %q", tc.titles, got, tc.want)
		}
	}
}

// Cautions stand where they apply, and leave the decision to the people in
// charge.
func TestCautions(t *testing.T) {
	still := oneRack()
	moving := walkAndDolly()
	carried := oneRack()
	carried.Support = "shoulder"
	carried.Blocking = []plan.Blocking{{Who: "NADIA", Kind: "moves", From: 4, To: 2}}
	for _, tc := range []struct {
		name      string
		shot      *plan.Shot
		want, not []string
	}{
		{"still", still, []string{"laser", "people in charge", "local rules"}, []string{"Moving camera", "backwards"}},
		{"dolly", moving, []string{"Moving camera", "laser", "people in charge"}, nil},
		{"carried, somebody comes", carried, []string{"Moving camera", "Walking backwards", "laser", "people in charge"}, nil},
	} {
		for _, passages := range [][]Passage{BriefCover([]*plan.Plan{{Shots: []*plan.Shot{tc.shot}}}), NewBriefShot(tc.shot, Options{}).Sheet} {
			i := slices.IndexFunc(passages, func(p Passage) bool { return p.Heading == "Cautions" })
			text := strings.Join(passages[i].Sentences, " ")
			for _, want := range tc.want {
				if !strings.Contains(text, want) {
					t.Errorf("%s: no %q in %q", tc.name, want, text)
				}
			}
			for _, not := range tc.not {
				if strings.Contains(text, not) {
					t.Errorf("%s: %q in %q", tc.name, not, text)
				}
			}
		}
	}
}

func TestWorstFinding(t *testing.T) {
	s := oneRack()
	if got := worstFinding(s); got != "none" {
		t.Errorf("%q for a shot without findings", got)
	}
	s.Flags = []plan.Flag{{Severity: "note", Text: "a note"}, {Severity: "warning", Text: "first warning"}, {Severity: "warning", Text: "second"}}
	if got, want := worstFinding(s), "warning: first warning (and 2 more)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
