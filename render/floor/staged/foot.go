// The bars of a metre and of three feet beside the floor, from one zero. They stand upright,
// as at 1:10 they are longer than the table is wide.

package staged

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const threeFeet = 0.9144 // metres

// drawBars draws the bars: of ten metres and thirty feet where the floor is so large that
// one metre is a speck.
func (l *layer) drawBars(g *draw.Group) {
	times := 1.0
	for times*l.perMetre < 4 {
		times *= 10
	}
	x, y := l.box.Right()+4.2, l.box.Bottom()
	pen := draw.Solid(draw.Black, draw.StopWidth)
	bar := func(name string, metres, aside float64, words string) {
		sub := g.Group(name)
		sub.Title = words
		long := metres * l.perMetre
		sub.Line(x, y, x, y-long, pen)
		for _, at := range []float64{0, long} {
			sub.Line(x, y-at, x+aside, y-at, pen)
		}
		base := x - 0.9
		if aside > 0 {
			base = x + 0.7 + 2*sheet.FontSmall.Middle()
		}
		middle := y - math.Max(long, sheet.FontSmall.Room(words))/2
		sub.Add(draw.NewText(base, middle, words, sheet.FontSmall, draw.Black).Aligned(draw.Middle).Turned(-90))
	}
	bar("bar-metre", times, -1.2, sheet.Figures.Number(times, 0)+" m")
	bar("bar-feet", times*threeFeet, 1.2, sheet.Figures.Number(3*times, 0)+" ft")
}
