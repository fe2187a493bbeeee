// The calibration: what was said of takes against how many landed, by bands of
// chance.

package takes

import (
	"fmt"

	"pullscore/interp/takes/predicted"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Calibration draws what a log says of the chances of a plan. It is always one
// page.
func Calibration(r *predicted.Report, opt sheet.Options) []*draw.Page {
	c := newCalibration(r, opt.Size())
	p := &draw.Page{Title: draw.Clean(c.name() + ": predicted against landed"), Desc: draw.Clean(c.describe()), W: c.paper.W, H: c.paper.H}
	c.drawHead(p.Root.Group("head"))
	c.drawScales(p.Root.Group("scale"))
	bands := p.Root.Group("bands")
	for i := range r.Bands {
		c.drawBand(bands, &r.Bands[i])
	}
	c.drawWords(p.Root.Group("aside"))
	return []*draw.Page{p}
}

// A calibration is the drawing in the making.
type calibration struct {
	report *predicted.Report
	paper  sheet.Paper
	box    draw.Box // the plot, a square
}

func newCalibration(r *predicted.Report, paper sheet.Paper) *calibration {
	top := sheet.Edge + sheet.HeadHeight + takesOver
	side := min(paper.H-takesKey-takesUnder-top, paper.W-2*sheet.Margin-takesGutter-takesAside)
	return &calibration{report: r, paper: paper, box: draw.Box{X: sheet.Margin + takesGutter, Y: top, W: side, H: side}}
}

func (c *calibration) name() string {
	if c.report.Plan != "" {
		return c.report.Plan
	}
	return "A plan"
}

// at returns where a chance and a rate stand.
func (c *calibration) at(said, rate float64) draw.Point {
	return draw.Point{X: c.box.X + said*c.box.W, Y: c.box.Bottom() - rate*c.box.H}
}

// span says between which chances a band lies.
func span(b *predicted.Band) string {
	return sheet.Figures.Number(100*float64(b.From), 0) + " to " + sheet.Figures.Share(float64(b.To), 0)
}

func (c *calibration) describe() string {
	text := fmt.Sprintf("Of %d takes, what was said of their landing against how many were sharp.", c.report.All.Takes)
	for i := range c.report.Bands {
		b := &c.report.Bands[i]
		text += fmt.Sprintf(" Said %s: landed %d of %d.", span(b), b.Hits, b.Takes)
	}
	return text
}

func (c *calibration) drawHead(g *draw.Group) {
	head := sheet.Heading{Name: draw.Clean(c.name()), Line: fmt.Sprintf("%d takes", c.report.All.Takes)}
	sheet.DrawHeadOf(g, head, c.paper, sheet.Folio{Paper: "predicted against landed", Number: 1, Of: 1})
}

// drawScales draws the frame, both scales in tenths, and the line on which what
// was said came true.
func (c *calibration) drawScales(g *draw.Group) {
	g.Add(draw.Rect{Box: c.box, Stroke: draw.Solid(draw.Grey, draw.FineWidth)})
	for i := range 11 {
		v := float64(i) / 10
		x, y := c.at(v, 0).X, c.at(0, v).Y
		if i > 0 && i < 10 {
			g.Line(x, c.box.Y, x, c.box.Bottom(), draw.Solid(draw.Guide, draw.GuideWidth))
			g.Line(c.box.X, y, c.box.Right(), y, draw.Solid(draw.Guide, draw.GuideWidth))
		}
		if i%2 == 0 {
			text := sheet.Figures.Share(v, 0)
			g.Add(draw.NewText(x, c.box.Bottom()+4.6, text, sheet.FontSmall, draw.Black).Aligned(draw.Middle))
			g.Add(draw.NewText(c.box.X-1.6, y+sheet.FontSmall.Middle(), text, sheet.FontSmall, draw.Black).Aligned(draw.End))
		}
	}
	from, to := c.at(0, 0), c.at(1, 1)
	g.Line(from.X, from.Y, to.X, to.Y, draw.Solid(draw.Black, draw.RulerWidth))
	g.Add(draw.NewText(c.box.X, c.box.Y-2.2, "Landed, of the takes of a band", sheet.FontHeading, draw.Black))
	g.Add(draw.NewText(c.box.Right(), c.box.Bottom()+9.6, "said, on the mean of a band", sheet.FontSmall, draw.Black).Aligned(draw.End))
}

// drawBand draws the takes of a band: a disc at what landed, with its interval.
// A circle tells, without colour, that the interval does not hold what was said.
func (c *calibration) drawBand(g *draw.Group, b *predicted.Band) {
	const r, cap = 1.1, 1.2
	at := c.at(float64(b.Said), float64(b.Rate))
	lo, hi := c.at(float64(b.Said), float64(b.Interval[0])), c.at(float64(b.Said), float64(b.Interval[1]))
	ink, fill := draw.Black, draw.Black
	if !b.Holds() {
		ink, fill = draw.Warning, draw.Paper
	}
	stroke := draw.Solid(ink, draw.WindowWidth)
	g.Line(lo.X, lo.Y, hi.X, hi.Y, stroke)
	for _, end := range []draw.Point{lo, hi} {
		g.Line(end.X-cap, end.Y, end.X+cap, end.Y, stroke)
	}
	g.Add(draw.Disc{Centre: at, Radius: r, Fill: fill, Stroke: stroke})
}

// drawWords writes the bands in words and numbers beside the plot.
func (c *calibration) drawWords(g *draw.Group) {
	x, y := c.box.Right()+8, c.box.Y+2
	room := c.paper.W - sheet.Margin - x
	say := func(f draw.Font, ink draw.Ink, gap float64, text string) {
		for _, line := range f.Wrap(text, room) {
			g.Add(draw.NewText(x, y, line, f, ink))
			y += 1.35 * f.Size * draw.MM
		}
		y += gap
	}
	share := func(v float64) string { return sheet.Figures.Share(v, 0) }
	say(sheet.FontHeading, draw.Black, 2, "By bands of chance")
	if c.report.All.Takes == 0 {
		say(sheet.FontBody, draw.Warning, 2, "No take can be laid beside a chance of this plan.")
	}
	for i := range c.report.Bands {
		b := &c.report.Bands[i]
		ink := draw.Black
		if !b.Holds() {
			ink = draw.Warning
		}
		say(sheet.FontStrong, ink, 0, fmt.Sprintf("said %s, landed %d of %d", span(b), b.Hits, b.Takes))
		say(sheet.FontBody, ink, 1.4, fmt.Sprintf("%s; 90 %% within %s to %s", share(float64(b.Rate)), share(float64(b.Interval[0])), share(float64(b.Interval[1]))))
	}
	y += 2
	say(sheet.FontNote, draw.Grey, 2, "A disc stands on the line where what was said came true. Its bar holds 90 %; a circle tells that the bar does not reach the line.")
	say(sheet.FontNote, draw.Grey, 0, "Each chance is by the hand that could be known before that day.")
}
