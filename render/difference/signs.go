// The signs of a difference: how the two states are drawn, where a move lands, and where
// it landed.

package difference

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// was is the stroke of whatever was before; what is now is drawn as in a score, over it.
var was = draw.Solid(draw.Grey, draw.DashWidth)

// shiftWidth is the width of the arrow from what was to what is.
const shiftWidth = draw.FineWidth

// landing draws the disc where a move lands: hollow before, full after.
func landing(g *draw.Group, at draw.Point, side int) {
	if side == before {
		g.Group(signs.Before).Add(draw.Disc{Centre: at, Radius: 0.95, Fill: draw.Paper, Stroke: was})
		return
	}
	g.Add(draw.Disc{Centre: at, Radius: 0.95, Fill: draw.Black, Stroke: draw.Solid(draw.Paper, draw.FineWidth)})
}

// shift joins an old landing to its new one by an arrow, which bulges by so
// much in the middle: downwards, or upwards below 0. It returns its run.
func shift(g *draw.Group, from, to draw.Point, bulge float64) []draw.Point {
	const disc, head, wide, steps = 1.2, 1.3, 0.55, 48
	if math.Hypot(to.X-from.X, to.Y-from.Y) < 2*disc+head {
		return nil
	}
	var run []draw.Point // of the arc, between the discs
	for i := range steps + 1 {
		u := float64(i) / steps
		p := draw.Point{X: from.X + u*(to.X-from.X), Y: from.Y + u*(to.Y-from.Y) + 4*bulge*u*(1-u)}
		if math.Hypot(p.X-from.X, p.Y-from.Y) >= disc && math.Hypot(p.X-to.X, p.Y-to.Y) >= disc+head {
			run = append(run, p)
		}
	}
	if len(run) == 0 {
		return nil
	}
	foot := run[len(run)-1]
	d := math.Hypot(to.X-foot.X, to.Y-foot.Y)
	ux, uy := (to.X-foot.X)/d, (to.Y-foot.Y)/d
	tip := draw.Point{X: to.X - disc*ux, Y: to.Y - disc*uy}
	g.Add(draw.Path{Runs: [][]draw.Point{sheet.Simplify(run)}, Stroke: draw.Solid(draw.Black, shiftWidth)},
		draw.Path{Runs: [][]draw.Point{{tip, {X: foot.X - wide*uy, Y: foot.Y + wide*ux}, {X: foot.X + wide*uy, Y: foot.Y - wide*ux}}}, Closed: true, Fill: draw.Black})
	return append(run, tip)
}
