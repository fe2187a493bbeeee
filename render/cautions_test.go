package render

import (
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// carriedBack returns a shot of a camera in the hand that someone walks towards.
func carriedBack() *plan.Shot {
	s := newShot("1", "", 5).subject("A", 4, 0).start("A").walk("A", 2, 1, 3).Shot
	s.Support = "hand"
	return s
}

// Cautions stand on each paper that shows the work that they are for, on no
// other, and leave the decision to the people in charge.
func TestCautions(t *testing.T) {
	all := []string{movingCaution, backwardsCaution, walkingCaution}
	back := walkAndDolly()
	for i := range back.Blocking {
		if b := &back.Blocking[i]; b.Kind == "dolly" {
			b.From, b.To = b.To, b.From
		}
	}
	for _, tc := range []struct {
		name string
		shot *plan.Shot
		want []string
	}{
		{"still", oneRack(), nil},
		{"someone walks", newShot("1", "", 5).subject("A", 4, 0).start("A").walk("A", 2, 1, 3).Shot, []string{walkingCaution}},
		{"dolly in", walkAndDolly(), []string{movingCaution}},
		{"dolly back", back, []string{movingCaution, backwardsCaution}},
		{"carried, somebody comes", carriedBack(), []string{movingCaution, backwardsCaution}},
	} {
		cover := BriefCoverPages("", BriefCover([]*plan.Plan{{Shots: []*plan.Shot{tc.shot}}}), Options{})
		brief := NewBriefShot(tc.shot, Options{Paper: Letter})
		papers := map[string][]*draw.Page{
			"cover": cover, "sheet": brief.Pages, "score": Score(tc.shot, Options{Paper: Letter}), "overhead": Overhead(tc.shot, Options{}),
		}
		for name, pages := range papers {
			text := textOf(pages)
			for _, caution := range all {
				if got, want := strings.Contains(text, caution), slices.Contains(tc.want, caution); got != want {
					t.Errorf("%s, %s: %q stands there: %v, want %v", tc.name, name, caution, got, want)
				}
			}
			measured := name != "score"
			if got := strings.Contains(text, laserCaution); got != measured {
				t.Errorf("%s, %s: the caution for lasers stands there: %v, want %v", tc.name, name, got, measured)
			}
			if (measured || tc.want != nil) && !strings.Contains(text, chargeCaution) {
				t.Errorf("%s, %s: it does not say who decides", tc.name, name)
			}
			for _, p := range pages {
				checkPage(t, tc.name+", "+name, p)
			}
		}
	}
}
