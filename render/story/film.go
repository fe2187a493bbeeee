// The figures of the whole film.

package story

import (
	"strconv"
	"strings"

	"pullscore/interp/story"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The sizes of the last band, in millimetres.
const (
	filmHigh     = 36.0
	filmBins     = 78.0 // how wide the lengths are
	filmBinsHigh = 14.0
	holderFrom   = 168.0 // where the bars begin
	holderName   = 28.0
	holderWidth  = 34.0 // of the longest bar
	holderMost   = 6
	holderPitch  = 4.0
	filmText     = 67.0 // from the right edge
)

// whole draws the last band.
func (p *pages) whole() {
	g, y := p.Take(filmHigh, "film")
	g.Add(draw.NewText(sheet.Margin, y+5, "Whole film", sheet.FontHeading, draw.Black))
	p.drawLengths(g.Group("lengths"), y)
	p.drawHolders(g.Group("holders"), y)
	p.drawCauses(g.Group("causes"), y)
}

// drawLengths draws how many stays there are of each length, with the numbers.
func (p *pages) drawLengths(g *draw.Group, y float64) {
	bins := p.film.Film.Bins
	box := draw.Box{X: timeFrom, Y: y + 10, W: filmBins, H: filmBinsHigh}
	g.Add(draw.NewText(timeFrom, y+5, "stays, by length", sheet.FontBody, draw.Grey))
	drawBins(g, bins, box)
	each, most := box.W/float64(len(bins)), 1
	for _, n := range bins {
		most = max(most, n)
	}
	for i, n := range bins {
		x := box.X + each*(float64(i)+0.5)
		high := box.H * float64(n) / float64(most)
		g.Add(draw.NewText(x, box.Bottom()-high-0.8, strconv.Itoa(n), sheet.FontSmall, draw.Black).Aligned(draw.Middle))
	}
	for i := range story.Edges {
		g.Add(draw.NewText(box.X+each*float64(i+1), box.Bottom()+3.4, story.Edge(i, in), sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
	}
	g.Add(draw.NewText(box.Right(), box.Bottom()+3.4, "s", sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
	g.Add(draw.NewText(box.X, box.Bottom()+7.4, story.HalfUnder(p.film.Film.Median, in)+", longest "+in.Number(float64(p.film.Film.Longest), 1)+" s", sheet.FontSmall, draw.Grey))
}

// drawHolders draws who holds the focus for how much of the stays.
func (p *pages) drawHolders(g *draw.Group, y float64) {
	list := fewest(p.film.Film.People())
	g.Add(draw.NewText(holderFrom, y+5, "who holds it", sheet.FontBody, draw.Grey))
	most := 0.0
	for _, h := range list {
		most = max(most, float64(h.Share))
	}
	for i, h := range list {
		shade := draw.Rect{Fill: draw.Black}
		if !h.Speaks {
			shade = draw.Rect{Fill: draw.Paper, Stroke: draw.Solid(draw.Black, draw.DashWidth)}
		}
		base := y + 10 + holderPitch*float64(i)
		wide := holderWidth * float64(h.Share) / most
		g.Add(draw.NewText(holderFrom-1.6, base, h.Name, sheet.FontNote, draw.Black).Aligned(draw.End).Shortened(holderName),
			draw.Rect{Box: draw.Box{X: holderFrom, Y: base - 2.4, W: wide, H: 2.6}.Grow(-shade.Stroke.Width / 2), Fill: shade.Fill, Stroke: shade.Stroke},
			draw.NewText(holderFrom+wide+1.2, base, in.Share(float64(h.Share), 0), sheet.FontNote, draw.Grey))
	}
}

// fewest returns the first holders, all others who speak together, and those who never do.
func fewest(list []story.Holder) []story.Holder {
	if len(list) <= holderMost {
		return list
	}
	last := len(list)
	if !list[last-1].Speaks {
		last--
	}
	most := holderMost - 1 - (len(list) - last)
	short := append([]story.Holder{}, list[:most]...)
	rest := story.Holder{Name: others, Speaks: true}
	for _, h := range list[most:last] {
		rest.Share += h.Share
		rest.Held += h.Held
	}
	return append(append(short, rest), list[last:]...)
}

// drawCauses writes how long the racks take, where they go, and what they hang on.
func (p *pages) drawCauses(g *draw.Group, y float64) {
	f := &p.film.Film
	x := p.Paper.W - filmText
	g.Add(draw.NewText(x, y+5, "racks", sheet.FontBody, draw.Grey))
	sentences := []string{"none"}
	if f.Racks > 0 {
		sentences = []string{story.HalfUnder(f.RackMid, in) + ", longest " + in.Number(float64(f.RackMax), 1) + " s", f.Ways(), f.Causes(in)}
	}
	if f.Own.Known() {
		sentences = append(sentences, "own lines sharp "+in.Share(float64(f.Own), 0))
	}
	base := y + 10
	for _, s := range sentences {
		for _, line := range sheet.FontNote.Wrap(s, filmText-sheet.Margin) {
			g.Add(draw.NewText(x, base, line, sheet.FontNote, draw.Black))
			base += 3.8
		}
	}
}

// left names the plans that are left out.
func (p *pages) left() {
	if len(p.film.LeftOut) == 0 {
		return
	}
	var names []string
	for _, l := range p.film.LeftOut {
		name := l.Title
		if name == "" {
			name = l.File
		}
		names = append(names, name)
	}
	for _, line := range sheet.FontBody.Wrap("Left out, because of errors: "+strings.Join(names, "; "), p.Paper.W-2*sheet.Margin) {
		g, y := p.Take(4.4, "left-out")
		g.Add(draw.NewText(sheet.Margin, y+3.4, line, sheet.FontBody, draw.Warning))
	}
}
