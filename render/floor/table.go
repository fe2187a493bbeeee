// The table of all tapes: one block for each state of each camera, far to near.

package floor

import (
	"math"
	"slices"

	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	tableWide = 73.0
	tableGap  = 7.0 // between the floor and the table, and between columns
	tableHead = 7.0
	nameRoom  = 17.0
	alongEnd  = 38.0
	slantEnd  = 52.5

	wholeBlock = 12 // a block of at most so many rows is not parted
)

// A line is a line of the table.
type line struct {
	high float64
	keep bool // it stays with the next
	draw func(g *draw.Group, x, y float64)
}

// tapeLines returns the tapes to those places, from every state that has its own.
func (f *Floor) tapeLines(places []int) []line {
	var lines []line
	for _, c := range f.Cameras {
		blocks := 0
		for _, v := range c.States {
			if len(v.Tapes) > 0 {
				blocks++
			}
		}
		for _, v := range c.States {
			var rows []line
			for _, t := range v.Tapes {
				if slices.Contains(places, t.Place) {
					rows = append(rows, f.tapeLine(t))
				}
			}
			if len(rows) == 0 {
				continue
			}
			words := "camera " + c.Name
			if c.Name == "" {
				words = "camera"
			}
			if blocks > 1 {
				words += ", " + v.Words
			}
			for i := range rows[:len(rows)-1] {
				rows[i].keep = len(rows) <= wholeBlock
			}
			lines = append(append(lines, blockHead(words, len(lines) > 0)), rows...)
		}
	}
	return lines
}

// blockHead returns the head of a block.
func blockHead(words string, later bool) line {
	high := 5.4
	if later {
		high = 7.4
	}
	text := draw.NewText(0, 0, words, sheet.FontStrong, draw.Black)
	first := 0.0 // how far above the heads of the columns the words stand
	if text.Room().W > alongEnd-9 {
		first, high = 3.6, high+3.6
	}
	return line{high: high, keep: true, draw: func(g *draw.Group, x, y float64) {
		base := y + high - 1.5
		text.At = draw.Point{X: x, Y: base - first}
		g.Add(text.Shortened(tableWide / draw.Slack))
		for _, c := range []struct {
			end  float64
			word string
		}{{alongEnd, "along"}, {slantEnd, "slant"}, {tableWide, "aside"}} {
			g.Add(draw.NewText(x+c.end, base, c.word, fontValue, draw.Grey).Aligned(draw.End))
		}
	}}
}

// tapeLine returns the row of a tape: the name on a line of its own if it is long.
func (f *Floor) tapeLine(t layout.Tape) line {
	p := f.Places[t.Place]
	name := draw.NewText(0, 0, p.Name, sheet.FontBody, draw.Black)
	high, long := 4.4, name.Room().W > nameRoom
	if long {
		high = 8
	}
	return line{high: high, draw: func(g *draw.Group, x, y float64) {
		row := g.Group("tape-row")
		row.Title = draw.Clean(p.Letter + ": " + p.Name)
		base := y + 3.2
		name.At = draw.Point{X: x + 5, Y: base}
		row.Add(draw.NewText(x, base, p.Letter, sheet.FontStrong, draw.Black), name.Shortened((tableWide-5)/draw.Slack))
		f.writeTape(row, t, p, x, y+high-1.2)
	}}
}

// writeTape writes the figures of a tape.
func (f *Floor) writeTape(g *draw.Group, t layout.Tape, p layout.Place, x, base float64) {
	along, slant := f.Style.Tape(t.Along), f.Style.Tape(t.Slant)
	if t.Along <= 0 {
		along = "behind"
	}
	put := func(g *draw.Group, end float64, text string, font draw.Font, ink draw.Ink) {
		g.Add(draw.NewText(x+end, base, text, font, ink).Aligned(draw.End))
	}
	put(g, alongEnd, along, sheet.FontStrong, draw.Black)
	if t.SlantAssumed {
		put(g.Group(signs.Assumed), slantEnd, "≈ "+slant, sheet.FontNote, draw.Grey)
	} else {
		put(g, slantEnd, slant, sheet.FontNote, draw.Grey)
	}
	if p.Unsaid && math.Abs(t.Aside) < onAxis {
		put(g.Group(signs.Assumed), tableWide, "≈ not said", sheet.FontNote, draw.Black)
		return
	}
	words := f.sideWords(t.Aside)
	if p.Unsaid {
		put(g.Group(signs.Assumed), tableWide, "≈ "+words, sheet.FontNote, draw.Black)
		return
	}
	put(g, tableWide, words, sheet.FontNote, draw.Black)
}

const onAxis = 0.005 // metres

// sideWords says how far to the side something is.
func (f *Floor) sideWords(aside float64) string {
	amount := math.Abs(aside)
	if amount >= 0.1 && f.Style.System != units.Imperial { // nobody stands to the millimetre
		amount = math.Round(amount*100) / 100
	}
	switch {
	case amount < onAxis:
		return "on the axis"
	case aside < 0:
		return f.Style.Tape(amount) + " left"
	}
	return f.Style.Tape(amount) + " right"
}

// wordLines returns sentences as lines of the table.
func wordLines(sentences []string, font draw.Font, ink draw.Ink) []line {
	var lines []line
	for i, s := range sentences {
		for k, part := range font.Wrap(s, tableWide/draw.Slack) {
			high := 3.3
			if k == 0 && i > 0 {
				high = 4.0
			}
			lines = append(lines, line{high: high, draw: func(g *draw.Group, x, y float64) {
				g.Add(draw.NewText(x, y+high-0.8, part, font, ink))
			}})
		}
	}
	return lines
}

func gapLine(high float64) line {
	return line{high: high, draw: func(*draw.Group, float64, float64) {}}
}

// heightOf returns the height of lines.
func heightOf(lines []line) (high float64) {
	for _, l := range lines {
		high += l.high
	}
	return high
}

// taken returns how many of the lines fit into a height: at least one, and none that has to
// stay with the next alone at the end.
func fitting(lines []line, height float64) int {
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

// drawColumn draws lines from (x, y) down, below a heading, and returns where they end.
func drawColumn(g *draw.Group, x, y float64, lines []line) float64 {
	g.Add(draw.NewText(x, y+3.2, "Tapes, far to near", sheet.FontHeading, draw.Black))
	g.Line(x, y+5, x+tableWide, y+5, draw.Solid(draw.Black, draw.FineWidth))
	y += tableHead
	for _, l := range lines {
		l.draw(g, x, y)
		y += l.high
	}
	return y
}
