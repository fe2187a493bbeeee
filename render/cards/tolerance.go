// The tolerance card: for whoever watches the marks, how far everybody may miss theirs.
//
// Every figure on it is one of the plan (plan.Miss): the list, the brief and the page
// print the same.

package cards

import (
	"fmt"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	toleranceTop = 33.4 // the rule below the heads, millimetres from the upper edge
	rowHeight    = 27.0
	rowsASheet   = 5
	barBase      = 14.0 // the foot of the bars, below the top of a row
)

// Tolerance draws the tolerance card of a shot; nothing if nobody has a mark to miss.
func Tolerance(s *plan.Shot, opt sheet.Options) []*draw.Page {
	marks := marksOf(s)
	rows := make([]row, len(marks))
	for i, m := range marks {
		rows[i] = rowOf(s, m)
	}
	paper := opt.Size()
	l := layOut(rows, paper.W-2*sheet.Margin)
	var pages []*draw.Page
	of := (len(rows) + rowsASheet - 1) / rowsASheet
	for n := range of {
		f := sheet.Folio{Paper: "tolerance", Number: n + 1, Of: of, Scale: "1:5, print at 100 %"}
		p := newPage(s, paper, f, "How far everybody may miss the mark, and how far the ring turns for it.")
		some := rows[n*rowsASheet : min((n+1)*rowsASheet, len(rows))]
		l.draw(p, s, some)
		y := toleranceTop + rowHeight*float64(len(some))
		drawRuler(p.Root.Group("ruler"), l.mark, y+3.5, s.Imperial)
		drawWatch(p.Root.Group("words"), s, marks, paper, y+14.5)
		sheet.DrawLegend(&p.Root, paper, "arrow: goes on · dot: where they stand in the frame")
		pages = append(pages, p)
	}
	return pages
}

// newPage opens a page of a paper with its head.
func newPage(s *plan.Shot, paper sheet.Paper, f sheet.Folio, desc string) *draw.Page {
	title := sheet.ShotName(s) + ": " + f.Paper
	if f.Of > 1 {
		title += fmt.Sprintf(", page %d of %d", f.Number, f.Of)
	}
	p := &draw.Page{Title: draw.Clean(title), Desc: desc, W: paper.W, H: paper.H}
	p.Root.ID = sheet.PageID(s, f.Paper, f.Number)
	sheet.DrawHead(p.Root.Group("head"), s, paper, f)
	return p
}

// draw draws the heads and the rows of a page.
func (l *layout) draw(p *draw.Page, s *plan.Shot, rows []row) {
	right := p.W - sheet.Margin
	l.drawHeads(p.Root.Group("heads"), s)
	p.Root.Group("rules").Line(sheet.Margin, toleranceTop, right, toleranceTop, draw.Solid(draw.Black, draw.RulerWidth))
	table := p.Root.Group("marks")
	for i := range rows {
		r, y := &rows[i], toleranceTop+rowHeight*float64(i)
		g := table.Group(signs.Row)
		g.Title = r.name
		l.drawName(g, r, y)
		drawBars(g, &r.mark, l.mark, y+barBase)
		drawDepth(g, &r.mark, sheet.Style(s).Gap, l.mark, y+barBase+4.2)
		l.drawWords(g, r, y)
		drawAside(g.Group("aside"), r, l.aside, y+6.5, l.frame)
		l.drawTurns(g.Group("turns"), r, y+9.5)
		g.Line(sheet.Margin, y+rowHeight, right, y+rowHeight, draw.Solid(draw.Guide, draw.GuideWidth))
	}
}

// drawHeads writes the heads of the columns.
func (l *layout) drawHeads(g *draw.Group, s *plan.Shot) {
	const upper, base = toleranceTop - 6.2, toleranceTop - 2.2
	head := func(x, y float64, text string, f draw.Font, a draw.Align) {
		g.Add(draw.NewText(x, y, text, f, draw.Black).Aligned(a))
	}
	head(sheet.Margin, base, "mark", sheet.FontHeading, draw.Start)
	head(l.mark-4, base, "nearer", sheet.FontHeading, draw.End)
	head(l.mark+4, base, "farther", sheet.FontHeading, draw.Start)
	head(l.aside, upper, "aside, until", sheet.FontHeading, draw.Start)
	head(l.aside, base, "out of frame", sheet.FontHeading, draw.Start)
	head(l.turn, upper, "moved "+stepWords(s)+": turn", sheet.FontHeading, draw.Start)
	head(l.turn+l.whats+l.column, base, "nearer", sheet.FontBody, draw.End)
	head(l.turn+l.whats+2*l.column+2, base, "farther", sheet.FontBody, draw.End)
}

// drawName writes the name of a mark, its distance, and what it is used for.
func (l *layout) drawName(g *draw.Group, r *row, top float64) {
	lines := fontName.Wrap(r.name, l.names/draw.Slack)
	y := top + 7.5
	for i, line := range lines[:min(len(lines), 2)] {
		text := draw.NewText(sheet.Margin, y, line, fontName, draw.Black)
		if i == 1 && len(lines) > 2 {
			text = draw.NewText(sheet.Margin, y, line+" "+lines[2], fontName, draw.Black).Shortened(l.names / draw.Slack)
			text.Full = r.name
		}
		g.Add(text)
		y += 5.4
	}
	place := draw.NewText(sheet.Margin, y, sheet.Joined(r.places[:]), fontFigure, draw.Black)
	if place.Room().W > l.names { // the plan's own units alone
		full := place.String
		place = draw.NewText(sheet.Margin, y, r.places[0], fontFigure, draw.Black)
		place.Full = full
	}
	g.Add(place)
	g.Add(draw.NewText(sheet.Margin, y+4.6, r.used(), sheet.FontBody, draw.Grey).Shortened(l.names / draw.Slack))
}

// drawWords writes how far is sharp, and from where on it is seen, on both sides of the
// bars.
func (l *layout) drawWords(g *draw.Group, r *row, top float64) {
	for i, align := range [2]draw.Align{draw.End, draw.Start} {
		x := l.mark + barRoom + 1
		if i == 0 {
			x = l.mark - barRoom - 1
		}
		g.Add(draw.NewText(x, top+9.5, r.sharp[i], fontStrong, draw.Black).Aligned(align))
		g.Add(draw.NewText(x, top+14, r.seen[i], fontFigure, draw.Black).Aligned(align))
	}
}

// drawWatch writes who is the one to watch, and how to read the turns.
func drawWatch(g *draw.Group, s *plan.Shot, marks []mark, paper sheet.Paper, y float64) {
	head := draw.NewText(sheet.Margin, y, "Rule of the set", sheet.FontHeading, draw.Black)
	g.Add(head)
	x := head.Room().Right() + 4
	width := (paper.W - sheet.Margin - x) / draw.Slack
	for i, part := range []string{watchWords(s, marks), turnWords(s, marks)} {
		lines := sheet.FontBody.Wrap(part, width)
		for k, line := range lines {
			if y > paper.H-sheet.FootRule-1.2 || line == "" {
				return
			}
			text := draw.NewText(x, y, line, sheet.FontBody, [...]draw.Ink{draw.Black, draw.Grey}[i])
			if y += 3.9; y > paper.H-sheet.FootRule-1.2 && k < len(lines)-1 { // no room for more
				text = draw.NewText(text.At.X, text.At.Y, strings.Join(lines[k:], " "), sheet.FontBody, text.Ink).Shortened(width)
			}
			g.Add(text)
		}
	}
}
