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
	Shot  *plan.Shot // nil: the sheets belong to no shot
	Paper Paper
	kind  string // the drawing's name
	desc  string
	head  Heading // where there is no shot
	Roots []*draw.Group
	Y     float64 // the lower end of the filled part of the sheet, millimetres
}

const (
	HandoutTop    = Edge + 17.0 // the top of the contents, millimetres
	HandoutBottom = 13.0        // the space at the lower edge for the check bar, millimetres
	checkBar      = 50.0        // millimetres
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

// Left returns the height that is left on the sheet, in millimetres.
func (h *Handout) Left() float64 { return h.Paper.H - HandoutBottom - h.Y }

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

// Pages returns the finished sheets.
func (h *Handout) Pages() []*draw.Page {
	pages := make([]*draw.Page, len(h.Roots))
	for i, root := range h.Roots {
		title, which := h.name()+": "+h.kind, h.kind
		if len(h.Roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(h.Roots))
			which += fmt.Sprintf(" · page %d of %d", i+1, len(h.Roots))
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(h.desc), W: h.Paper.W, H: h.Paper.H}
		h.drawHead(p.Root.Group("head"), which)
		drawCheckBar(p.Root.Group("check-bar"), Margin, h.Paper.H-Edge+1.2)
		p.Root.Add(root.Items...)
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

func (h *Handout) drawHead(g *draw.Group, which string) {
	if h.Shot == nil {
		DrawHeading(g, h.head, h.Paper, which)
		return
	}
	DrawPageHead(g, h.Shot, h.Paper, which)
}

// drawCheckBar draws a bar of 50 mm from (x, y) to the right, with a tick at every
// centimetre, and writes its purpose.
func drawCheckBar(g *draw.Group, x, y float64) {
	g.Title = "50 mm"
	g.Line(x, y, x+checkBar, y, Solid(draw.Black, Medium))
	for at := 0.0; at <= checkBar; at += 10 {
		tick := 1.2
		if at == 0 || at == checkBar {
			tick = 2.4
		}
		g.Line(x+at, y-tick, x+at, y, Solid(draw.Black, Medium))
	}
	g.Add(draw.NewText(x+checkBar+3, y, "50 mm. "+printScale+" Measure this bar before you cut.", FontNote, draw.Black))
}
