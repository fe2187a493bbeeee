package drawtest_test

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// What is narrowed on a score is what the cut does not have, all of it to one width, and
// the curves in it bend where the axis does: what is otherwise is seen.
func TestScaleSeesWhatIsNarrowed(t *testing.T) {
	for name, c := range map[string]struct {
		want string // "" for none
		off  func(p *draw.Page, s *plan.Shot)
	}{
		"as it is": {"", func(*draw.Page, *plan.Shot) {}},
		"wider": {"is narrowed to 13", func(p *draw.Page, _ *plan.Shot) {
			for i := range p.Spans {
				if s := &p.Spans[i]; s.Narrow {
					s.Right++
				}
			}
		}},
		"of what is shown": {"is narrowed, and the cut has", func(_ *draw.Page, s *plan.Shot) {
			s.Pieces[0].To += 0.5
		}},
		"not said to be": {"mm a second", func(p *draw.Page, _ *plan.Shot) {
			for i := range p.Spans {
				p.Spans[i].Narrow = false
			}
		}},
		"even in its middle": {"the curve of the", func(p *draw.Page, _ *plan.Shot) {
			p.Spans[0].To, p.Spans[0].Right = p.Spans[1].To, p.Spans[1].Right
			p.Spans = append(p.Spans[:1], p.Spans[2:]...)
		}},
	} {
		s := plans.Recut()
		pages := score.Score(s, sheet.Options{})
		narrow := 0
		for _, span := range pages[0].Spans {
			if span.Narrow {
				narrow++
			}
		}
		if narrow != 2 {
			t.Fatalf("%d stretches are narrowed", narrow)
		}
		c.off(pages[0], s)
		faults := strings.Join(append(drawtest.Scale(pages, s), drawtest.Curve(pages, s)...), "; ")
		if c.want == "" && faults != "" || !strings.Contains(faults, c.want) {
			t.Errorf("%s: %q", name, faults)
		}
	}
}
