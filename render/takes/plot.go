// A plot of the takes drawing: errors over one scale, with the band that the
// fit expects.

package takes

import (
	"math"

	"pullscore/interp/takes"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A takesPlot is one of the two plots.
type takesPlot struct {
	page              *takesPage
	name, title, unit string
	box               draw.Box
	from, to          float64 // of the scale across

	x      func(*takes.Dot) float64
	spread func(x, other float64) float64 // of landings there
	others [3]float64                     // what the other scale has at its tenths and in its middle
}

// scale sets the ends of the scale across: round numbers about the takes.
func (p *takesPlot) scale() {
	p.from, p.to = math.Inf(1), math.Inf(-1)
	for i := range p.page.dots {
		v := p.x(&p.page.dots[i])
		p.from, p.to = min(p.from, v), max(p.to, v)
	}
	if p.from > p.to {
		p.from, p.to = 0, 1
	}
	room := max(0.06*(p.to-p.from), 0.02*p.to, 1e-3)
	p.from, p.to = max(p.from-room, 0), p.to+room
}

func (p *takesPlot) atX(v float64) float64 {
	return p.box.X + (v-p.from)/(p.to-p.from)*p.box.W
}

// atY returns where an error stands, at the edge where it is beyond the scale:
// past the mark is up.
func (p *takesPlot) atY(e float64) float64 {
	e = min(max(e, -p.page.reach), p.page.reach)
	return p.box.Y + p.box.H/2*(1-e/p.page.reach)
}

func (p *takesPlot) draw(g *draw.Group) {
	g.Add(draw.NewText(p.box.X, p.box.Y-2.2, p.title, sheet.FontHeading, draw.Black))
	p.drawBand(g.Group("band"))
	p.drawScales(g.Group("scale"))
	p.page.window.draw(g, p)
	dots := g.Group("takes")
	for i := range p.page.dots {
		d := &p.page.dots[i]
		drawTake(dots, p.atX(p.x(d)), p.atY(d.Error), d.Hit)
	}
}

// bandSteps is how many chords an edge of the band has.
const bandSteps = 120

// edge returns an edge of the band, side 1 above and -1 below.
func (p *takesPlot) edge(other, side float64) []draw.Point {
	run := make([]draw.Point, 0, bandSteps+1)
	bias := p.page.report.Fit.Bias.Value
	for i := range bandSteps + 1 {
		v := p.from + (p.to-p.from)*float64(i)/bandSteps
		run = append(run, draw.Point{X: p.atX(v), Y: p.atY(bias + side*spread90*p.spread(v, other))})
	}
	return run
}

func (p *takesPlot) drawBand(g *draw.Group) {
	above, below := p.edge(p.others[1], 1), p.edge(p.others[1], -1)
	outline := append([]draw.Point{}, above...)
	for i := len(below) - 1; i >= 0; i-- {
		outline = append(outline, below[i])
	}
	g.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.Slab})
	g.Add(draw.Path{Runs: [][]draw.Point{above, below}, Stroke: draw.Solid(draw.Soft, draw.RulerWidth)})
	for _, other := range []float64{p.others[0], p.others[2]} {
		for _, side := range []float64{1, -1} {
			if run := p.inside(p.edge(other, side)); other != p.others[1] && len(run) > 1 {
				g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Soft, draw.FineWidth)})
			}
		}
	}
	y := p.atY(p.page.report.Fit.Bias.Value)
	g.Line(p.box.X, y, p.box.Right(), y, draw.Solid(draw.Grey, draw.DashWidth))
}

// inside returns the part of a run that is not held at the edge of the plot.
// Spread grows one way along a scale, so it is one part.
func (p *takesPlot) inside(run []draw.Point) (part []draw.Point) {
	for _, at := range run {
		if at.Y > p.box.Y+1e-6 && at.Y < p.box.Bottom()-1e-6 {
			part = append(part, at)
		}
	}
	return part
}

// drawScales draws the frame, the mark in its middle, and both scales.
func (p *takesPlot) drawScales(g *draw.Group) {
	p.drawErrors(g)
	step := niceStep(p.to-p.from, 8)
	for v := math.Ceil(p.from/step-1e-9) * step; v <= p.to; v += step {
		x := p.atX(v)
		g.Line(x, p.box.Bottom(), x, p.box.Bottom()+1.4, draw.Solid(draw.Black, draw.FineWidth))
		g.Add(draw.NewText(x, p.box.Bottom()+4.6, sheet.Figures.Number(v, decimals(step))+p.gap()+p.unit, sheet.FontSmall, draw.Black).Aligned(draw.Middle))
	}
}

// drawErrors draws the frame, and the scale of errors at its left with the mark in its
// middle.
func (p *takesPlot) drawErrors(g *draw.Group) {
	g.Add(draw.Rect{Box: p.box, Stroke: draw.Solid(draw.Grey, draw.FineWidth)})
	reach := p.page.reach
	step := niceStep(2*reach, 8)
	for e := -math.Floor(reach/step) * step; e <= reach*(1+1e-9); e += step {
		y := p.atY(e)
		stroke, text := draw.Solid(draw.Guide, draw.GuideWidth), signed(e, step)
		if math.Abs(e) < step/2 {
			stroke, text = draw.Solid(draw.Black, draw.RulerWidth), "mark"
		}
		g.Line(p.box.X, y, p.box.Right(), y, stroke)
		g.Add(draw.NewText(p.box.X-1.6, y+sheet.FontSmall.Middle(), text, sheet.FontSmall, draw.Black).Aligned(draw.End))
	}
}

// gap stands before the unit: none before a degree sign.
func (p *takesPlot) gap() string {
	if p.unit == "°" {
		return ""
	}
	return " "
}

// signed writes an error on its scale.
func signed(e, step float64) string {
	text := sheet.Figures.AngleTo(e, decimals(step))
	if e > 0 {
		return "+" + text
	}
	return text
}

// decimals returns how many decimals tell the marks of a scale apart.
func decimals(step float64) int {
	return max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
}

// drawTake draws one take: a disc for a hit, a cross for a miss, a circle where
// that is not known. Their shapes tell them apart without colour.
func drawTake(g *draw.Group, x, y float64, hit takes.Hit) {
	switch hit {
	case takes.Sharp:
		signs.DrawHit(g, x, y)
	case takes.Missed:
		signs.DrawMiss(g, x, y)
	default:
		signs.DrawNotSaid(g, x, y)
	}
}
