// Signs of the focus: moves, subjects, zones, and how sharp things are.

package signs

import (
	"strconv"

	"pullscore/render/draw"
)

func focusSigns() []Sign {
	return []Sign{
		{Rack, "rack", "rack", 3.8, func(g *draw.Group, x, y float64) { DrawRack(g, x+discRadius, y, 1) }},
		{Follow, "follow", "follow", 3.8, func(g *draw.Group, x, y float64) { DrawFollow(g, x+discRadius, y, 2) }},
		{Start, "focus at the start", "start", 2.2, func(g *draw.Group, x, y float64) { DrawStart(g, x+2.2, y) }},
		{Focus, "focus and what is sharp", "focus, sharp zone", 8, legendFocus},
		{Subject, "subject, as deep as it is", "subject", 7, legendSubject},
		{Sharp, "sharp, faint, seen soft", "sharp, faint, soft", 11, legendSharp},
		{Chance, "black: chance that it is sharp", "black: chance", 6, func(g *draw.Group, x, y float64) { DrawChance(g, x, x+6, y+BarHeight/2, 0.65) }},
		{NoChance, "chance not known", "no chance known", 6, func(g *draw.Group, x, y float64) { DrawNoChance(g, x, x+6, y+BarHeight/2) }},
		{Departure, "rack", "rack", 2, func(g *draw.Group, x, y float64) { DrawDeparture(g, x+1, y, 1) }},
		{Stay, "focus stays", "stays", 8, func(g *draw.Group, x, y float64) { DrawStay(g, x, x+8, y) }},
		{Thing, "focus stays on who does not speak", "on who is silent", 8, func(g *draw.Group, x, y float64) { DrawStayOnThing(g, x, x+8, y) }},
		{Sheet, "sheet", "sheet", 3, func(g *draw.Group, x, y float64) { DrawSheet(g, x, y-1.5, y+1.5, "3", "") }},
		{Hold, "hold", "hold", 7, func(g *draw.Group, x, y float64) { DrawHold(g, x, x+7, y, true, true) }},
		{Out, "out of the picture", "out of picture", 5, func(g *draw.Group, x, y float64) { DrawOut(g, draw.Box{X: x + 0.1, Y: y - 1.2, W: 4.8, H: 2.4}) }},
		{Joint, "camera turns while the focus moves", "turn and rack", 4.5, func(g *draw.Group, x, y float64) { DrawJoint(g, draw.Box{X: x, Y: y - 1.4, W: 4.5, H: 2.8}) }},
		{Edge, "sharp goes on, to", "goes on, to", 1.8, func(g *draw.Group, x, y float64) { DrawEdge(g, x+0.9, y+0.7, true, "") }},
	}
}

const discRadius = 1.9

// DiscRadius returns the radius of the disc of a pull with that number, in millimetres.
func DiscRadius(number int) float64 {
	return max(discRadius, fontNumber.Room(strconv.Itoa(number))/2+0.3)
}

// DrawPull draws the disc of a pull, a follow's or a rack's, with its middle at (x, y).
func DrawPull(g *draw.Group, x, y float64, number int, follow bool) {
	if follow {
		DrawFollow(g, x, y, number)
		return
	}
	DrawRack(g, x, y, number)
}

// DrawRack draws the disc of a rack with its middle at (x, y), and returns its group.
func DrawRack(g *draw.Group, x, y float64, number int) *draw.Group {
	sub := g.Group(Rack)
	sub.Number = number
	sub.Add(draw.Disc{Centre: pt(x, y), Radius: DiscRadius(number), Fill: draw.Black})
	upright(sub, x, y, strconv.Itoa(number), fontNumber, draw.Paper, draw.Middle)
	return sub
}

// DrawFollow draws the disc of a follow with its middle at (x, y), and returns its group.
// Its outer edge is that of the disc of a rack.
func DrawFollow(g *draw.Group, x, y float64, number int) *draw.Group {
	sub := g.Group(Follow)
	sub.Number = number
	sub.Add(draw.Disc{Centre: pt(x, y), Radius: DiscRadius(number) - draw.RingWidth/2, Fill: draw.Paper, Stroke: draw.Solid(draw.Black, draw.RingWidth)})
	upright(sub, x, y, strconv.Itoa(number), fontNumber, draw.Black, draw.Middle)
	return sub
}

