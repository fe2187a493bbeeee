// Bars: how far somebody may go from the mark and still be sharp, and from where on it
// is seen that they are not, drawn 1:5.

package cards

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	barScale = 5.0  // a millimetre on the paper is five in the room
	barMost  = 34.0 // the longest bar to one side, in millimetres on the paper
	sharpTop = 6.8  // the height of what is sharp
	faintTop = 3.4  // the height of what is faint
	tornDeep = 1.0
	tornHigh = 1.7
)

// onPaper returns a length in metres as millimetres on the paper.
func onPaper(metres float64) float64 { return 1000 * metres / barScale }

// drawBars draws what is sharp and what is faint on both sides of a mark whose line is at
// x, standing on base.
func drawBars(g *draw.Group, m *mark, x, base float64) {
	for _, side := range []struct{ sign, soft, seen float64 }{
		{-1, float64(m.miss.SoftForward), float64(m.miss.SeenForward)},
		{1, float64(m.miss.SoftBack), float64(m.miss.SeenBack)},
	} {
		sub := g.Group(signs.Sharp)
		soft, seen := onPaper(side.soft), onPaper(max(side.soft, side.seen))
		sub.Title = "sharp " + sheet.Figures.Gap(side.soft) + ", seen soft from " + sheet.Figures.Gap(side.seen)
		level(sub, x, 0, soft, base, sharpTop, side.sign, draw.Black)
		level(sub, x, soft, seen, base, faintTop, side.sign, draw.Soft)
		if seen < barMost {
			sub.Line(x+side.sign*seen, base-draw.DashWidth/2, x+side.sign*barMost, base-draw.DashWidth/2, draw.Solid(draw.Soft, draw.DashWidth))
		} else {
			goesOn(g.Group("goes-on"), x+side.sign*(barMost+0.8), base-sharpTop/2, side.sign)
		}
	}
	mark := g.Group("mark")
	mark.Add(draw.Rect{Box: draw.Box{X: x - 0.45, Y: base - sharpTop - 2, W: 0.9, H: sharpTop + 4}, Fill: draw.Paper})
	mark.Line(x, base-sharpTop-2, x, base+2, draw.Solid(draw.Black, draw.StopWidth))
}

// level fills one level of sharpness, from one distance off the mark to another, both in
// millimetres on the paper. One that goes on beyond the longest bar ends in a torn edge.
func level(g *draw.Group, x, from, to, base, high, sign float64, ink draw.Ink) {
	if from >= to || from >= barMost {
		return
	}
	if to <= barMost {
		left := x + min(sign*from, sign*to)
		g.Add(draw.Rect{Box: draw.Box{X: left, Y: base - high, W: to - from, H: high}, Fill: ink})
		return
	}
	near := x + sign*from
	run := []draw.Point{{X: near, Y: base}, {X: near, Y: base - high}}
	teeth := int(math.Round(high / tornHigh))
	for i := range 2*teeth + 1 {
		off := barMost - tornDeep*float64(i%2)
		run = append(run, draw.Point{X: x + sign*max(off, from), Y: base - high + high*float64(i)/float64(2*teeth)})
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: ink})
}

// goesOn draws an arrowhead that says that the bar goes on.
func goesOn(g *draw.Group, x, y, sign float64) {
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y - 1.3}, {X: x + sign*1.6, Y: y}, {X: x, Y: y + 1.3}}}, Closed: true, Fill: draw.Black})
}

// drawDepth draws how deep somebody is, to the scale of the bars, around the mark at x.
// What goes on beyond the longest bar has no ends.
func drawDepth(g *draw.Group, m *mark, in func(float64) string, x, y float64) {
	if m.deep <= 0 {
		return
	}
	sub := g.Group("deep")
	half := min(onPaper(m.deep/2), barMost)
	sub.Line(x-half, y, x+half, y, draw.Solid(draw.Black, draw.MarkWidth))
	if onPaper(m.deep/2) > barMost {
		goesOn(sub, x-barMost-0.8, y, -1)
		goesOn(sub, x+barMost+0.8, y, 1)
	}
	sub.Add(draw.NewText(x, y+3.2, "deep "+in(m.deep), sheet.FontNote, draw.Grey).Aligned(draw.Middle))
}

// drawRuler draws a ruler of 30 cm to the scale of the bars with its middle at x, or of 12
// inches.
func drawRuler(g *draw.Group, x, y float64, imperial bool) {
	step, each, half, unit := 0.01, 5, 15, "cm"
	if imperial {
		step, each, half, unit = 0.0254, 2, 6, "in"
	}
	ink := draw.Solid(draw.Black, draw.RulerWidth)
	g.Line(x-onPaper(step*float64(half)), y, x+onPaper(step*float64(half)), y, ink)
	for i := -half; i <= half; i++ {
		at, tick := x+onPaper(step*float64(i)), 1.0
		if i%each == 0 {
			tick = 2
			g.Add(draw.NewText(at, y+5, sheet.Figures.Number(math.Abs(float64(i)), 0), sheet.FontNote, draw.Grey).Aligned(draw.Middle))
		}
		g.Line(at, y, at, y+tick, ink)
	}
	g.Add(draw.NewText(x+onPaper(step*float64(half))+4, y+5, unit+", drawn 1:5", sheet.FontNote, draw.Grey))
}
