// Passages as pages: headings, sentences and tables down a sheet, and on to
// the next.

package brief

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// pages is a handout that is filled with passages.
type pages struct{ *sheet.Handout }

// newPages opens the first sheet for passages; of no shot where s is nil.
func newPages(s *plan.Shot, opt sheet.Options) pages {
	return pages{sheet.NewHandout(s, opt, "", "")}
}

// fontCover is the title of a cover.
var fontCover = draw.Font{Size: 22, Bold: true}

// CoverPages lays a cover out.
func CoverPages(title string, passages []Passage, opt sheet.Options) []*draw.Page {
	return FrontPages(title, "cover", "The kit, the cautions that apply and the shots.", passages, opt)
}

// FrontPages lays passages out that stand before the papers of shots. Kind is what these
// pages are, desc says it to people who cannot see them.
func FrontPages(title, kind, desc string, passages []Passage, opt sheet.Options) []*draw.Page {
	h := newPages(nil, opt)
	h.put(passages)
	return h.leaves(draw.Clean(title)+": "+kind, desc, func(p *draw.Page, number, of int) {
		g := p.Root.Group("head")
		p.Root.ID = draw.ID(kind, fmt.Sprint(number))
		which := draw.NewText(h.Paper.W-sheet.Margin, sheet.HeadBase, sheet.Folio{Paper: kind, Number: number, Of: of}.String(), sheet.FontHeading, draw.Black).Aligned(draw.End)
		room := which.Room().X - 6 - sheet.Margin
		g.Add(draw.NewText(sheet.Margin, sheet.HeadBase, title, fontCover, draw.Black).Shortened(room/draw.Slack), which)
	})
}

// wordPages lays out what no drawing of a shot shows; nothing if there is no such thing.
func wordPages(s *plan.Shot, passages []Passage, opt sheet.Options) []*draw.Page {
	var left []Passage
	for _, p := range passages {
		if !p.Drawn {
			left = append(left, p)
		}
	}
	if !slices.ContainsFunc(left, func(p Passage) bool { return p.Heading != cautions }) { // every paper has those that apply
		return nil
	}
	h := newPages(s, opt)
	h.put(left)
	return h.leaves(sheet.ShotName(s)+": in words", "What no drawing of the shot shows.", func(p *draw.Page, number, of int) {
		p.Root.ID = sheet.PageID(s, "in words", number)
		sheet.DrawHead(p.Root.Group("head"), s, h.Paper, sheet.Folio{Paper: "in words", Number: number, Of: of})
	})
}

// put lays passages down the sheets.
func (h pages) put(passages []Passage) {
	for _, p := range passages {
		h.heading(p)
		for _, sentence := range p.Sentences {
			h.Say(sentence, sheet.FontNote, draw.Black)
		}
		if len(p.Rows) > 0 {
			t := sheet.Table{Rows: p.Rows, Links: p.Links, IDs: p.IDs}
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
)

// heading writes a heading, on a sheet that has room for something below it.
func (h pages) heading(p Passage) {
	if p.Heading == "" {
		h.Y = min(h.Y+2, h.Paper.H-sheet.HandoutBottom)
		return
	}
	const below = 5 * sheet.TablePitch // a table's head and a row of two lines
	h.Reserve(headingHeight + below)
	g, top := h.Take(headingHeight, "heading")
	g.Add(draw.NewText(sheet.Margin, top+headingBase, p.Heading, sheet.FontHeading, draw.Black).Shortened(h.Width()))
}

// leaves closes the sheets. head draws the head of each, with its number and how many
// there are.
func (h pages) leaves(title, desc string, head func(p *draw.Page, number, of int)) []*draw.Page {
	sheets := make([]*draw.Page, len(h.Roots))
	for i, root := range h.Roots {
		name := draw.Clean(title)
		if len(h.Roots) > 1 {
			name += fmt.Sprintf(", page %d of %d", i+1, len(h.Roots))
		}
		p := &draw.Page{Title: name, Desc: desc, W: h.Paper.W, H: h.Paper.H}
		head(p, i+1, len(h.Roots))
		p.Root.Add(root.Items...)
		sheets[i] = p
	}
	return sheets
}