// DrawStart draws the S of the first focus, which ends at x, with its middle at y.
func DrawStart(g *draw.Group, x, y float64) {
	upright(g.Group(Start), x, y, "S", fontStart, draw.Black, draw.End)
}

// DrawDeparture draws the number of a rack in an overview, with its middle at (x, y).
func DrawDeparture(g *draw.Group, x, y float64, number int) *draw.Group {
	sub := g.Group(Departure)
	sub.Number = number
	upright(sub, x, y, strconv.Itoa(number), fontNumber, draw.Black, draw.Middle)
	return sub
}

// DrawStay draws the line where the focus stays, from x1 to x2.
func DrawStay(g *draw.Group, x1, x2, y float64) {
	g.Group(Stay).Line(x1, y, x2, y, draw.Solid(draw.Black, draw.StayWidth))
}

// DrawStayOnThing draws the line where the focus stays on somebody or something that does
// not speak, from x1 to x2: as thick as that of a speaker, and hollow.
func DrawStayOnThing(g *draw.Group, x1, x2, y float64) {
	const half = draw.DashWidth / 2
	box := draw.Box{X: x1, Y: y - draw.StayWidth/2, W: x2 - x1, H: draw.StayWidth}
	bar := draw.Rect{Box: box.Grow(-half), Fill: draw.Paper, Stroke: draw.Solid(draw.Black, draw.DashWidth)}
	if bar.Box.W <= 0 { // no room for an edge on either side
		bar = draw.Rect{Box: box, Fill: draw.Black}
	}
	g.Group(Thing).Add(bar)
}

// DrawStayAlong draws the line where the focus stays with somebody who moves.
func DrawStayAlong(g *draw.Group, run []draw.Point) {
	g.Group(Stay).Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.StayWidth)})
}

// DrawSheet draws where a sheet begins in an overview: a line from top to bottom, and the
// number of the sheet beside it. Link is the ID of the sheet; it may be empty.
func DrawSheet(g *draw.Group, x, top, bottom float64, number, link string) {
	sub := g.Group(Sheet)
	sub.Link = link
	sub.Line(x, top, x, bottom, draw.Solid(draw.Grey, draw.RulerWidth))
	upright(sub, x+0.8, (top+bottom)/2, number, fontValue, draw.Grey, draw.Start)
}

// DrawHold draws a hold from x1 to x2: a line, with an end of 2 mm where it begins and
// where it is over, as far as the sheet shows that.
func DrawHold(g *draw.Group, x1, x2, y float64, begins, over bool) {
	sub, pen := g.Group(Hold), draw.Solid(draw.Black, draw.DashWidth)
	sub.Line(x1, y, x2, y, pen)
	if begins {
		sub.Line(x1, y-1, x1, y+1, pen)
	}
	if over {
		sub.Line(x2, y-1, x2, y+1, pen)
	}
}

// DrawEdge draws a triangle that says that the sharp zone goes on beyond the edge of a
// band, with its base on y and its middle at x, and to the right of it how far. Up is
// farther.
func DrawEdge(g *draw.Group, x, y float64, up bool, value string) {
	sub := g.Group(Edge)
	tip := y + 1.4
	if up {
		tip = y - 1.4
	}
	filled(sub, draw.Blue, pt(x-0.9, y), pt(x+0.9, y), pt(x, tip))
	if value != "" {
		upright(sub, x+1.6, (y+tip)/2, value, fontValue, draw.Blue, draw.Start)
	}
}

// DrawOut draws who is out of the picture: a hatch instead of their bar.
func DrawOut(g *draw.Group, box draw.Box) {
	const pitch, least = 1.1, 0.6
	g.Group(Out).Add(draw.Rect{Box: box.Grow(0.1), Fill: draw.Paper},
		draw.Path{Runs: draw.Hatch(cornersOf(box), pitch, least), Stroke: draw.Solid(draw.Grey, draw.HatchWidth)})
}

