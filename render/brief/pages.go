// Passages as pages: headings, sentences and tables down a sheet, and on to
// the next.

package brief

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// pages is a handout that is filled with passages.
type pages struct{ *sheet.Handout }

// newPages opens the first sheet for passages; of no shot where s is nil.
func newPages(s *plan.Shot, opt sheet.Options) pages {
	h := pages{&sheet.Handout{Shot: s, Paper: opt.Size()}}
	h.Turn()
	return h
}

// fontCover is the title of a cover.
var fontCover = draw.Font{Size: 22, Bold: true}

// CoverPages lays a cover out.
func CoverPages(title string, passages []Passage, opt sheet.Options) []*draw.Page {
	h := newPages(nil, opt)
	h.put(passages)
	return h.leaves(draw.Clean(title)+": cover", "The kit, the cautions that apply and the shots.", func(g *draw.Group, which string) {
		number := draw.NewText(h.Paper.W-sheet.Margin, sheet.Edge+6.5, which, sheet.FontBody, draw.Grey).Aligned(draw.End)
		g.Add(draw.NewText(sheet.Margin, sheet.Edge+6.5, title, fontCover, draw.Black).Shortened(number.Room().X-6-sheet.Margin), number)
	})
}

// shotPages lays the sheet of a shot out.
func shotPages(s *plan.Shot, passages []Passage, opt sheet.Options) []*draw.Page {
	h := newPages(s, opt)
	h.put(passages)
	return h.leaves(sheet.ShotName(s)+": pulls and takes", "The moves of the focus in figures, and a log of takes to fill in.", func(g *draw.Group, which string) {
		sheet.DrawPageHead(g, s, h.Paper, which)
	})
}

// put lays passages down the sheets.
func (h pages) put(passages []Passage) {
	for _, p := range passages {
		h.heading(p)
		for _, sentence := range p.Sentences {
			h.Say(sentence, sheet.FontNote, draw.Black)
		}
		switch {
		case p.Blank:
			h.ruled(p)
		case len(p.Rows) > 0:
			t := sheet.Table{Rows: p.Rows}
			for _, c := range p.Columns {
				t.Columns = append(t.Columns, sheet.Column{Title: c.Title, Text: c.Text})
			}
			t.Put(h.Handout, "table")
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
		h.Y = min(h.Y+2, h.Paper.H-sheet.HandoutBottom)
		return
	}
	below := 5 * sheet.TablePitch // a table's head and a row of two lines
	if p.Blank {
		below = headRoom + 4*ruledPitch
	}
	if h.Left() < headingHeight+below && h.Y > sheet.HandoutTop {
		h.Turn()
	}
	g, top := h.Take(headingHeight, "heading")
	g.Add(draw.NewText(sheet.Margin, top+headingBase, p.Heading, sheet.FontHeading, draw.Black).Shortened(h.Width()))
}

// ruled draws a table to write in by hand: as many of its rows as the sheet has
// room for, but not under four.
func (h pages) ruled(p Passage) {
	rows := min(len(p.Rows), int((h.Left()-headRoom)/ruledPitch))
	if rows < 4 {
		h.Turn()
		rows = min(len(p.Rows), int((h.Left()-headRoom)/ruledPitch))
	}
	g, top := h.Take(headRoom+float64(rows)*ruledPitch, "takes")
	right, bottom := sheet.Margin+h.Width(), top+headRoom+float64(rows)*ruledPitch
	x := sheet.Margin
	for _, c := range p.Columns {
		g.Add(draw.NewText(x+1, top+3.6, c.Title, sheet.FontSmall, draw.Grey))
		g.Line(x, top+headRoom, x, bottom, sheet.Solid(draw.Mid, sheet.Hair))
		x += ruledWidth
	}
	g.Line(right, top+headRoom, right, bottom, sheet.Solid(draw.Mid, sheet.Hair))
	for i := range rows + 1 {
		y := top + headRoom + float64(i)*ruledPitch
		g.Line(sheet.Margin, y, right, y, sheet.Solid(draw.Mid, sheet.Hair))
	}
}

// ruledWidth is that of every column to write in but the last, which has the
// rest.
const ruledWidth = 24.0

// leaves closes the sheets.
func (h pages) leaves(title, desc string, head func(g *draw.Group, which string)) []*draw.Page {
	sheets := make([]*draw.Page, len(h.Roots))
	for i, root := range h.Roots {
		which, name := "", draw.Clean(title)
		if len(h.Roots) > 1 {
			which = fmt.Sprintf("sheet %d of %d", i+1, len(h.Roots))
			name += ", " + which
		}
		p := &draw.Page{Title: name, Desc: desc, W: h.Paper.W, H: h.Paper.H}
		head(p.Root.Group("head"), which)
		p.Root.Add(root.Items...)
		sheets[i] = p
	}
	return sheets
}
