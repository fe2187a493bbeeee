// The ruler under the floor, in both units.

package floor

import (
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	rulerRoom = 11.0
	rulerGap  = 10.0 // between two figures of the second unit
)

// drawRuler draws the ruler of a sheet: in the plan's units, and below in the others.
func (l *layer) drawRuler(g *draw.Group) {
	y := l.box.Bottom()
	l.drawScale(g, y, l.floor.Style, sheet.FontNote, draw.Black, 17)
	other := units.ForTable(l.floor.Style.System != units.Imperial)
	l.drawScale(g, y+5.4, other, fontValue, draw.Grey, rulerGap+4)
}

// drawScale draws one scale of the ruler, with figures at least so many millimetres apart.
func (l *layer) drawScale(g *draw.Group, y float64, style units.Style, font draw.Font, ink draw.Ink, least float64) {
	zero := l.origin.X
	g.Line(zero, y, l.box.Right(), y, draw.Solid(ink, draw.FineWidth))
	step := tapeStep(style.System == units.Imperial, l.perMetre, least)
	for n := 0; ; n++ {
		x := zero + float64(n)*step*l.perMetre
		text := draw.NewText(x, y+3.7, style.Tape(float64(n)*step), font, ink).Aligned(draw.Middle)
		if n == 0 {
			text = draw.NewText(x, y+3.7, "0", font, ink).Aligned(draw.Middle)
		}
		if x > l.box.Right()+1e-6 || text.Room().Right() > l.box.Right()+6 {
			return
		}
		g.Line(x, y, x, y+1.2, draw.Solid(ink, draw.FineWidth))
		g.Add(text)
	}
}

// tapeStep returns the metres between two figures of a ruler: a round number that leaves
// them so much room.
func tapeStep(imperial bool, perMetre, least float64) float64 {
	if imperial {
		for _, inches := range []float64{0.5, 1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200} {
			if step := inches * plan.Inch; step*perMetre >= least {
				return step
			}
		}
	}
	unit := 0.001
	if imperial {
		unit = 100 * plan.InchesPerFoot * plan.Inch
	}
	for ; ; unit *= 10 {
		for _, n := range []float64{1, 2, 5} {
			if n*unit*perMetre >= least {
				return n * unit
			}
		}
	}
}
