package story

import (
	"fmt"
	"strings"

	"pullscore/interp/story"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The places on the paper, in millimetres: the first from the left edge, the columns at
// the right from the right edge.
const (
	top       = 33.5 // of the first band; the ruler stands above it
	foot      = 20.5
	timeFrom  = 58.0
	stationX  = 56.0 // where the names of the stations end
	nameMost  = 24.0 // how wide they are
	sceneMost = 19.0 // how wide what is left of them is
	ownFrom   = 79.0
	waysFrom  = 55.0
	staysFrom = 34.0
	timeAir   = 8.0 // between the time and the columns
)

// in is the style of figures.
var in = sheet.Figures

// Story draws a film; nothing if it has no scenes.
func Story(f *story.Film, opt sheet.Options) []*draw.Page {
	if len(f.Scenes) == 0 {
		return nil
	}
	p := newPages(f, opt.Size())
	for _, sc := range f.Scenes {
		p.scene(sc)
	}
	if len(f.Scenes) > 1 {
		p.whole()
	}
	p.left()
	return p.finished()
}

// Pages are sheets under construction, all to one scale of time.
type pages struct {
	sheet.Stack
	film  *story.Film
	scale float64 // millimetres a second
}

// newPages returns one empty sheet. A second is a millimetre if the longest scene has
// room so, else half a millimetre; what is longer still goes on in a further band.
func newPages(f *story.Film, paper sheet.Paper) *pages {
	p := &pages{Stack: sheet.NewStack(paper, top, foot), film: f, scale: 1}
	for _, sc := range f.Scenes {
		if float64(sc.Duration) > p.timeWidth() {
			p.scale = 0.5
		}
	}
	return p
}

// timeWidth returns how wide the time is at most.
func (p *pages) timeWidth() float64 { return p.Paper.W - ownFrom - timeAir - timeFrom }

// finished returns the sheets, each with its head, its ruler and its legend.
func (p *pages) finished() []*draw.Page {
	title := p.film.Title
	if title == "" {
		title = "Focus"
	}
	head := sheet.Heading{Name: title, Title: "focus story", Line: sheet.Joined([]string{
		units.Count(len(p.film.Scenes), "scene"), story.Length(p.film.Length, in), units.Count(p.film.Film.Racks, "rack"),
	})}
	list := make([]*draw.Page, len(p.Roots))
	for i, root := range p.Roots {
		name := head.Name + ": focus story"
		if len(p.Roots) > 1 {
			name += fmt.Sprintf(", page %d of %d", i+1, len(p.Roots))
		}
		page := &draw.Page{
			Title: draw.Clean(name), W: p.Paper.W, H: p.Paper.H,
			Desc: "Who holds the focus in each scene, how long, and where it goes next: a thick line where the focus stays, a thin one for each rack.",
		}
		page.Root.ID = draw.ID("story", fmt.Sprint(i+1))
		folio := sheet.Folio{Paper: "story", Number: i + 1, Of: len(p.Roots), Scale: fmt.Sprintf("who holds the focus, how long, where next · %s mm/s", in.Number(p.scale, 1))}
		sheet.DrawHeadOf(page.Root.Group("head"), head, p.Paper, folio)
		if len(groupsOf(root, "scene")) > 0 {
			p.drawRuler(page.Root.Group("ruler"))
		}
		page.Root.Add(root.Items...)
		sheet.DrawLegend(&page.Root, p.Paper, "far at the top", "a tick parts two shots")
		list[i] = page
	}
	return list
}

// groupsOf returns the groups of a name that stand directly in another.
func groupsOf(g *draw.Group, name string) (list []*draw.Group) {
	for _, it := range g.Items {
		if sub, ok := it.(*draw.Group); ok && sub.Name == name {
			list = append(list, sub)
		}
	}
	return list
}

// drawRuler draws the ruler of time and the heads of the columns.
func (p *pages) drawRuler(g *draw.Group) {
	const base, line = top - 3.5, top - 1.0
	write := func(x float64, text string) {
		g.Add(draw.NewText(x, base-0.4, text, sheet.FontHeading, draw.Black))
	}
	write(sheet.Margin, "Scene")
	write(p.Paper.W-ownFrom, "own lines")
	write(p.Paper.W-waysFrom, "near / far")
	write(p.Paper.W-staysFrom, "stays")
	ruler := draw.Solid(draw.Black, draw.RulerWidth)
	g.Line(timeFrom, line, timeFrom+p.timeWidth(), line, ruler)
	for t := 0.0; t*p.scale <= p.timeWidth(); t += 30 {
		x := timeFrom + t*p.scale
		g.Line(x, line-1.4, x, line, ruler)
		g.Add(draw.NewText(x, base-0.4, in.Number(t, 0)+" s", sheet.FontBody, draw.Grey).Aligned(draw.Middle))
	}
}

// nameOf returns the number of a scene and its title, from what its title has besides that
// of the film: "scene 12: the ticket window".
func nameOf(rest string) (number, title string) {
	number, title, ok := strings.Cut(rest, ":")
	if !ok {
		return strings.TrimSpace(rest), ""
	}
	return strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(number), "scene ")), strings.TrimSpace(title)
}
