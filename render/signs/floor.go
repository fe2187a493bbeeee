// Signs of the floor: places, ways, tracks, tapes.

package signs

import (
	"math"

	"pullscore/render/draw"
)

func floorSigns() []Sign {
	return []Sign{
		{Place, "place", "place", 4.2, func(g *draw.Group, x, y float64) { DrawPlace(g, x+PlaceRadius, y, "a", false) }},
		{LaterPlace, "later place", "later place", 4.2, func(g *draw.Group, x, y float64) { DrawPlace(g, x+PlaceRadius, y, "b", true) }},
		{Way, "way", "way", 8, func(g *draw.Group, x, y float64) { DrawWay(g, []draw.Point{pt(x, y), pt(x+8, y)}, 1) }},
		{Track, "dolly track", "track", 8, func(g *draw.Group, x, y float64) { DrawTrack(g, pt(x, y), pt(x+8, y)) }},
		{LensAxis, "lens axis", "axis", 8, stroked(LensAxis, 8, draw.Axis(draw.Grey))},
		{LaterState, "later, at the end of a move", "later", 8, stroked(LaterState, 8, draw.Later(draw.Black))},
		{Tape, "tape from the camera", "tape", 8, func(g *draw.Group, x, y float64) { DrawTape(g, pt(x, y), pt(x+8, y)) }},
	}
}

// PlaceRadius is the radius of the disc of a place, in millimetres.
const PlaceRadius = 2.1

// DrawPlace draws a place with its letter, with its middle at (x, y), and returns its
// group. A later place is a ring.
func DrawPlace(g *draw.Group, x, y float64, letter string, later bool) *draw.Group {
	if later {
		sub := g.Group(LaterPlace)
		sub.Add(draw.Disc{Centre: pt(x, y), Radius: PlaceRadius - draw.WindowWidth/2, Fill: draw.Paper, Stroke: draw.Solid(draw.Black, draw.WindowWidth)})
		upright(sub, x, y, letter, fontNumber, draw.Black, draw.Middle)
		return sub
	}
	sub := g.Group(Place)
	sub.Add(draw.Disc{Centre: pt(x, y), Radius: PlaceRadius, Fill: draw.Black})
	upright(sub, x, y, letter, fontNumber, draw.Paper, draw.Middle)
	return sub
}

// DrawWay draws a way through the points, with an arrow after that share of its length.
func DrawWay(g *draw.Group, run []draw.Point, share float64) {
	sub := g.Group(Way)
	sub.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)})
	length := 0.0
	for i := 1; i < len(run); i++ {
		length += math.Hypot(run[i].X-run[i-1].X, run[i].Y-run[i-1].Y)
	}
	left := share * length
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		d := math.Hypot(b.X-a.X, b.Y-a.Y)
		if d > 0 && (left <= d || i == len(run)-1) {
			along := unit(a, b)
			tip := pt(a.X+min(left, d)*along.X, a.Y+min(left, d)*along.Y)
			arrowhead(sub, tip, along)
			return
		}
		left -= d
	}
}

// arrowhead adds a head that points along a direction, with its tip at p.
func arrowhead(g *draw.Group, p, along draw.Point) {
	const long, half = 1.8, 0.8
	back := pt(p.X-long*along.X, p.Y-long*along.Y)
	filled(g, draw.Black, p, pt(back.X-half*along.Y, back.Y+half*along.X), pt(back.X+half*along.Y, back.Y-half*along.X))
}

// DrawTrack draws the track of a dolly from a to b: two lines, with sleepers every 2 mm.
func DrawTrack(g *draw.Group, a, b draw.Point) {
	sub := g.Group(Track)
	along := unit(a, b)
	const half, sleeper, every = 0.8, 1.2, 2.0
	for _, side := range []float64{-half, half} {
		sub.Line(a.X-side*along.Y, a.Y+side*along.X, b.X-side*along.Y, b.Y+side*along.X, draw.Solid(draw.Black, draw.DashWidth))
	}
	for at := every / 2; at < math.Hypot(b.X-a.X, b.Y-a.Y); at += every {
		x, y := a.X+at*along.X, a.Y+at*along.Y
		sub.Line(x-sleeper*along.Y, y+sleeper*along.X, x+sleeper*along.Y, y-sleeper*along.X, draw.Solid(draw.Black, draw.FineWidth))
	}
}

// DrawTape draws a tape from a to b: a line with ends.
func DrawTape(g *draw.Group, a, b draw.Point) {
	ended(g.Group(Tape), a, b, 0.8, draw.Solid(draw.Black, draw.RulerWidth))
}
