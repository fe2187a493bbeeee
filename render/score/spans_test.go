package score

import (
	"math"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// What is shown over a score must stand where the score itself puts a time.
func TestSpansTellWhereTimeLies(t *testing.T) {
	for name, s := range map[string]*plan.Shot{"three racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly()} {
		begin, end, poles := 0.0, 0.0, 0
		for _, p := range Score(s, sheet.Options{}) {
			for _, span := range p.Spans {
				again := span.From == begin && span.To == end // bands that need two sheets
				if !again && span.From != end || !(span.To > span.From) {
					t.Errorf("%s: a span from %v s follows one to %v s", name, span.From, end)
				}
				begin, end = span.From, span.To
				if !(0 < span.Left && span.Left < span.Right && span.Right < p.W && 0 < span.Top && span.Top < span.Bottom && span.Bottom < p.H) {
					t.Errorf("%s: the span %+v leaves the page", name, span)
				}
				poles += polesStandInTime(t, s, p, span)
			}
		}
		if end != float64(s.Duration) {
			t.Errorf("%s: spans end at %v s of %v s", name, end, s.Duration)
		}
		if poles < len(s.Pulls) {
			t.Errorf("%s: only %d poles for %d pulls", name, poles, len(s.Pulls))
		}
	}
}

// polesStandInTime looks whether the poles of pulls and findings on the page
// end at their times, and returns how many there are.
func polesStandInTime(t *testing.T, s *plan.Shot, p *draw.Page, span draw.Span) int {
	t.Helper()
	poles := 0
	for it := range p.Root.All() {
		g, ok := it.(*draw.Group)
		if !ok || g.Number == 0 {
			continue
		}
		at := 0.0
		switch g.Name {
		case "pull":
			at = float64(s.Pulls[g.Number-1].Start)
		case "finding":
			at = s.Flags[g.Number-1].Time
		default:
			t.Errorf("a group %q is numbered", g.Name)
			continue
		}
		pole := g.Items[0].(draw.Path).Runs[0]
		got := pole[len(pole)-1].X
		want := span.Left + (at-span.From)/(span.To-span.From)*(span.Right-span.Left)
		if want = min(max(want, span.Left), span.Right); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s %d at %v s has its pole at %v mm, its time lies at %v mm", g.Name, g.Number, at, got, want)
		}
		poles++
	}
	return poles
}
