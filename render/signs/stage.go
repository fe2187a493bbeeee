// Signs of the floor of a scene: people, marks, cameras and what they see.

package signs

import (
	"math"

	"pullscore/render/draw"
)

// The names of the signs of the floor of a scene.
const (
	Person    = "person"
	FloorMark = "floor-mark"
	Zero      = "zero-point"
	Wedge     = "wedge"
	CameraWay = "camera-way"
	PanArc    = "pan-arc"
	View      = "field-of-view"
	LineOf    = "line-of-action"
)

func stageSigns() []Sign {
	return []Sign{
		{Person, "person", "person", 4.5, func(g *draw.Group, x, y float64) { ringed(g, x+2.25, y, 2.25) }},
		{FloorMark, "mark on the floor", "mark", 2 * markHalf, func(g *draw.Group, x, y float64) { DrawFloorMark(g, x+markHalf, y-MarkStem/2) }},
		{Zero, "zero point", "zero point", 2 * zeroHalf, func(g *draw.Group, x, y float64) { DrawZero(g, x+zeroHalf, y, 2) }},
		{Wedge, "camera, its tip on the sensor mark", "camera", 5, func(g *draw.Group, x, y float64) {
			DrawWedge(g, pt(x+5, y), pt(1, 0), SmallWedge, false)
		}},
		{CameraWay, "way of a camera", "camera's way", 8, func(g *draw.Group, x, y float64) { DrawCameraWay(g, []draw.Point{pt(x, y), pt(x+8, y)}) }},
		{PanArc, "pan", "pan", 4, func(g *draw.Group, x, y float64) {
			DrawPanArc(g, [][]draw.Point{arcOf(pt(x+2, y+2.4), 3.6, -122, -58)}, true)
		}},
		{View, "side of a field of view, hatched as in the table", "field of view", 8, func(g *draw.Group, x, y float64) {
			DrawSide(g, [][]draw.Point{{pt(x, y-1), pt(x+8, y-1)}}, draw.Hatch([]draw.Point{pt(x, y-1), pt(x+8, y-1), pt(x+8, y+0.8), pt(x, y+0.8)}, SidePitch, 0.5))
		}},
		{LineOf, "line of action", "line", 8, stroked(LineOf, 8, draw.Solid(draw.Grey, draw.RulerWidth))},
	}
}

// The sizes of the signs of the floor of a scene, in millimetres.
const (
	PersonRadius = 2.75 // of the ring round the disc of a person
	MarkStem     = 4.0  // of the T of a mark
	SidePitch    = 1.0  // of the hatch inside a field of view
	markHalf     = 3.4
	zeroHalf     = 4.2
)

// DrawPerson draws the ring of a person round the disc of their place at (x, y).
func DrawPerson(g *draw.Group, x, y float64) { ringed(g, x, y, PersonRadius) }

func ringed(g *draw.Group, x, y, radius float64) {
	g.Group(Person).Add(draw.Disc{Centre: pt(x, y), Radius: radius - draw.StopWidth/2, Stroke: draw.Solid(draw.Black, draw.StopWidth)})
}

// DrawFloorMark draws the T of a mark, whose bar has its middle at (x, y).
func DrawFloorMark(g *draw.Group, x, y float64) {
	sub := g.Group(FloorMark)
	for _, run := range MarkLines(x, y) {
		sub.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, draw.Solid(draw.Black, draw.WindowWidth))
	}
}

// MarkLines returns the bar and the stem of such a mark.
func MarkLines(x, y float64) [][]draw.Point {
	return [][]draw.Point{{pt(x-markHalf, y), pt(x+markHalf, y)}, {pt(x, y), pt(x, y+MarkStem)}}
}

// DrawZero draws the cross of a zero point, which reaches so far up and down.
func DrawZero(g *draw.Group, x, y, up float64) {
	sub := g.Group(Zero)
	for _, run := range ZeroLines(x, y, up) {
		sub.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, draw.Solid(draw.Black, draw.RulerWidth))
	}
}

// ZeroLines returns the lines of such a cross.
func ZeroLines(x, y, up float64) [][]draw.Point {
	return [][]draw.Point{{pt(x-zeroHalf, y), pt(x+zeroHalf, y)}, {pt(x, y-up), pt(x, y+up)}}
}

// A WedgeSize is the size of the sign of a camera: from its tip to its back, and half its
// back, millimetres.
type WedgeSize struct{ Long, Half float64 }

