package drawtest_test

import (
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/ring"
	"pullscore/render/score"
	"pullscore/render/sheet"
	"pullscore/render/testing/drawtest"
	"pullscore/render/testing/plans"
)

// shift moves every point of the paths and lines of a group down, as far as which says.
func shift(g *draw.Group, by float64, which func(draw.Point) bool) (moved int) {
	for i, it := range g.Items {
		switch it := it.(type) {
		case draw.Path:
			for _, run := range it.Runs {
				for k := range run {
					if which(run[k]) {
						run[k].Y += by
						moved++
					}
				}
			}
		case draw.Line:
			if which(it.From) {
				it.From.Y, it.To.Y = it.From.Y+by, it.To.Y+by
				g.Items[i] = it
				moved++
			}
		}
	}
	return moved
}

// below returns the groups of a name on pages, with paths or lines in them.
func below(pages []*draw.Page, name string) (list []*draw.Group) {
	for _, p := range pages {
		for it := range p.Root.All() {
			if g, ok := it.(*draw.Group); ok && g.Name == name {
				list = append(list, g)
			}
		}
	}
	return list
}

func all(draw.Point) bool { return true }

// A score and a ring as they are drawn are true to scale; with anything moved by the
// twentieth part of a millimetre they are not.
func TestScaleSeesWhatIsOff(t *testing.T) {
	fresh := func(s *plan.Shot) []*draw.Page {
		return append(score.Score(s, sheet.Options{}), ring.Ring(s, sheet.Options{})...)
	}
	check := func(pages []*draw.Page, s *plan.Shot) string {
		return strings.Join(append(drawtest.Scale(pages, s), drawtest.Curve(pages, s)...), "; ")
	}
	for name, s := range plans.Made() {
		if faults := check(fresh(s), s); faults != "" {
			t.Errorf("%s: %s", name, faults)
		}
	}
	for _, c := range []struct {
		name string
		want string
		move func(pages []*draw.Page) int
	}{
		{"a window", "the window of pull", func(pages []*draw.Page) int {
			n := 0
			for _, g := range append(below(pages, "window"), below(pages, "narrow")...) {
				if g.Number > 0 {
					n += shift(g, 0.05, all)
				}
			}
			return n
		}},
		{"a limit of the zone", "a limit of the sharp zone", func(pages []*draw.Page) int {
			return shift(below(pages, "sharp-zone")[1], 0.05, all)
		}},
		{"the focus in its middle", "the curve of the focus", func(pages []*draw.Page) int {
			return shift(below(pages, "focus")[0], 0.1, func(p draw.Point) bool { return p.X > 100 && p.X < 140 })
		}},
		{"the hand in its middle", "the curve of the hand", func(pages []*draw.Page) int {
			return shift(below(pages, "path")[0], 0.2, func(p draw.Point) bool { return p.X > 100 && p.X < 140 })
		}},
		{"time on a later page", "mm a second", func(pages []*draw.Page) int {
			pages[0].Spans[0].To *= 1.01
			return len(pages) - 1
		}},
		{"the bar", "the bar of 50 mm", func(pages []*draw.Page) int {
			n := 0
			for _, g := range below(pages, "check-bar") {
				for i, it := range g.Items {
					if line, ok := it.(draw.Line); ok && line.From.Y == line.To.Y {
						line.To.X += 0.05
						g.Items[i] = line
						n++
					}
				}
			}
			return n
		}},
	} {
		s := plans.ThreeRacks()
		pages := fresh(s)
		if moved := c.move(pages); moved == 0 {
			t.Errorf("%s: nothing is moved", c.name)
		}
		if faults := check(pages, s); !strings.Contains(faults, c.want) {
			t.Errorf("%s is moved, and found is %q", c.name, faults)
		}
	}
}
