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
	for name, s := range map[string]*plan.Shot{"three racks": plans.ThreeRacks(), "crowd": plans.Crowd(), "walk": plans.WalkAndDolly(), "recut": plans.Recut()} {
		begin, end, poles := 0.0, 0.0, 0
		for _, p := range Score(s, sheet.Options{}) {
			for _, span := range p.Spans {
				if span.From == 0 && end == float64(s.Duration) {
					begin, end = 0, 0 // the sheets of the hand
				}
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

// polesStandInTime looks whether the discs of pulls stand at their times, and the poles of
// findings, and returns how many there are.
func polesStandInTime(t *testing.T, s *plan.Shot, p *draw.Page, span draw.Span) int {
	t.Helper()
	n := 0
	for it := range p.Root.All() {
		g, ok := it.(*draw.Group)
		if !ok || g.Number == 0 {
			continue
		}
		var at, got float64
		switch g.Name {
		case "pull":
			at, got = float64(s.Pulls[g.Number-1].Start), placeOf(g)
		case "finding":
			path, ok := g.Items[0].(draw.Path)
			if !ok {
				continue // its flag is in the one of another
			}
			pole := path.Runs[0]
			at, got = s.Flags[g.Number-1].Time, pole[len(pole)-1].X
		default:
			continue
		}
		if at < span.From || at > span.To || at == span.To && span.To < float64(s.Duration) {
			continue // of another system on the page
		}
		want := span.Left + (at-span.From)/(span.To-span.From)*(span.Right-span.Left)
		if want = min(max(want, span.Left), span.Right); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s %d at %v s stands at %v mm, its time lies at %v mm", g.Name, g.Number, at, got, want)
		}
		n++
	}
	return n
}

// placeOf returns the x that the disc of a pull stands for: its own, or the end of its
// pole.
func placeOf(g *draw.Group) float64 {
	for it := range g.All() {
		switch it := it.(type) {
		case draw.Path:
			return it.Runs[0][len(it.Runs[0])-1].X
		case draw.Disc:
			return it.Centre.X
		}
	}
	return math.NaN()
}
