// The signs of a difference: how the two states are drawn, where a move lands,
// where it landed, and what became of it.

package difference

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// How the two states are drawn: strokes of the focus, and of what else was.
var (
	beforeFocus = sheet.Dashed(draw.Grey, sheet.Medium, 1.5, 1)
	afterFocus  = sheet.Solid(draw.Blue, sheet.Heavy)
	beforeHand  = sheet.Dashed(draw.Grey, sheet.Medium, 1.5, 1)
	afterHand   = sheet.Solid(draw.Black, sheet.Heavy)
	beforeThin  = sheet.Dashed(draw.Grey, sheet.Thin, 0.9, 0.7)
)

// accent is how wide a line is where it is not what it was.
const accent = 1.0

// landing draws the disc where a move lands: hollow before, full after.
func landing(g *draw.Group, at draw.Point, side int) {
	disc := draw.Disc{Centre: at, Radius: 0.95, Fill: draw.Black, Stroke: sheet.Solid(draw.Paper, sheet.Thin)}
	if side == before {
		disc.Fill, disc.Stroke = draw.Paper, sheet.Solid(draw.Black, sheet.Thin)
	}
	g.Add(disc)
}

// fate draws the sign of a pull that is gone, a cross, or that is new, a plus.
func fate(g *draw.Group, x, y float64, side int) {
	const arm = 1.0
	stroke := sheet.Solid(draw.Black, 0.4)
	if side == after {
		g.Line(x-arm, y, x+arm, y, stroke)
		g.Line(x, y-arm, x, y+arm, stroke)
		return
	}
	g.Line(x-arm*0.8, y-arm*0.8, x+arm*0.8, y+arm*0.8, stroke)
	g.Line(x-arm*0.8, y+arm*0.8, x+arm*0.8, y-arm*0.8, stroke)
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
	g.Add(draw.Path{Runs: [][]draw.Point{sheet.Simplify(run)}, Stroke: sheet.Solid(draw.Black, sheet.Thin)},
		draw.Path{Runs: [][]draw.Point{{tip, {X: foot.X - wide*uy, Y: foot.Y + wide*ux}, {X: foot.X + wide*uy, Y: foot.Y - wide*ux}}}, Closed: true, Fill: draw.Black})
	return append(run, tip)
}
