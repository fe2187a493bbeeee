// Handouts: sheets filled from top to bottom with pieces of different heights, such as
// strips to cut out and tape on. Every sheet has a head, that of a shot if it belongs to
// one, and a bar to check the scale of the printer.

package sheet

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A Handout is a stack of sheets under construction.
type Handout struct {
	Shot   *plan.Shot // nil: the sheets belong to no shot
	Paper  Paper
	Scale  string   // of the drawing, for the head: "1:1, print at 100 %"; may be empty
	Legend bool     // the sheets have a legend at the foot
	Notes  []string // for the end of the legend
	kind   string   // the drawing's name
	desc   string
	head   Heading // where there is no shot
	Roots  []*draw.Group
	Y      float64 // the lower end of the filled part of the sheet, millimetres
}

const (
	HandoutTop    = Edge + 17.0           // the top of the contents, millimetres
	HandoutBottom = 13.0                  // the foot with the check bar, millimetres
	LegendBottom  = 22.0                  // the foot with a legend, millimetres
	checkBar      = 50.0                  // millimetres
	checkBlock    = 62.0                  // what the bar and its words take beside a legend, millimetres
	TrueScale     = "1:1, print at 100 %" // of sheets on which a millimetre is one
	printScale    = "Print at 100 %, without fitting to the page."
)

// NewHandout returns a handout with one empty sheet. kind is the name of the drawing in
// the titles, desc its description for people who cannot see it.
func NewHandout(s *plan.Shot, opt Options, kind, desc string) *Handout {
	h := &Handout{Shot: s, Paper: opt.Size(), kind: kind, desc: desc}
	h.Turn()
	return h
}

// NewHandoutOf returns a handout with one empty sheet that belongs to no shot.
func NewHandoutOf(head Heading, opt Options, kind, desc string) *Handout {
	h := NewHandout(nil, opt, kind, desc)
	h.head = head
	return h
}

// Turn starts a new sheet.
func (h *Handout) Turn() {
	h.Roots = append(h.Roots, &draw.Group{})
	h.Y = HandoutTop
}

// Bottom returns the height of the foot, in millimetres.
func (h *Handout) Bottom() float64 {
	if h.Legend {
		return LegendBottom
	}
	return HandoutBottom
}

// Left returns the height that is left on the sheet, in millimetres.
func (h *Handout) Left() float64 { return h.Paper.H - h.Bottom() - h.Y }

// Width returns the width between the margins, in millimetres.
func (h *Handout) Width() float64 { return h.Paper.W - 2*Margin }

// Take reserves a strip of the given height in millimetres across the sheet. If it does
// not fit, Take starts a new sheet. It returns the group to draw in, and the top of the
// strip in millimetres.
func (h *Handout) Take(height float64, name string) (g *draw.Group, top float64) {
	if h.Left() < height && h.Y > HandoutTop {
		h.Turn()
	}
	top = h.Y
	h.Y += height
	return h.Roots[len(h.Roots)-1].Group(name), top
}

const sayPitch = 3.6

// Say writes sentences across the width of the sheet, below the filled part.
func (h *Handout) Say(text string, f draw.Font, ink draw.Ink) {
	for _, line := range f.Wrap(text, h.Width()) {
		g, top := h.Take(sayPitch*f.Size/FontNote.Size, "words")
		g.Add(draw.NewText(Margin, top+0.8*f.Size*draw.MM, line, f, ink))
	}
}

// Pages returns the finished sheets. Each has a head, a bar to check the printer, and the
// legend of its signs if Legend is set.
func (h *Handout) Pages() []*draw.Page {
	pages := make([]*draw.Page, len(h.Roots))
	for i, root := range h.Roots {
		f := Folio{Paper: h.kind, Number: i + 1, Of: len(h.Roots), Scale: h.Scale}
		title := h.name() + ": " + h.kind
		if len(h.Roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", f.Number, f.Of)
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(h.desc), W: h.Paper.W, H: h.Paper.H}
		h.drawHead(&p.Root, f)
		h.drawCheckBar(p.Root.Group("check-bar"))
		p.Root.Add(root.Items...)
		if h.Legend {
			drawLegend(&p.Root, h.Paper, h.Width()-checkBlock, h.Notes)
		}
		pages[i] = p
	}
	return pages
}

// name returns what the sheets are of, in words.
func (h *Handout) name() string {
	if h.Shot == nil {
		return h.head.Name
	}
	return ShotName(h.Shot)
}

func (h *Handout) drawHead(root *draw.Group, f Folio) {
	g := root.Group("head")
	if h.Shot == nil {
		DrawHeadOf(g, h.head, h.Paper, f)
		return
	}
	root.ID = PageID(h.Shot, f.Paper, f.Number)
	DrawHead(g, h.Shot, h.Paper, f)
}

// drawCheckBar draws a bar of 50 mm with a tick at every centimetre, and writes its
// purpose: beside it at the left of the foot, or below it at the right of a legend.
func (h *Handout) drawCheckBar(g *draw.Group) {
	x, y := Margin, h.Paper.H-Edge+1.2
	words := draw.NewText(x+checkBar+3, y, "50 mm. "+printScale+" Measure this bar before you cut.", FontNote, draw.Black)
	if h.Legend {
		x = h.Paper.W - Margin - checkBlock + 4
		words = draw.NewText(x, y+3.6, "50 mm at 100 %: measure before you cut", FontNote, draw.Black)
	}
	g.Title = "50 mm"
	stroke := draw.Solid(draw.Black, draw.StopWidth)
	g.Line(x, y, x+checkBar, y, stroke)
	for at := 0.0; at <= checkBar; at += 10 {
		tick := 1.2
		if at == 0 || at == checkBar {
			tick = 2.4
		}
		g.Line(x+at, y-tick, x+at, y, stroke)
	}
	g.Add(words)
}
