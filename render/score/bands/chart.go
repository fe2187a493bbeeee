// The chart: a shot against time on its way to paper. A long shot is cut into windows that
// share the scales of time, of distance and of the hand.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/score/times"
	"pullscore/render/sheet"
)

// A Chart is a shot against time in the making.
type Chart struct {
	Shot      *plan.Shot
	Paper     sheet.Paper
	Left      float64        // where the time axis starts, millimetres
	PerSecond float64        // millimetres
	axis      times.Axis     // of that scale
	Seconds   float64        // how long it is
	begin     bool           // what is laid next begins a new sheet
	screen    *times.Screen  // nil: it is for paper
	lap       float64        // how much of the next window a window shows again, seconds
	Ahead     int            // pages before those of the chart
	Systems   int            // windows on one sheet at most
	letters   map[int]string // of the findings, by their flags
	first     map[int]bool   // of them: the first of its letter
	Order     []int          // the subjects, the farthest first
	Windows   []*Window
	Depth     DepthScale
	Turn      TurnScale
	Sheets    []*Sheet
}

// A Window is the stretch of time that one system shows.
type Window struct {
	*Chart
	from, to float64 // seconds
	end      float64 // of the curves: a little of the next window, no more than the shot
	last     bool
	Right    float64 // where the time axis ends, millimetres
	Curves   curves
}

// Apron is what of the page has to be right of the time axis, up to the margin, in
// millimetres: the scale of distances.
const Apron = times.Apron

// timeRoom is how wide a time axis may be, in millimetres.
func timeRoom(paper sheet.Paper) float64 {
	return paper.W - 2*sheet.Margin - times.Gutter - Apron
}

// NewChart returns the chart of a shot over its own times.
func NewChart(shot *plan.Shot, paper sheet.Paper) *Chart {
	return newChart(Lasting(shot), shot, paper, removed(shot))
}

// NewChartOver returns the chart of a shot over a time that may be longer than its own,
// in seconds. Nothing of it is narrowed.
func NewChartOver(seconds float64, shot *plan.Shot, paper sheet.Paper) *Chart {
	return newChart(seconds, shot, paper, nil)
}

// newChart returns the chart of a shot over a time on which stretches are narrowed.
func newChart(seconds float64, shot *plan.Shot, paper sheet.Paper, narrowed []plan.Stretch) *Chart {
	axis, long := times.Layout(seconds, timeRoom(paper), narrowed)
	sc := &Chart{Shot: shot, Paper: paper, Left: sheet.Margin + times.Gutter, PerSecond: axis.PerSecond(), axis: axis, Seconds: seconds, Systems: 1, Order: order(shot), lap: times.Lap}
	if long && len(shot.Subjects) <= times.SystemSubjects {
		sc.Systems = 2
	}
	cuts := []float64{0, seconds}
	if long {
		cuts = axis.Windows(seconds, times.SystemSeconds)
	}
	return sc.over(cuts)
}

// over gives the chart its windows, which end at the cuts, and its scales.
func (sc *Chart) over(cuts []float64) *Chart {
	shot := sc.Shot
	sc.letters, sc.first = map[int]string{}, map[int]bool{}
	for _, l := range shot.Lettered() {
		sc.first[l.Flags[0]] = true
		for _, n := range l.Flags {
			sc.letters[n] = l.Letter
		}
	}
	for i := 1; i < len(cuts); i++ {
		w := &Window{Chart: sc, from: cuts[i-1], to: cuts[i], last: i == len(cuts)-1}
		w.end = min(w.to, Lasting(shot))
		if !w.last {
			w.end = min(w.to+sc.lap, Lasting(shot))
		}
		w.Right = w.X(w.Ends())
		if w.end > w.from {
			w.Curves = w.sample()
		}
		sc.Windows = append(sc.Windows, w)
	}
	sc.Depth = newDepthScale(sc.Windows)
	sc.Turn = newTurnScale(sc)
	return sc
}

// Overall returns a leaf that shows a stretch of the whole shot to another scale, from left
// on. Nothing on it has an ID: that has the same thing on a sheet to scale.
func (sc *Chart) Overall(left, perSecond, from, to float64) *Leaf {
	c := *sc
	c.Left, c.PerSecond, c.axis, c.first = left, perSecond, times.NewAxis(perSecond, nil), nil
	w := &Window{Chart: &c, from: from, to: to, end: to, last: to >= sc.Seconds, Right: left + (to-from)*perSecond}
	return &Leaf{Chart: &c, Window: w}
}

// Shift moves the time axis to the right by so many millimetres.
func (sc *Chart) Shift(by float64) {
	sc.Left += by
	for _, w := range sc.Windows {
		w.Right += by
	}
}

// From and To return the stretch of time of the window, in seconds.
func (w *Window) From() float64 { return w.from }
func (w *Window) To() float64   { return w.to }

// Ends returns where the time axis ends, in seconds: it shows a little of the next window.
func (w *Window) Ends() float64 {
	if w.last {
		return w.to
	}
	return w.to + w.lap
}

// X returns where a time stands, held to the window.
func (w *Window) X(t float64) float64 {
	t = min(max(t, w.from), w.Ends())
	if w.axis.Broken() {
		return w.Left + w.axis.At(t) - w.axis.At(w.from)
	}
	return w.Left + (t-w.from)*w.PerSecond
}

// Narrowed reports whether the cut has taken out all of a stretch of time, and the window
// shows no more of it than that.
func (w *Window) Narrowed(from, to float64) bool { return w.axis.Holds(from, to) }

// Holds reports whether a moment belongs on the window. The first and the last
// window take what lies outside the shot.
func (w *Window) Holds(t float64) bool {
	return (t >= w.from || w.from == 0) && (t < w.to || w.last)
}

// Overlaps reports whether a stretch of time shows on the window.
func (w *Window) Overlaps(from, to float64) bool {
	return to > w.from && from < w.Ends() || w.Holds(from)
}

// Lasting returns how long a shot is drawn: an empty one still has a score.
func Lasting(s *plan.Shot) float64 {
	if end := float64(s.Duration); end > 0 && !math.IsInf(end, 0) {
		return end
	}
	return 1
}

// order returns the indices of the subjects in the order of all papers.
func order(s *plan.Shot) (all []int) {
	for _, u := range sheet.Order(s) {
		all = append(all, slices.Index(s.Subjects, u))
	}
	return all
}

// Rank orders severities.
func Rank(severity string) int {
	return slices.Index([]string{"note", "warning", "error"}, severity)
}
