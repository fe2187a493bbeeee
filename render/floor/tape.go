// The tape along the axis: where distances are read.

package floor

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawRuler draws the axis and, under the floor, the tape: in the plan's units,
// and below them in the others.
func (f *floor) drawRuler(g *draw.Group) {
	zero := f.at(0, 0).X
	g.Line(max(zero, f.box.X), f.axis, f.box.Right(), f.axis, sheet.Dashed(draw.Mid, sheet.Thin, 4, 0.9, 0.6, 0.9))
	y := f.box.Bottom()
	g.Line(max(zero, f.box.X), y, f.box.Right(), y, sheet.Solid(draw.Black, sheet.Thin))
	step := f.tapeStep()
	for n := math.Ceil((f.box.X - zero) / f.perMetre / step); ; n++ {
		x := zero + n*step*f.perMetre
		if x > f.box.Right()+1e-6 {
			return
		}
		if n < 0 {
			continue
		}
		g.Line(x, y, x, y+1.5, sheet.Solid(draw.Black, sheet.Thin))
		first, second := sheet.Style(f.shot).Both(n * step)
		if n == 0 {
			first, second = "0", ""
		}
		for i, word := range []string{first, second} {
			text := draw.NewText(x, y+4.2+3*float64(i), word, []draw.Font{sheet.FontNote, sheet.FontSmall}[i], []draw.Ink{draw.Black, draw.Grey}[i]).Aligned(draw.Middle)
			if word != "" && text.Box().Right() <= f.paper.W-sheet.Margin+4 {
				g.Add(text)
			}
		}
	}
}

// tapeStep returns the metres between two figures of the tape: a round number
// of the plan's units that leaves room for them.
func (f *floor) tapeStep() float64 {
	const room = 17
	if f.shot.Imperial {
		for _, inches := range []float64{0.5, 1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200} {
			if step := inches * plan.Inch; step*f.perMetre >= room {
				return step
			}
		}
	}
	unit := 0.001
	if f.shot.Imperial {
		unit = 100 * plan.InchesPerFoot * plan.Inch
	}
	for ; ; unit *= 10 {
		for _, n := range []float64{1, 2, 5} {
			if n*unit*f.perMetre >= room {
				return n * unit
			}
		}
	}
}
