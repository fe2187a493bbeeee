// The shapes that several signs share.

package signs

import "pullscore/render/draw"

// The type of the signs.
var (
	fontNumber = draw.Font{Size: 7.5, Bold: true}
	fontLetter = draw.Font{Size: 8, Bold: true}
	fontStart  = draw.Font{Size: 8.5, Bold: true}
	fontValue  = draw.Font{Size: 7}
)

// filled adds a closed shape through the points.
func filled(g *draw.Group, ink draw.Ink, run ...draw.Point) {
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: ink})
}

// pt returns the point (x, y).
func pt(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }

// upright adds a text whose capitals have their middle at y.
func upright(g *draw.Group, x, y float64, text string, f draw.Font, ink draw.Ink, a draw.Align) {
	g.Add(draw.NewText(x, y+f.Middle(), text, f, ink).Aligned(a))
}

// stroked returns the legend's drawing of a line with that stroke, in a group of that
// name.
func stroked(name string, width float64, s draw.Stroke) func(*draw.Group, float64, float64) {
	return func(g *draw.Group, x, y float64) { g.Group(name).Line(x, y, x+width, y, s) }
}

// ended adds a line from a to b with short lines across its ends.
func ended(g *draw.Group, a, b draw.Point, half float64, s draw.Stroke) {
	g.Line(a.X, a.Y, b.X, b.Y, s)
	across := unit(a, b)
	for _, p := range []draw.Point{a, b} {
		g.Line(p.X-half*across.Y, p.Y+half*across.X, p.X+half*across.Y, p.Y-half*across.X, s)
	}
}
