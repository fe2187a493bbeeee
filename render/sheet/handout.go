// Handouts: sheets that are filled from top to bottom with whatever needs its
// own height, for what is cut out and taped on. Every sheet has the shot's
// head and a bar to check the printer with.

package sheet

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A Handout is a stack of sheets in the making.
type Handout struct {
	Shot  *plan.Shot
	Paper Paper
	kind  string // the drawing's name
	desc  string
	Roots []*draw.Group
	Y     float64 // where the sheet is filled down to
}

const (
	HandoutTop    = Edge + 17.0 // of what a sheet holds
	HandoutBottom = 13.0        // from the sheet's lower edge: the check bar stands there
	checkBar      = 50.0        // millimetres
	printScale    = "Print at 100 %, without fitting to the page."
)

// NewHandout returns a handout with one empty sheet; kind is the name of the
// drawing in its titles.
func NewHandout(s *plan.Shot, opt Options, kind, desc string) *Handout {
	h := &Handout{Shot: s, Paper: opt.Size(), kind: kind, desc: desc}
	h.Turn()
	return h
}

// Turn opens a new sheet.
func (h *Handout) Turn() {
	h.Roots = append(h.Roots, &draw.Group{})
	h.Y = HandoutTop
}

// Left returns the height that the sheet has left.
func (h *Handout) Left() float64 { return h.Paper.H - HandoutBottom - h.Y }

// Width returns the width between the margins.
func (h *Handout) Width() float64 { return h.Paper.W - 2*Margin }

// Take returns the top of a strip of that height over the sheet, on a new
// sheet where this one has no room for it, and the group to draw it in.
func (h *Handout) Take(height float64, name string) (g *draw.Group, top float64) {
	if h.Left() < height && h.Y > HandoutTop {
		h.Turn()
	}
	top = h.Y
	h.Y += height
	return h.Roots[len(h.Roots)-1].Group(name), top
}

const sayPitch = 3.6

// Say writes sentences over the width of the sheet.
func (h *Handout) Say(text string, f draw.Font, ink draw.Ink) {
	for _, line := range f.Wrap(text, h.Width()) {
		g, top := h.Take(sayPitch*f.Size/FontNote.Size, "words")
		g.Add(draw.NewText(Margin, top+0.8*f.Size*draw.MM, line, f, ink))
	}
}

// Pages closes the sheets.
func (h *Handout) Pages() []*draw.Page {
	pages := make([]*draw.Page, len(h.Roots))
	for i, root := range h.Roots {
		title, which := ShotName(h.Shot)+": "+h.kind, h.kind
		if len(h.Roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(h.Roots))
			which += fmt.Sprintf(" · page %d of %d", i+1, len(h.Roots))
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(h.desc), W: h.Paper.W, H: h.Paper.H}
		DrawPageHead(p.Root.Group("head"), h.Shot, h.Paper, which)
		drawCheckBar(p.Root.Group("check-bar"), Margin, h.Paper.H-Edge+1.2)
		p.Root.Add(root.Items...)
		pages[i] = p
	}
	return pages
}

// drawCheckBar draws a bar of 50 mm from (x, y) to the right, with a tick every
// centimetre, and what it is for.
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
