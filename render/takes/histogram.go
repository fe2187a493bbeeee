// The errors of takes that have all much the same travel, counted in bins.

package takes

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A histogram lies on its side: errors go up as in the plot above it.
type histogram struct {
	*takesPage
	*takesPlot
}

// A bin is how many takes landed between two errors, by what is known of them.
type bin struct {
	from, to               float64
	sharp, notSaid, missed int
}

func (b *bin) all() int { return b.sharp + b.notSaid + b.missed }

// The bins: a quarter of the window each, unless that is too low to be seen.
const (
	binsInWindow = 4
	leastBin     = 0.9 // millimetres
	binsAtAll    = 24  // where no window is known
)

// step returns how high a bin is, in degrees.
func (h *histogram) step() float64 {
	quarter := h.window.width() / binsInWindow
	if quarter <= 0 {
		return niceStep(2*h.reach, binsAtAll)
	}
	millimetres := quarter / (2 * h.reach) * h.box.H
	return quarter * max(1, math.Ceil(leastBin/millimetres))
}

// bins counts the takes, from the lowest error up. One edge of a bin is an end of the
// window, or the mark if no window is known. Takes beyond the scale are in the first and
// the last bin.
func (h *histogram) bins() []bin {
	step, edge := h.step(), 0.0
	switch {
	case h.window.width() <= 0:
	case math.IsInf(h.window.from, 0):
		edge = h.window.to
	default:
		edge = h.window.from
	}
	first := math.Floor((-h.reach - edge) / step)
	n := int(math.Ceil((h.reach-edge)/step-1e-9) - first)
	list := make([]bin, max(n, 1))
	for i := range list {
		list[i].from = max(edge+(first+float64(i))*step, -h.reach)
		list[i].to = min(edge+(first+float64(i)+1)*step, h.reach)
	}
	for _, d := range h.dots {
		at := math.Floor((d.Error-edge)/step+1e-9) - first
		b := &list[int(min(max(at, 0), float64(len(list)-1)))]
		switch d.Hit {
		case takes.Sharp:
			b.sharp++
		case takes.Missed:
			b.missed++
		default:
			b.notSaid++
		}
	}
	return list
}

func (h *histogram) draw(g *draw.Group) {
	list := h.bins()
	most := 1
	for i := range list {
		most = max(most, list[i].all())
	}
	each := h.box.W / (1.05 * float64(most))
	title := "Errors in bins of " + sheet.Figures.AngleTo(h.step(), 2) + ": hatched sharp, grey missed"
	if slices.ContainsFunc(list, func(b bin) bool { return b.notSaid > 0 }) {
		title += ", white not said"
	}
	g.Add(draw.NewText(h.box.X, h.box.Y-2.2, title, sheet.FontHeading, draw.Black))
	h.drawErrors(g.Group("scale"))
	h.drawCounts(g.Group("scale"), each, most)
	bars := g.Group("bars")
	for i := range list {
		h.drawBin(bars, &list[i], each)
	}
	h.window.draw(g, h.takesPlot)
}

// drawCounts draws the scale of counts under the bars.
func (h *histogram) drawCounts(g *draw.Group, each float64, most int) {
	step := max(int(niceStep(float64(most), 8)), 1)
	for n := 0; n <= most; n += step {
		x := h.box.X + each*float64(n)
		g.Line(x, h.box.Bottom(), x, h.box.Bottom()+1.4, draw.Solid(draw.Black, draw.FineWidth))
		g.Add(draw.NewText(x, h.box.Bottom()+4.6, fmt.Sprint(n), sheet.FontSmall, draw.Black).Aligned(draw.Middle))
	}
	g.Add(draw.NewText(h.box.Right(), h.box.Bottom()+8.6, "takes", sheet.FontSmall, draw.Black).Aligned(draw.End))
}

// drawBin draws a bar: hits hatched, then what nobody says, then misses.
func (h *histogram) drawBin(g *draw.Group, b *bin, each float64) {
	top, bottom, x := h.atY(b.to), h.atY(b.from), h.box.X
	frame := draw.Solid(draw.Black, draw.FineWidth)
	for i, n := range []int{b.sharp, b.notSaid, b.missed} {
		if n == 0 {
			continue
		}
		box := draw.Box{X: x, Y: top, W: each * float64(n), H: bottom - top}
		x = box.Right()
		switch i {
		case 0:
			corners := []draw.Point{{X: box.X, Y: top}, {X: x, Y: top}, {X: x, Y: bottom}, {X: box.X, Y: bottom}}
			g.Add(draw.Rect{Box: box, Fill: draw.Paper, Stroke: frame},
				draw.Path{Runs: draw.Hatch(corners, 1, 0.3), Stroke: draw.Solid(draw.Black, draw.HatchWidth)})
		case 1:
			g.Add(draw.Rect{Box: box, Fill: draw.Paper, Stroke: frame})
		default:
			g.Add(draw.Rect{Box: box, Fill: draw.Body, Stroke: frame})
		}
	}
}
