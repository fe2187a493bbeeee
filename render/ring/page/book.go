// The pages: blocks from top to bottom, then head and foot.

package page

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A Book is a stack of pages under construction.
type Book struct {
	sheet.Stack
	Shot *plan.Shot
	name string // of the paper
	desc string
}

const (
	Top        = sheet.HeadBase + sheet.HeadPitch + 4.5
	footGap    = 2.0  // above the rule of the foot
	checkBar   = 50.0 // millimetres
	checkBase  = 5.6  // above the lower edge
	printScale = "1:1, print at 100 %"
)

func New(s *plan.Shot, opt sheet.Options, name, desc string) *Book {
	return &Book{Stack: sheet.NewStack(opt.Size(), Top, sheet.FootRule+footGap), Shot: s, name: name, desc: desc}
}

// Foot is the y at which the contents of a page end.
func (b *Book) Foot() float64 { return b.Y + b.Left() }

// LinePitch is the height of a line of running text.
func LinePitch(f draw.Font) float64 { return f.Size * draw.MM * 1.28 }

// Write writes running text from a top on, and returns where it ends.
func Write(g *draw.Group, x, top, width float64, text string, f draw.Font, ink draw.Ink) float64 {
	for _, line := range f.Wrap(text, width) {
		g.Add(draw.NewText(x, top+0.8*f.Size*draw.MM, line, f, ink))
		top += LinePitch(f)
	}
	return top
}

// Say writes a paragraph across the page.
func (b *Book) Say(text string, f draw.Font, ink draw.Ink) {
	lines := f.Wrap(text, b.Width())
	b.Reserve(LinePitch(f) * float64(len(lines)))
	b.Y = Write(b.Root().Group("words"), sheet.Margin, b.Y, b.Width(), text, f, ink) + 0.6
}

// A Note is what a heading says beside it.
type Note struct {
	Text   string
	Strong bool
}

// Plain returns a note in plain type.
func Plain(text string) Note { return Note{Text: text} }

// Strong returns a note that nobody may miss.
func Strong(text string) Note { return Note{Text: text, Strong: true} }

// Font returns the type of the note.
func (n Note) Font() draw.Font {
	if n.Strong {
		return sheet.FontStrong
	}
	return sheet.FontNote
}

// headingNotes is where the notes of a heading start.
const headingNotes = 40.0

// Heading writes the title of a part, with its notes beside it, on one page with what
// follows, which is that high.
func (b *Book) Heading(title string, notes []Note, follows float64) {
	width := b.Width() - headingNotes
	height := 0.0
	for _, n := range notes {
		height += LinePitch(n.Font()) * float64(len(n.Font().Wrap(n.Text, width)))
	}
	height = max(height, LinePitch(sheet.FontHeading)) + 1.4
	b.Reserve(height + follows)
	g := b.Root().Group("words")
	g.Add(draw.NewText(sheet.Margin, b.Y+0.8*sheet.FontHeading.Size*draw.MM, title, sheet.FontHeading, draw.Black))
	y := b.Y + 0.1
	for _, n := range notes {
		y = Write(g, sheet.Margin+headingNotes, y, width, n.Text, n.Font(), draw.Black)
	}
	b.Y += height
}

// Pages returns the finished pages.
func (b *Book) Pages() []*draw.Page {
	pages := make([]*draw.Page, len(b.Roots))
	for i, root := range b.Roots {
		folio := sheet.Folio{Paper: b.name, Number: i + 1, Of: len(b.Roots), Scale: printScale}
		p := &draw.Page{
			Title: draw.Clean(fmt.Sprintf("%s: %s", sheet.ShotName(b.Shot), folio)), Desc: draw.Clean(b.desc),
			W: b.Paper.W, H: b.Paper.H,
		}
		sheet.DrawHead(p.Root.Group("head"), b.Shot, b.Paper, folio)
		p.Root.Add(root.Items...)
		drawCheckBar(p.Root.Group("check-bar"), sheet.Margin, b.Paper.H-checkBase)
		sheet.DrawLegend(&p.Root, b.Paper)
		pages[i] = p
	}
	return pages
}

// drawCheckBar draws a bar of 50 mm from (x, y) to the right, with a tick at every
// centimetre, and says what it is for.
func drawCheckBar(g *draw.Group, x, y float64) {
	g.Title = "50 mm"
	pen := draw.Solid(draw.Black, draw.RulerWidth)
	g.Line(x, y, x+checkBar, y, pen)
	for at := 0.0; at <= checkBar; at += 10 {
		tick := 1.0
		if at == 0 || at == checkBar {
			tick = 1.8
		}
		g.Line(x+at, y-tick, x+at, y, pen)
	}
	g.Add(draw.NewText(x+checkBar+3, y, "50 mm: measure it before you cut. Print at 100 %, without fitting to the page.", sheet.FontNote, draw.Black))
}
