// The scale of time on a screen: systems as wide as the screen, one below the other.

package times

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A Screen is what a score is drawn for in place of paper.
type Screen struct {
	Width     float64 // of what is seen, millimetres
	PerSecond float64 // the scale of time, millimetres; 0: the greatest that shows all of it in one system
}

const (
	narrow       = 150.0 // up to this width a screen is narrow
	narrowGutter = 20.0
	narrowApron  = 13.0
	narrowMargin = 3.0 // what is seen of the margin
	screenLap    = 6.0 // of the next window shown again at most, millimetres
	narrowLap    = 3.0 // on a narrow screen
)

// Where the time axis of a sheet starts, from the margin on, and what has to be right of it.
const (
	Gutter = 34.0 // row heads
	Apron  = 15.0 // the scale of distances
)

// Narrow reports whether names and headings have little room. No screen is not narrow.
func (s *Screen) Narrow() bool { return s != nil && s.Width <= narrow }

// Trim returns what is left out at either side of a sheet when it is shown, in millimetres.
func (s *Screen) Trim() float64 {
	if s.Narrow() {
		return sheet.Margin - narrowMargin
	}
	return 0
}

// Gutter returns how wide the row heads are, in millimetres: on a narrow screen they have a
// gutter of their own, since headings stand above their rows.
func (s *Screen) Gutter() float64 {
	if s.Narrow() {
		return narrowGutter
	}
	return Gutter
}

// A Division is a shot cut into systems.
type Division struct {
	PaperWidth float64 // millimetres, with what is left out of it
	Axis       Axis
	Cuts       []float64 // where systems end, in seconds, from 0 on
	Lap        float64   // what each shows of the next, seconds
}

// Divide cuts so many seconds into systems as wide as the screen. What the cut has removed
// is narrowed.
func (s *Screen) Divide(seconds float64, removed []plan.Stretch) Division {
	d := Division{PaperWidth: s.Width + 2*s.Trim(), Cuts: []float64{0, seconds}}
	apron, lap := Apron, screenLap
	if s.Narrow() {
		apron, lap = narrowApron, narrowLap
	}
	room := d.PaperWidth - 2*sheet.Margin - s.Gutter() - apron
	axis, long := Layout(seconds, room, removed)
	if s.PerSecond > 0 {
		axis = NewAxis(Rung(s.PerSecond), removed)
		long = axis.At(seconds) > room+1e-9
	}
	d.Axis, d.Lap = axis, min(Lap, lap/axis.perSecond)
	if long {
		d.Cuts = axis.Windows(seconds, wholeSteps(room/axis.perSecond-d.Lap))
	}
	return d
}

// wholeSteps returns how long a window is that may be so many seconds long: halves of a
// second, or tenths where it is shorter than three.
func wholeSteps(seconds float64) float64 {
	if seconds >= 3 {
		return math.Floor(seconds*2) / 2
	}
	return max(1, math.Floor(seconds*10)) / 10
}
