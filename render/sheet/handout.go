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
	Stack
	Shot  *plan.Shot // nil: the sheets belong to no shot
	Scale string     // of the drawing, for the head: "1:1, print at 100 %"; may be empty
	kind  string     // the drawing's name
	desc  string
	head  Heading // where there is no shot
}

const (
	HandoutTop    = Edge + 17.0           // the top of the contents, millimetres
	HandoutBottom = 13.0                  // the foot with the check bar, millimetres
	checkBar      = 50.0                  // millimetres
	TrueScale     = "1:1, print at 100 %" // of sheets on which a millimetre is one
	printScale    = "Print at 100 %, without fitting to the page."
)

// NewHandout returns a handout with one empty sheet. kind is the name of the drawing in
// the titles, desc its description for people who cannot see it.
func NewHandout(s *plan.Shot, opt Options, kind, desc string) *Handout {
	return &Handout{Stack: NewStack(opt.Size(), HandoutTop, HandoutBottom), Shot: s, kind: kind, desc: desc}
}

// NewHandoutOf returns a handout with one empty sheet that belongs to no shot.
func NewHandoutOf(head Heading, opt Options, kind, desc string) *Handout {
	h := NewHandout(nil, opt, kind, desc)
	h.head = head
	return h
}

const sayPitch = 3.6

// Say writes sentences across the width of the sheet, below the filled part.
func (h *Handout) Say(text string, f draw.Font, ink draw.Ink) {
	for _, line := range f.Wrap(text, h.Width()) {
		g, top := h.Take(sayPitch*f.Size/FontNote.Size, "words")
		g.Add(draw.NewText(Margin, top+0.8*f.Size*draw.MM, line, f, ink))
	}
}

// Pages returns the finished sheets. Each has a head and a bar to check the printer.
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

// drawCheckBar draws the bar at the left of the foot.
func (h *Handout) drawCheckBar(g *draw.Group) {
	x, y := Margin, h.Paper.H-Edge+1.2
	words := draw.NewText(x+checkBar+3, y, "50 mm. "+printScale+" Measure this bar before you cut.", FontNote, draw.Black)
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
