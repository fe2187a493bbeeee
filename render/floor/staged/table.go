// The table of tapes: a block a set-up, with a row for everybody, far to near.

package staged

import (
	"fmt"

	"pullscore/render/draw"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	tableWide = 87.0
	tableHead = 7.0
	nameAt    = 5.0
	tapeEnd   = 54.0
	focusEnd  = 69.0
	nameRoom  = 20.0 // of a name beside its tape
	swatch    = 8.0
)

// A tableLine is a line of the table.
type tableLine struct {
	high float64
	keep bool // it stays with the next
	draw func(g *draw.Group, x, y float64)
}

// tapeLines returns the blocks of set-ups; at is the index of the first on its sheet.
func (f *Floor) tapeLines(setups []Setup) (lines []tableLine) {
	for i := range setups {
		c := &setups[i]
		lines = append(lines, f.blockHead(c, hatches[i], i > 0)...)
		for k, t := range c.Tapes {
			row := f.tapeLine(t)
			row.keep = len(c.Tapes) <= 8 && k < len(c.Tapes)-1
			lines = append(lines, row)
		}
	}
	return lines
}

// blockHead returns the head of a block: the hatch of the set-up, its ID and where it looks,
// and below that how it stands and what it does.
func (f *Floor) blockHead(c *Setup, hatch float64, later bool) []tableLine {
	high := 4.6
	if later {
		high = 6.6
	}
	first := tableLine{high: high, keep: true, draw: func(g *draw.Group, x, y float64) {
		base := y + high - 1.2
		sub := g.Group("set-up-head")
		sub.ID, sub.Link = f.blockID(c), f.wedgeID(c)
		box := draw.Box{X: x, Y: base - 2.6, W: swatch, H: 2.8}
		signs.DrawSide(sub, [][]draw.Point{{{X: x, Y: box.Y}, {X: box.Right(), Y: box.Y}}}, seek.Hatched(seek.Corners(box), hatch, signs.SidePitch, hatchLeast))
		right := draw.NewText(x+tableWide, base, looks(c.Pose), sheet.FontSmall, draw.Black).Aligned(draw.End)
		sub.Add(draw.NewText(x+swatch+2, base, c.ID, sheet.FontHeading, draw.Black).Shortened(right.Room().X-x-swatch-4), right)
	}}
	words := sheet.Joined([]string{c.figures(f), ways(spotOfPose(c.Pose), f.Style)})
	if c.Camera != "" {
		words = "camera " + c.Camera + " · " + words
	}
	lines := []tableLine{first}
	for _, text := range append([]string{words}, c.Moves...) {
		for _, l := range wordLines([]string{text}, fontValue, draw.Grey, tableWide) {
			l.high, l.keep = 3.1, true
			lines = append(lines, l)
		}
	}
	return lines
}

// tapeLine returns the row of a tape: the name on a line of its own if it is long.
func (f *Floor) tapeLine(t Tape) tableLine {
	name := draw.NewText(0, 0, t.Name, sheet.FontBody, draw.Black)
	high, long := 4.2, name.Room().W > nameRoom
	if long {
		high = 7.8
	}
	ink, dim := draw.Black, draw.Black
	if t.Out {
		ink, dim = draw.Grey, draw.Grey
	}
	first, other := f.Style.Both(t.Tape)
	if t.Measured {
		first += "*"
	}
	aside := sheet.Figures.AngleTo(t.OffAxis, 0)
	if t.Out {
		aside += ", out"
	}
	focus := f.Style.Tape(t.Focus)
	if t.Focus <= 0 {
		focus = "behind"
	}
	return tableLine{high: high, draw: func(g *draw.Group, x, y float64) {
		row := g.Group("tape-row")
		row.Title = draw.Clean(t.Name)
		base := y + 3.1
		name.At, name.Ink = draw.Point{X: x + nameAt, Y: base}, ink
		row.Add(draw.NewText(x, base, t.Letter, sheet.FontStrong, ink), name.Shortened(tableWide-nameAt))
		base = y + high - 1.1
		put := func(end float64, text string, font draw.Font, ink draw.Ink) {
			row.Add(draw.NewText(x+end, base, text, font, ink).Aligned(draw.End))
		}
		put(tapeEnd, sheet.Joined([]string{first, other}), sheet.FontNote, dim)
		put(focusEnd, focus, sheet.FontStrong, ink)
		put(tableWide, aside, sheet.FontNote, dim)
	}}
}

