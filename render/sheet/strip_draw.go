package sheet

import "pullscore/render/draw"

// Arrow draws a level arrow whose tip is at x2.
func Arrow(g *draw.Group, x1, x2, y float64) {
	const long, half = 2.0, 0.9
	back := x2 - long
	if x2 < x1 {
		back = x2 + long
	}
	g.Line(x1, y, back, y, Solid(draw.Black, Medium))
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x2, Y: y}, {X: back, Y: y - half}, {X: back, Y: y + half}}}, Closed: true, Fill: draw.Black})
}