// The sizes of a camera: with its ID in it, without, and where it comes to.
var (
	FullWedge  = WedgeSize{11, 5.6}
	SmallWedge = WedgeSize{5, 2.3}
	LaterWedge = WedgeSize{8, 4}
)

// Corners returns the corners of a wedge that looks along a direction, first its tip, which
// is at p.
func (w WedgeSize) Corners(p, along draw.Point) []draw.Point {
	back := pt(p.X-w.Long*along.X, p.Y-w.Long*along.Y)
	return []draw.Point{p, pt(back.X-w.Half*along.Y, back.Y+w.Half*along.X), pt(back.X+w.Half*along.Y, back.Y-w.Half*along.X)}
}

// Middle returns the middle of the largest circle in such a wedge, and its radius.
func (w WedgeSize) Middle(p, along draw.Point) (draw.Point, float64) {
	r := w.Long * w.Half / (w.Half + math.Hypot(w.Long, w.Half))
	return pt(p.X-(w.Long-r)*along.X, p.Y-(w.Long-r)*along.Y), r
}

// DrawWedge draws a camera and returns its group; one that comes there later is an outline.
func DrawWedge(g *draw.Group, p, along draw.Point, size WedgeSize, later bool) *draw.Group {
	sub, fill, stroke := g.Group(Wedge), draw.Black, draw.Stroke{}
	if later {
		sub, fill, stroke = g.Group(LaterState), draw.Paper, draw.Later(draw.Black)
	}
	sub.Add(draw.Path{Runs: [][]draw.Point{size.Corners(p, along)}, Closed: true, Fill: fill, Stroke: stroke})
	return sub
}

// DrawCameraWay draws the way of a camera, with an arrow at its end.
func DrawCameraWay(g *draw.Group, run []draw.Point) {
	sub := g.Group(CameraWay)
	n := len(run)
	along, d := unit(run[n-2], run[n-1]), math.Hypot(run[n-1].X-run[n-2].X, run[n-1].Y-run[n-2].Y)
	const long, half = 2.4, 1.3
	tip := run[n-1]
	if cut := min(d, long-0.2); cut > 0 { // the line ends inside the arrow
		run = append(append([]draw.Point(nil), run[:n-1]...), pt(tip.X-cut*along.X, tip.Y-cut*along.Y))
	}
	sub.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.HandWidth)})
	filled(sub, draw.Black, tip, pt(tip.X-long*along.X-half*along.Y, tip.Y-long*along.Y+half*along.X), pt(tip.X-long*along.X+half*along.Y, tip.Y-long*along.Y-half*along.X))
}

// DrawPanArc draws the arc of a pan, with an arrow at the end of its last run if that is
// the end of the pan.
func DrawPanArc(g *draw.Group, runs [][]draw.Point, ends bool) {
	sub := g.Group(PanArc)
	sub.Add(draw.Path{Runs: runs, Stroke: draw.Solid(draw.Black, draw.RulerWidth)})
	if last := runs[len(runs)-1]; ends {
		const long, half = 1.3, 0.55 // small, as the arc may be short
		n := len(last)
		tip, along := last[n-1], unit(last[n-2], last[n-1])
		back := pt(tip.X-long*along.X, tip.Y-long*along.Y)
		filled(sub, draw.Black, tip, pt(back.X-half*along.Y, back.Y+half*along.X), pt(back.X+half*along.Y, back.Y-half*along.X))
	}
}

// arcOf returns an arc round a point, between two angles in degrees.
func arcOf(middle draw.Point, radius, from, to float64) (run []draw.Point) {
	const steps = 12
	for i := range steps + 1 {
		sin, cos := math.Sincos((from + (to-from)*float64(i)/steps) * math.Pi / 180)
		run = append(run, pt(middle.X+radius*cos, middle.Y+radius*sin))
	}
	return run
}

// DrawSide draws pieces of a side of a field of view, on which no text may lie, and the
// lines of the hatch inside it.
func DrawSide(g *draw.Group, side, hatch [][]draw.Point) {
	sub := g.Group(View)
	if len(hatch) > 0 {
		sub.Add(draw.Path{Runs: hatch, Stroke: draw.Solid(draw.Grey, draw.HatchWidth)})
	}
	for _, run := range side {
		sub.Group(Limit).Line(run[0].X, run[0].Y, run[1].X, run[1].Y, draw.Solid(draw.Black, draw.RulerWidth))
	}
}
