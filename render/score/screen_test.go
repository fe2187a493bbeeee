package score

import (
	"math"
	"slices"
	"testing"

	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/times"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// On a screen of any width a score shows the whole shot, in systems that lie within it, at
// the scale that was asked for; it has the signs and the legibility of the paper.
func TestAScoreFitsItsScreen(t *testing.T) {
	for name, s := range plans.Made() {
		for _, screen := range []times.Screen{{Width: 80}, {Width: 88, PerSecond: 40}, {Width: 180}, {Width: 250, PerSecond: 60}} {
			pages, perSecond := OnScreen(s, screen)
			if screen.PerSecond > 0 && perSecond != screen.PerSecond {
				t.Errorf("%s at %v mm: %v mm/s, not %v", name, screen.Width, perSecond, screen.PerSecond)
			}
			at := 0.0
			for i, p := range pages {
				if got := p.W - 2*p.Trim; math.Abs(got-screen.Width) > 1e-9 {
					t.Errorf("%s: a page of %v mm on a screen of %v", name, got, screen.Width)
				}
				for _, span := range p.Spans {
					if math.Abs(span.From-at) > 1e-9 {
						t.Errorf("%s at %v mm: a system starts at %v s, the one before ends at %v", name, screen.Width, span.From, at)
					}
					at = span.To
					if scale := (span.Right - span.Left) / (span.To - span.From); !span.Narrow && math.Abs(scale-perSecond) > 1e-9 || span.Right > p.W-p.Trim {
						t.Errorf("%s at %v mm: a system has %v mm/s and ends at %v mm", name, screen.Width, scale, span.Right)
					}
				}
				for _, f := range drawtest.Faults(p) {
					t.Errorf("%s at %v mm, page %d: %s", name, screen.Width, i+1, f)
				}
			}
			if math.Abs(at-bands.Lasting(s)) > 1e-9 {
				t.Errorf("%s at %v mm: it ends at %v s of %v", name, screen.Width, at, s.Duration)
			}
			for _, p := range s.Pulls {
				if !slices.ContainsFunc(pages, func(page *draw.Page) bool { return has(page, "pull-row", p.Number) }) {
					t.Errorf("%s at %v mm: pull %d has no row", name, screen.Width, p.Number)
				}
			}
		}
	}
}

func has(p *draw.Page, name string, number int) bool {
	for it := range p.Root.All() {
		if g, ok := it.(*draw.Group); ok && g.Name == name && g.Number == number {
			return true
		}
	}
	return false
}
