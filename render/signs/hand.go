// Signs of the hand and the ring.

package signs

import (
	"math"

	"pullscore/render/draw"
)

func handSigns() []Sign {
	return []Sign{
		{Regrip, "re-grip", "re-grip", 5, legendRegrip},
		{Stop, "ring's stop", "stop", 6, func(g *draw.Group, x, y float64) { DrawStop(g, pt(x, y+0.4), pt(x+6, y+0.4)) }},
		{Window, "window to land in, to scale", "window", windowDeep, func(g *draw.Group, x, y float64) { DrawWindow(g, x+windowDeep, y-1.6, y+1.6) }},
		{Narrow, "narrow window to land in", "narrow", 1.7, func(g *draw.Group, x, y float64) { DrawWindow(g, x+1.1, y-0.3, y+0.3) }},
		{Settings, "settings that keep it sharp, to scale", "sharp here", 5, legendSettings},
		{Measured, "measured", "measured", 2, func(g *draw.Group, x, y float64) { DrawMark(g, x+1, y-1, true) }},
		{Computed, "computed", "computed", 2, func(g *draw.Group, x, y float64) { DrawMark(g, x+1, y-1, false) }},
		{ByEye, "mark set by eye", "by eye", fontLetter.Room("~"), func(g *draw.Group, x, y float64) {
			upright(g.Group(ByEye), x, y, "~", fontLetter, draw.Black, draw.Start)
		}},
		{LawError, "error of the ring, 2 σ each way", "error of the ring", 6, func(g *draw.Group, x, y float64) { DrawLawError(g, pt(x, y), pt(x+6, y)) }},
	}
}

// DrawRegrip draws two strokes at 70 degrees in the middle of the gap from a to b in the
// line of the hand, and returns the box that they take.
func DrawRegrip(g *draw.Group, a, b draw.Point) draw.Box {
	sub := g.Group(Regrip)
	const high, off = 2.6, 0.45
	lean := high / 2 / math.Tan(70*math.Pi/180)
	x, y := (a.X+b.X)/2, (a.Y+b.Y)/2
	for _, x := range []float64{x - off, x + off} {
		sub.Line(x-lean, y+high/2, x+lean, y-high/2, draw.Solid(draw.Black, draw.DashWidth))
	}
	return draw.Box{X: x - off - lean, Y: y - high/2, W: 2 * (off + lean), H: high}
}

func legendRegrip(g *draw.Group, x, y float64) {
	sub := g.Group(Regrip)
	for _, from := range []float64{x, x + 3.7} {
		sub.Line(from, y, from+1.3, y, draw.Solid(draw.Black, draw.HandWidth))
	}
	DrawRegrip(sub, pt(x+1.3, y), pt(x+3.7, y))
}

// DrawStop draws an end of the ring: a line from a to b, hatched on its left as one goes
// from a to b.
func DrawStop(g *draw.Group, a, b draw.Point) {
	sub := g.Group(Stop)
	sub.Line(a.X, a.Y, b.X, b.Y, draw.Solid(draw.Black, draw.StopWidth))
	const every, long = 1.2, 0.9
	along := unit(a, b)
	for at := 0.0; at+long <= math.Hypot(b.X-a.X, b.Y-a.Y)+1e-9; at += every {
		x, y := a.X+at*along.X, a.Y+at*along.Y
		sub.Line(x, y, x+long*(along.X+along.Y), y+long*(along.Y-along.X), draw.Solid(draw.Black, draw.SubjectWidth))
	}
}

// unit returns the direction from a to b; to the right if they are the same point.
func unit(a, b draw.Point) draw.Point {
	d := math.Hypot(b.X-a.X, b.Y-a.Y)
	if d == 0 {
		return draw.Point{X: 1}
	}
	return draw.Point{X: (b.X - a.X) / d, Y: (b.Y - a.Y) / d}
}

const (
	windowDeep = 1.1
	// WindowLeast is the height below which a window is drawn as a narrow one, in
	// millimetres.
	WindowLeast = 1.2
)

// DrawWindow draws a window to land in, true from top to bottom, with its upright line at
// x and its ends to the left, and returns its group. A narrow one has arrowheads from
// outside.
func DrawWindow(g *draw.Group, x, top, bottom float64) *draw.Group {
	if bottom-top >= WindowLeast {
		sub := g.Group(Window)
		sub.Add(draw.Path{
			Runs:   [][]draw.Point{{pt(x-windowDeep, top), pt(x, top), pt(x, bottom), pt(x-windowDeep, bottom)}},
			Stroke: draw.Solid(draw.Black, draw.WindowWidth),
		})
		return sub
	}
	sub := g.Group(Narrow)
	thin := draw.Solid(draw.Black, draw.RulerWidth)
	for _, end := range [][2]float64{{top, -1}, {bottom, 1}} {
		y, out := end[0], end[1]
		sub.Line(x-windowDeep, y, x+0.6, y, thin)
		sub.Line(x, y, x, y+1.6*out, thin)
		filled(sub, draw.Black, pt(x, y), pt(x-0.4, y+0.9*out), pt(x+0.4, y+0.9*out))
	}
	return sub
}

// legendSettings draws a mark with the settings round it that keep it sharp.
func legendSettings(g *draw.Group, x, y float64) {
	g.Group(Settings).Add(draw.Rect{Box: draw.Box{X: x, Y: y - 0.9, W: 5, H: 1.8}, Fill: draw.Black},
		draw.Line{From: pt(x+2.5, y-1.6), To: pt(x+2.5, y+1.6), Stroke: draw.Solid(draw.Black, draw.MarkWidth)})
}

// DrawMark draws a mark of the lens that points up to (x, y): full if somebody measured or
// engraved it, open if it is computed.
func DrawMark(g *draw.Group, x, y float64, measured bool) {
	name, fill := Computed, draw.Paper
	if measured {
		name, fill = Measured, draw.Black
	}
	g.Group(name).Add(draw.Path{
		Runs:   [][]draw.Point{{pt(x, y), pt(x-1, y+1.9), pt(x+1, y+1.9)}},
		Closed: true, Fill: fill, Stroke: draw.Solid(draw.Black, draw.RulerWidth),
	})
}

// DrawLawError draws how far the law of the ring may be off, from a to b.
func DrawLawError(g *draw.Group, a, b draw.Point) {
	ended(g.Group(LawError), a, b, 0.6, draw.Solid(draw.Black, draw.RulerWidth))
}