// DrawJoint draws the ground of a time in which the camera turns while the focus moves, and
// returns its group.
func DrawJoint(g *draw.Group, box draw.Box) *draw.Group {
	const pitch, least = 1.5, 0.5
	sub := g.Group(Joint)
	sub.Add(draw.Path{Runs: draw.Hatch(cornersOf(box), pitch, least), Stroke: draw.Solid(draw.Pale, draw.WindowWidth)})
	return sub
}

func cornersOf(b draw.Box) []draw.Point {
	return []draw.Point{pt(b.X, b.Y), pt(b.Right(), b.Y), pt(b.Right(), b.Bottom()), pt(b.X, b.Bottom())}
}

// The heights of the bars of sharpness, in millimetres.
const (
	BarHeight   = 2.8
	FaintHeight = 1.5
)

// DrawSharp draws a bar of somebody who is sharp from x1 to x2, standing on base. A chance
// under 1 makes the bar lower; see DrawChance for the frame.
func DrawSharp(g *draw.Group, x1, x2, base, chance float64) {
	bar(g.Group(Sharp), x1, x2, base, BarHeight*chance, draw.Black)
}

// DrawFaint draws a bar of somebody who is faintly soft from x1 to x2.
func DrawFaint(g *draw.Group, x1, x2, base float64) {
	bar(g.Group(Sharp), x1, x2, base, FaintHeight, draw.Soft)
}

// DrawChance draws the bar of a chance: a frame of full height, black as high as the
// chance.
func DrawChance(g *draw.Group, x1, x2, base, chance float64) {
	sub := g.Group(Chance)
	bar(sub, x1, x2, base, BarHeight*chance, draw.Black)
	sub.Add(draw.Rect{Box: draw.Box{X: x1, Y: base - BarHeight, W: x2 - x1, H: BarHeight}, Stroke: draw.Solid(draw.Black, draw.FineWidth)})
}

// DrawNoChance draws the bar of somebody who is sharp by a pull whose chance nobody knows.
func DrawNoChance(g *draw.Group, x1, x2, base float64) {
	sub := g.Group(NoChance)
	bar(sub, x1, x2, base, BarHeight, draw.Black)
	sub.Line(x1, base-BarHeight-0.4, x2, base-BarHeight-0.4, draw.Assumed(draw.Black))
}

func bar(g *draw.Group, x1, x2, base, height float64, ink draw.Ink) {
	g.Add(draw.Rect{Box: draw.Box{X: x1, Y: base - height, W: x2 - x1, H: height}, Fill: ink})
}

// HatchPitch is the distance between the lines of the hatch of a zone, and HatchLeast the
// shortest of them, in millimetres.
const (
	HatchPitch = 1.6
	HatchLeast = 1.5
)

// Zone adds the tint and the hatch of a sharp zone with that outline.
func Zone(g *draw.Group, outline []draw.Point) {
	g.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.Zone},
		draw.Path{Runs: draw.Hatch(outline, HatchPitch, HatchLeast), Stroke: draw.Solid(draw.Blue, draw.HatchWidth)})
}

func legendFocus(g *draw.Group, x, y float64) {
	sub := g.Group(Focus)
	Zone(sub, []draw.Point{pt(x, y-1.6), pt(x+8, y-1.6), pt(x+8, y+1.6), pt(x, y+1.6)})
	sub.Line(x, y, x+8, y, draw.Solid(draw.Black, draw.FocusWidth))
}

func legendSubject(g *draw.Group, x, y float64) {
	sub := g.Group(Subject)
	sub.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 1, W: 7, H: 2}, Fill: draw.Body})
	sub.Line(x, y, x+7, y, draw.Solid(draw.Grey, draw.SubjectWidth))
}

func legendSharp(g *draw.Group, x, y float64) {
	sub := g.Group(Sharp)
	base := y + BarHeight/2
	bar(sub, x, x+4.5, base, BarHeight, draw.Black)
	bar(sub, x+4.5, x+7, base, FaintHeight, draw.Soft)
	sub.Line(x+7, base, x+11, base, draw.Solid(draw.Soft, draw.DashWidth))
}
