// Signs of takes, and of the state before a change.

package signs

import "pullscore/render/draw"

func resultSigns() []Sign {
	return []Sign{
		{Hit, "sharp", "sharp", 2, func(g *draw.Group, x, y float64) { DrawHit(g, x+1, y) }},
		{Miss, "missed", "missed", 2, func(g *draw.Group, x, y float64) { DrawMiss(g, x+1, y) }},
		{NotSaid, "sharp or not: not said", "not said", 2, func(g *draw.Group, x, y float64) { DrawNotSaid(g, x+1, y) }},
		{Before, "before the change", "before", 8, stroked(Before, 8, draw.Solid(draw.Grey, draw.DashWidth))},
		{CutLine, "cut here", "cut here", 8, stroked(CutLine, 8, draw.CutHere(draw.Black))},
	}
}

// DrawHit draws a take that was sharp: a disc with its middle at (x, y).
func DrawHit(g *draw.Group, x, y float64) {
	g.Group(Hit).Add(draw.Disc{Centre: pt(x, y), Radius: 0.8, Fill: draw.Black})
}

// DrawMiss draws a take that was not sharp: a cross with its middle at (x, y).
func DrawMiss(g *draw.Group, x, y float64) {
	sub := g.Group(Miss)
	const half = 0.9
	sub.Line(x-half, y-half, x+half, y+half, draw.Solid(draw.Black, draw.WindowWidth))
	sub.Line(x-half, y+half, x+half, y-half, draw.Solid(draw.Black, draw.WindowWidth))
}

// DrawNotSaid draws a take of which nobody says whether it was sharp: a circle with its
// middle at (x, y).
func DrawNotSaid(g *draw.Group, x, y float64) {
	g.Group(NotSaid).Add(draw.Disc{Centre: pt(x, y), Radius: 0.8, Fill: draw.Paper, Stroke: draw.Solid(draw.Black, draw.RulerWidth)})
}
