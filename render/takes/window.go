// The window that takes have to land in.

package takes

import (
	"math"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A window is how far before and past the mark a take may land and be sharp, in degrees
// at the hand. Either end may be infinite: the end of the ring is sharp.
type window struct {
	from, to float64
	known    bool
}

// windowOf returns the window that all takes share. Where the plan tells of none, and hits
// are counted by their distance from the mark, that distance is the window. Takes with
// different windows have none in common.
func windowOf(dots []takes.Dot, r *takes.Report) window {
	if r.HitsFrom != takes.HitsByPlan {
		return window{-takes.HitWithin, takes.HitWithin, r.HitsOf > 0}
	}
	var w window
	for i, d := range dots {
		from, to := d.Window[0], d.Window[1]
		if i == 0 {
			w = window{from, to, from < to}
		}
		if near := 0.02 * min(to-from, 60); !alike(w.from, from, near) || !alike(w.to, to, near) {
			return window{}
		}
	}
	return w
}

// alike reports whether two ends of windows are the same, but for so many degrees.
func alike(a, b, near float64) bool { return a == b || math.Abs(a-b) <= near }

// width returns the width of the window in degrees. If one end is open, it returns twice
// the other, and if both are, 0.
func (w window) width() float64 {
	from, to := w.from, w.to
	if math.IsInf(from, 0) {
		from = -to
	}
	if math.IsInf(to, 0) {
		to = -from
	}
	if !w.known || math.IsInf(to-from, 0) || math.IsNaN(to-from) {
		return 0
	}
	return to - from
}

// says is the window in words.
func (w window) says() string {
	end := func(v float64, open string) string {
		if math.IsInf(v, 0) {
			return open
		}
		return signed(v, 0.1)
	}
	return "window " + end(w.from, "open") + " to " + end(w.to, "open")
}

// windowOff is how far right of a plot its window stands, in millimetres.
const windowOff = 2.6

// draw draws the window to scale at the right of a plot, and its words above.
func (w window) draw(g *draw.Group, p *takesPlot) {
	if !w.known {
		return
	}
	x, top, bottom := p.box.Right()+windowOff, p.atY(w.to), p.atY(w.from)
	if high, low := w.to <= p.page.reach, w.from >= -p.page.reach; high && low {
		signs.DrawWindow(g, x, top, bottom)
	} else {
		drawOpen(g.Group(signs.Window), x, top, bottom, high, low)
	}
	g.Add(draw.NewText(x, p.box.Y-2.2, w.says(), sheet.FontSmall, draw.Black).Aligned(draw.End))
}

// drawOpen draws a window that reaches beyond the scale: such an end has no foot.
func drawOpen(g *draw.Group, x, top, bottom float64, high, low bool) {
	const foot = 1.1
	var run []draw.Point
	if high {
		run = append(run, draw.Point{X: x - foot, Y: top})
	}
	run = append(run, draw.Point{X: x, Y: top}, draw.Point{X: x, Y: bottom})
	if low {
		run = append(run, draw.Point{X: x - foot, Y: bottom})
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)})
}
