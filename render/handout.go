// Handouts: sheets that are filled from top to bottom with whatever needs its
// own height, for what is cut out and taped on. Every sheet has the shot's
// head and a bar to check the printer with.

package render

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// A handout is a stack of sheets in the making.
type handout struct {
	shot  *plan.Shot
	paper Paper
	kind  string // the drawing's name
	desc  string
	roots []*draw.Group
	y     float64 // where the sheet is filled down to
}

const (
	handoutTop    = edge + 17.0 // of what a sheet holds
	handoutBottom = 13.0        // from the sheet's lower edge: the check bar stands there
	checkBar      = 50.0        // millimetres
	printScale    = "Print at 100 %, without fitting to the page."
)

func newHandout(s *plan.Shot, opt Options, kind, desc string) *handout {
	h := &handout{shot: s, paper: opt.paper(), kind: kind, desc: desc}
	h.turn()
	return h
}

// turn opens a new sheet.
func (h *handout) turn() {
	h.roots = append(h.roots, &draw.Group{})
	h.y = handoutTop
}

// left returns the height that the sheet has left.
func (h *handout) left() float64 { return h.paper.H - handoutBottom - h.y }

// width returns the width between the margins.
func (h *handout) width() float64 { return h.paper.W - 2*margin }

// take returns the top of a strip of that height over the sheet, on a new
// sheet where this one has no room for it, and the group to draw it in.
func (h *handout) take(height float64, name string) (g *draw.Group, top float64) {
	if h.left() < height && h.y > handoutTop {
		h.turn()
	}
	top = h.y
	h.y += height
	return h.roots[len(h.roots)-1].Group(name), top
}

const sayPitch = 3.6

// say writes sentences over the width of the sheet.
func (h *handout) say(text string, f draw.Font, ink draw.Ink) {
	for _, line := range f.Wrap(text, h.width()) {
		g, top := h.take(sayPitch*f.Size/fontNote.Size, "words")
		g.Add(draw.NewText(margin, top+0.8*f.Size*draw.MM, line, f, ink))
	}
}

// pages closes the sheets.
func (h *handout) pages() []*draw.Page {
	pages := make([]*draw.Page, len(h.roots))
	for i, root := range h.roots {
		title, which := shotName(h.shot)+": "+h.kind, h.kind
		if len(h.roots) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(h.roots))
			which += fmt.Sprintf(" · page %d of %d", i+1, len(h.roots))
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(h.desc), W: h.paper.W, H: h.paper.H}
		drawPageHead(p.Root.Group("head"), h.shot, h.paper, which)
		drawCheckBar(p.Root.Group("check-bar"), margin, h.paper.H-edge+1.2)
		p.Root.Add(root.Items...)
		pages[i] = p
	}
	return pages
}

// drawCheckBar draws a bar of 50 mm from (x, y) to the right, with a tick every
// centimetre, and what it is for.
func drawCheckBar(g *draw.Group, x, y float64) {
	g.Title = "50 mm"
	g.Line(x, y, x+checkBar, y, solid(draw.Black, medium))
	for at := 0.0; at <= checkBar; at += 10 {
		tick := 1.2
		if at == 0 || at == checkBar {
			tick = 2.4
		}
		g.Line(x+at, y-tick, x+at, y, solid(draw.Black, medium))
	}
	g.Add(draw.NewText(x+checkBar+3, y, "50 mm. "+printScale+" Measure this bar before you cut.", fontNote, draw.Black))
}
