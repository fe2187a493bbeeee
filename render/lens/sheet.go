// The sheet of a lens: what it needs to know, and how its pages are laid out.

package lens

import (
	"fmt"

	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A Lens is what the sheet needs to know of a lens. Lengths are in metres.
type Lens struct {
	Name         string
	Kit          string    // the kit that has it; may be empty
	Focal        string    // in words: "75 mm", or "200 mm of 70 to 200 mm"
	Stop         string    // for which the distances are enough: "f/2.8"
	Criterion    float64   // the largest disc on the sensor that looks sharp
	Distances    []float64 // from the sensor: the closest first, infinity last
	InfinityFrom float64   // how far away a thing must be to stand for infinity
	Imperial     bool
}

const (
	gapBelow  = 3.0   // between blocks of a page
	tableWide = 112.0 // the table's width
	columnGap = 9.0   // between the table and the words beside it
	barGap    = 2.5   // between the table and the check bar
)

// Sheet draws the two pages of a lens: the tape with the table, and the target.
func Sheet(l Lens, opt sheet.Options) []*draw.Page {
	h := sheet.NewHandoutOf(l.heading(), opt, "map of the ring", l.describe())
	h.Scale = sheet.TrueScale
	putTape(h)
	h.Y += gapBelow
	g, top := h.Take(h.Left(), "record")
	l.drawTable(g.Group("table"), sheet.Margin, top, h.Paper.H-sheet.HandoutBottom-barGap-top)
	words := column{g: g.Group("words"), x: sheet.Margin + tableWide + columnGap, y: top}
	words.width = h.Width() - tableWide - columnGap
	l.writeRecord(&words)
	h.Turn()
	l.putTarget(h)
	return h.Pages()
}

// heading is the head of the pages.
func (l Lens) heading() sheet.Heading {
	line := fmt.Sprintf("%s, sharp to %s: these distances are enough at %s", l.Focal, sheet.Figures.Disc(l.Criterion), l.Stop)
	if l.Kit != "" {
		line = l.Kit + " · " + line
	}
	return sheet.Heading{Name: l.Name, Title: "map the focus ring", Line: line}
}

func (l Lens) describe() string {
	return fmt.Sprintf("A paper tape to wrap round the focus ring of lens %s, a table for %s, and a star with a ruler to focus on.",
		l.Name, units.Count(len(l.Distances), "distance"))
}

// typed is the style of numbers that people type into a plan.
func (l Lens) typed() units.Style {
	s := units.Style{}
	if l.Imperial {
		s.System = units.Imperial
	}
	return s
}

// figures is the style of numbers on the sheet.
func (l Lens) figures() units.Style { return units.ForTable(l.Imperial) }

// A column is words down a part of the page.
type column struct {
	g           *draw.Group
	x, y, width float64
}

// pitch is from one line of a font to the next.
func pitch(f draw.Font) float64 { return 1.3 * f.Size * draw.MM }

// say writes sentences, wrapped to the column and moved right by indent.
func (c *column) say(text string, indent float64, f draw.Font, ink draw.Ink) {
	for _, line := range f.Wrap(text, c.width-indent) {
		c.g.Add(draw.NewText(c.x+indent, c.y+0.8*f.Size*draw.MM, line, f, ink))
		c.y += pitch(f)
	}
}

// steps writes numbered sentences.
func (c *column) steps(list []string, f draw.Font) {
	for i, step := range list {
		c.g.Add(draw.NewText(c.x, c.y+0.8*f.Size*draw.MM, fmt.Sprint(i+1), sheet.FontStrong, draw.Black))
		c.say(step, 4, f, draw.Black)
		c.y += 0.8
	}
}