// wordLines returns sentences as lines of the table.
func wordLines(sentences []string, font draw.Font, ink draw.Ink, wide float64) []tableLine {
	var lines []tableLine
	for i, s := range sentences {
		for k, part := range font.Wrap(s, wide) {
			high := 3.3
			if k == 0 && i > 0 {
				high = 4.0
			}
			lines = append(lines, tableLine{high: high, draw: func(g *draw.Group, x, y float64) {
				g.Add(draw.NewText(x, y+high-0.8, part, font, ink))
			}})
		}
	}
	return lines
}

// heightOf returns the height of lines.
func heightOf(lines []tableLine) (high float64) {
	for _, l := range lines {
		high += l.high
	}
	return high
}

// fitting returns how many of the lines fit into a height, and leaves none alone at the end
// that has to stay with the next.
func fitting(lines []tableLine, height float64) int {
	n := 0
	for n < len(lines) && lines[n].high <= height+1e-9 {
		height -= lines[n].high
		n++
	}
	if n < len(lines) {
		for n > 0 && lines[n-1].keep {
			n--
		}
	}
	return n
}

// drawTable draws the table beside a floor: as many lines as have room, then sentences,
// which always have. It returns the others.
func (f *Floor) drawTable(g *draw.Group, box draw.Box, p part, sentences []string, next int) (left []tableLine) {
	lines := f.tapeLines(p.setups)
	foot := append([]tableLine{{high: 2, draw: nothing}}, wordLines(sentences, fontValue, draw.Grey, tableWide)...)
	more := wordLines([]string{fmt.Sprintf("More tapes from page %d on.", next)}, sheet.FontNote, draw.Black, tableWide)
	n := fitting(lines, box.H-tableHead-heightOf(foot))
	if n < len(lines) {
		n = fitting(lines, box.H-tableHead-heightOf(foot)-heightOf(more))
		foot = append(more, foot...)
	}
	y := box.Y
	if len(lines) > 0 {
		y = drawHeads(g, box.X, y)
	}
	for _, l := range append(lines[:n:n], foot...) {
		l.draw(g, box.X, y)
		y += l.high
	}
	return lines[n:]
}

func nothing(*draw.Group, float64, float64) {}

// drawHeads draws the heads of the columns, and returns where the lines begin.
func drawHeads(g *draw.Group, x, y float64) float64 {
	g.Add(draw.NewText(x, y+3.2, "Set-ups", sheet.FontHeading, draw.Black))
	for _, c := range []struct {
		end  float64
		word string
	}{{tapeEnd, "tape"}, {focusEnd, "focus"}, {tableWide, "off axis"}} {
		g.Add(draw.NewText(x+c.end, y+3.2, c.word, fontValue, draw.Grey).Aligned(draw.End))
	}
	g.Line(x, y+5, x+tableWide, y+5, draw.Solid(draw.Black, draw.FineWidth))
	return y + tableHead
}

// tapePage draws a sheet of lines that found no room beside their floors.
func (f *Floor) tapePage(paper sheet.Paper, lines []tableLine) (page *draw.Page, left []tableLine) {
	page = &draw.Page{W: paper.W, H: paper.H}
	g := page.Root.Group("tapes")
	high := paper.H - footRoom - sheetTop - tableHead
	for x := sheet.Margin; x+tableWide <= paper.W-sheet.Margin+1e-9 && len(lines) > 0; x += tableWide + tableGap {
		y := drawHeads(g, x, sheetTop)
		n := max(fitting(lines, high), 1)
		for _, l := range lines[:n] {
			l.draw(g, x, y)
			y += l.high
		}
		lines = lines[n:]
	}
	sheet.DrawLegend(&page.Root, paper)
	return page, lines
}
