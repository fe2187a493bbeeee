// Passages as pages: headings, sentences and tables down a sheet, and on to
// the next.

package render

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// pages is a handout that is filled with passages.
type pages struct{ *handout }

// newPages opens the first sheet for passages; of no shot where s is nil.
func newPages(s *plan.Shot, opt Options) pages {
	h := pages{&handout{shot: s, paper: opt.paper()}}
	h.turn()
	return h
}

// fontCover is the title of a cover.
var fontCover = draw.Font{Size: 22, Bold: true}

// BriefCoverPages lays a cover out.
func BriefCoverPages(title string, passages []Passage, opt Options) []*draw.Page {
	h := newPages(nil, opt)
	h.put(passages)
	return h.leaves(draw.Clean(title)+": cover", "The kit, the cautions that apply and the shots.", func(g *draw.Group, which string) {
		number := draw.NewText(h.paper.W-margin, edge+6.5, which, fontBody, draw.Grey).Aligned(draw.End)
		g.Add(draw.NewText(margin, edge+6.5, title, fontCover, draw.Black).Shortened(number.Box().X-6-margin), number)
	})
}

// shotPages lays the sheet of a shot out.
func shotPages(s *plan.Shot, passages []Passage, opt Options) []*draw.Page {
	h := newPages(s, opt)
	h.put(passages)
	return h.leaves(shotName(s)+": pulls and takes", "The moves of the focus in figures, and a log of takes to fill in.", func(g *draw.Group, which string) {
		drawPageHead(g, s, h.paper, which)
	})
}

// put lays passages down the sheets.
func (h pages) put(passages []Passage) {
	for _, p := range passages {
		h.heading(p)
		for _, sentence := range p.Sentences {
			h.say(sentence, fontNote, draw.Black)
		}
		switch {
		case p.Blank:
			h.ruled(p)
		case len(p.Rows) > 0:
			t := table{rows: p.Rows}
			for _, c := range p.Columns {
				t.columns = append(t.columns, tableColumn{title: c.Title, text: c.Text})
			}
			t.put(h.handout, "table")
		}
	}
}

const (
	headingHeight = 8.0
	headingBase   = 6.0
	ruledPitch    = 7.0 // of rows to write in by hand
	headRoom      = 5.0
)

// heading writes a heading, on a sheet that has room for something below it.
func (h pages) heading(p Passage) {
	if p.Heading == "" {
		h.y = min(h.y+2, h.paper.H-handoutBottom)
		return
	}
	below := 5 * tablePitch // a table's head and a row of two lines
	if p.Blank {
		below = headRoom + 4*ruledPitch
	}
	if h.left() < headingHeight+below && h.y > handoutTop {
		h.turn()
	}
	g, top := h.take(headingHeight, "heading")
	g.Add(draw.NewText(margin, top+headingBase, p.Heading, fontHeading, draw.Black).Shortened(h.width()))
}

// ruled draws a table to write in by hand: as many of its rows as the sheet has
// room for, but not under four.
func (h pages) ruled(p Passage) {
	rows := min(len(p.Rows), int((h.left()-headRoom)/ruledPitch))
	if rows < 4 {
		h.turn()
		rows = min(len(p.Rows), int((h.left()-headRoom)/ruledPitch))
	}
	g, top := h.take(headRoom+float64(rows)*ruledPitch, "takes")
	right, bottom := margin+h.width(), top+headRoom+float64(rows)*ruledPitch
	x := margin
	for _, c := range p.Columns {
		g.Add(draw.NewText(x+1, top+3.6, c.Title, fontSmall, draw.Grey))
		g.Line(x, top+headRoom, x, bottom, solid(draw.Mid, hair))
		x += ruledWidth
	}
	g.Line(right, top+headRoom, right, bottom, solid(draw.Mid, hair))
	for i := range rows + 1 {
		y := top + headRoom + float64(i)*ruledPitch
		g.Line(margin, y, right, y, solid(draw.Mid, hair))
	}
}

// ruledWidth is that of every column to write in but the last, which has the
// rest.
const ruledWidth = 24.0

// leaves closes the sheets.
func (h pages) leaves(title, desc string, head func(g *draw.Group, which string)) []*draw.Page {
	sheets := make([]*draw.Page, len(h.roots))
	for i, root := range h.roots {
		which, name := "", draw.Clean(title)
		if len(h.roots) > 1 {
			which = fmt.Sprintf("sheet %d of %d", i+1, len(h.roots))
			name += ", " + which
		}
		p := &draw.Page{Title: name, Desc: desc, W: h.paper.W, H: h.paper.H}
		head(p.Root.Group("head"), which)
		p.Root.Add(root.Items...)
		sheets[i] = p
	}
	return sheets
}
