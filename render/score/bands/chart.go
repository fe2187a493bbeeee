// The chart: a shot against time on its way to paper. It is cut into windows, one a
// sheet, that share the scales of distance and of the hand.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A Chart is a shot against time in the making.
type Chart struct {
	Shot        *plan.Shot
	Paper       sheet.Paper
	Left, Right float64 // where the time axis starts and ends
	Windows     []*Window
	Depth       DepthScale
	Turn        TurnScale
	Sheets      []*Leaf
}

// A Window is the stretch of time that a sheet shows.
type Window struct {
	*Chart
	from, to float64 // seconds
	end      float64 // of the curves: where the shot ends, if it does before to
	last     bool
	Curves   curves
}

// gutter is the room left of the time axis for the row heads, apron the room
// right of it for the distances.
const (
	gutter = 33.0
	Apron  = 10.0
)

// NewChart returns the chart of a shot over its own times.
func NewChart(shot *plan.Shot, paper sheet.Paper) *Chart {
	return NewChartOver(CutTime(shot), shot, paper)
}

// NewChartOver returns the chart of a shot over times that may be more than
// its own.
func NewChartOver(cuts []float64, shot *plan.Shot, paper sheet.Paper) *Chart {
	sc := &Chart{Shot: shot, Paper: paper, Left: sheet.Margin + gutter, Right: paper.W - sheet.Margin - Apron}
	for i := 1; i < len(cuts); i++ {
		w := &Window{Chart: sc, from: cuts[i-1], to: cuts[i], end: min(cuts[i], Lasting(shot)), last: i == len(cuts)-1}
		if w.end > w.from {
			w.Curves = w.sample()
		}
		sc.Windows = append(sc.Windows, w)
	}
	sc.Depth = newDepthScale(sc.Windows)
	sc.Turn = newTurnScale(sc)
	return sc
}

// X returns where a time stands, held to the window.
func (w *Window) X(t float64) float64 {
	t = min(max(t, w.from), w.to)
	return w.Left + (t-w.from)/(w.to-w.from)*(w.Right-w.Left)
}

// Holds reports whether a moment belongs on the window. The first and the last
// window take what lies outside the shot.
func (w *Window) Holds(t float64) bool {
	return (t >= w.from || w.from == 0) && (t < w.to || w.last)
}

// overlaps reports whether a stretch of time shows on the window.
func (w *Window) overlaps(from, to float64) bool {
	return to > w.from && from < w.to || w.Holds(from)
}

// What one sheet shows at most: more seconds would not leave room for words,
// more pulls or flags none for their labels.
const (
	SheetSeconds = 16.0
	sheetPulls   = 10
	sheetFlags   = 24
	leastSeconds = 2.0
)

// CutTime returns the times at which sheets start, and the end. Sheets are of
// like length, cut at a whole second where that cuts through the fewest moves
// and lines.
func CutTime(s *plan.Shot) []float64 {
	end := Lasting(s)
	n := max(
		int(math.Ceil(end/SheetSeconds-1e-9)),
		(len(s.Pulls)+sheetPulls-1)/sheetPulls,
		(len(s.Flags)+sheetFlags-1)/sheetFlags,
	)
	n = max(1, min(n, int(end/leastSeconds)))
	cuts := []float64{0}
	for i := 1; i < n; i++ {
		even := end * float64(i) / float64(n)
		cuts = append(cuts, quietest(s, even, cuts[i-1], end/float64(n)/5))
	}
	return append(cuts, end)
}

// Lasting returns how long a shot is drawn: an empty one still has a score.
func Lasting(s *plan.Shot) float64 {
	if end := float64(s.Duration); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}

// quietest returns the whole second within reach of t that cuts the fewest
// moves and lines, the nearest of them, or t itself where no whole second after
// the last cut is in reach.
func quietest(s *plan.Shot, t, after, reach float64) float64 {
	best, least := t, math.Inf(1)
	for c := math.Ceil(t - reach); c <= t+reach; c++ {
		if c <= after {
			continue
		}
		if cost := 10*float64(crossings(s, c)) + math.Abs(c-t); cost < least {
			best, least = c, cost
		}
	}
	return best
}

func crossings(s *plan.Shot, t float64) int {
	n := 0
	for _, p := range s.Pulls {
		if p.Kind != "follow" && float64(p.Start) < t && t < float64(p.Land) {
			n += 2
		}
	}
	for _, l := range s.Lines {
		if float64(l.Start) < t && t < float64(l.End) {
			n++
		}
	}
	return n
}

// Rank orders severities.
func Rank(severity string) int {
	return slices.Index([]string{"note", "warning", "error"}, severity)
}
