// The tape: a ruler of paper in strips, with a line for each millimetre.

package lens

import (
	"fmt"
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	tapeLength = 440 // millimetres: round rings of up to 140 mm
	tapeHigh   = 12.0
	tapeFlap   = 15 // what strips overlap
	tapeLine   = draw.SubjectWidth
	stripGap   = 2.0
)

// fontTape is that of the numbers on the tape.
var fontTape = draw.Font{Size: 7, Bold: true}

// cut is the stroke of what is cut out.
func cut() draw.Stroke { return draw.CutHere(draw.Grey) }

// tickLong is how long the line of a millimetre is.
func tickLong(mm int) float64 {
	switch {
	case mm%10 == 0:
		return 3.4
	case mm%5 == 0:
		return 2.6
	}
	return 1.8
}

// A strip is a part of the tape: the millimetres that it shows, and whether another
// strip is glued onto its end.
type strip struct {
	number, of int
	from, to   int
	flap       int // the millimetres beyond to that the next strip covers
}

// strips divides the tape by the width of the sheet.
func strips(width float64) (list []strip) {
	step := int(math.Floor((width-tapeFlap)/10)) * 10
	for from := 0; from < tapeLength; from += step {
		s := strip{number: len(list) + 1, from: from, to: from + step, flap: tapeFlap}
		if s.to >= tapeLength {
			s.to, s.flap = tapeLength, 0
		}
		list = append(list, s)
	}
	for i := range list {
		list[i].of = len(list)
	}
	return list
}

// putTape draws the strips one below the other.
func putTape(h *sheet.Handout) {
	g, top := h.Take(5, "words")
	title := draw.NewText(sheet.Margin, top+3, "Tape for the ring, in mm", sheet.FontHeading, draw.Black)
	g.Add(title, draw.NewText(title.Room().Right()+4, top+3,
		"Read it against the lens's own index line. ∞: the end towards infinity. Cut along the long dashes.", sheet.FontNote, draw.Black))
	list := strips(h.Width())
	for _, s := range list {
		g, top := h.Take(tapeHigh+stripGap, "strip")
		g.Number = s.number
		s.draw(g, sheet.Margin, top)
		if right := sheet.Margin + s.at(s.to) + 5; s.number == s.of && s.of > 1 {
			c := column{g: g, x: right, y: top + 1, width: h.Paper.W - sheet.Margin - right}
			c.say(fmt.Sprintf("Lay the left end of strip %d on the line %d of strip %d and glue it over the grey flap: the lines must meet.",
				s.number, s.from, s.number-1), 0, sheet.FontNote, draw.Black)
		}
	}
}

// at returns how far from the strip's left end a millimetre lies.
func (s strip) at(mm int) float64 { return float64(mm - s.from) }

// draw draws the strip with its left upper corner at (x, y).
func (s strip) draw(g *draw.Group, x, y float64) {
	end := x + s.at(s.to+s.flap)
	if s.flap > 0 {
		g.Add(draw.Rect{Box: draw.Box{X: x + s.at(s.to), Y: y, W: float64(s.flap), H: tapeHigh}, Fill: draw.Guide})
	}
	edges := g.Group("cut")
	edges.Line(x, y, end, y, cut())
	edges.Line(x, y+tapeHigh, end, y+tapeHigh, cut())
	edges.Line(x, y, x, y+tapeHigh, cut())
	edges.Line(end, y, end, y+tapeHigh, cut())
	ticks := g.Group("graduation")
	for mm := s.from; mm <= s.to+s.flap; mm++ {
		at, long := x+s.at(mm), tickLong(mm)
		ticks.Line(at, y, at, y+long, draw.Solid(draw.Black, tapeLine))
		ticks.Line(at, y+tapeHigh-long, at, y+tapeHigh, draw.Solid(draw.Black, tapeLine))
	}
	s.drawNumbers(g.Group("numbers"), x, y+tapeHigh/2)
}

// drawNumbers writes the numbers along the middle of the strip, and which way infinity
// lies.
func (s strip) drawNumbers(g *draw.Group, x, middle float64) {
	base := middle + fontTape.Middle()
	for mm := s.from; mm <= s.to; mm += 10 {
		text := draw.NewText(x+s.at(mm), base, fmt.Sprint(mm), fontTape, draw.Black).Aligned(draw.Middle)
		switch {
		case mm == s.from: // half of it would be cut off
			text.At.X, text.Align = text.At.X+0.6, draw.Start
		case mm == s.to && s.flap > 0: // the next strip has it
			continue
		case mm == s.to:
			text.At.X, text.Align = text.At.X-0.6, draw.End
		}
		g.Add(text)
	}
	for mm := s.from + 25; mm < s.to; mm += 50 {
		drawArrow(g, x+s.at(mm)-2, middle, 2.2)
		g.Add(draw.NewText(x+s.at(mm)+0.5, base, "∞", fontTape, draw.Black))
	}
	if s.flap > 0 {
		g.Add(draw.NewText(x+s.at(s.to)+float64(s.flap)/2, base, fmt.Sprintf("glue strip %d", s.number+1), sheet.FontSmall, draw.Black).Aligned(draw.Middle))
	}
}

// drawArrow draws an arrow of that length to the right.
func drawArrow(g *draw.Group, x, y, long float64) {
	g.Line(x, y, x+long-0.8, y, draw.Solid(draw.Black, tapeLine))
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x + long, Y: y}, {X: x + long - 1, Y: y - 0.5}, {X: x + long - 1, Y: y + 0.5}}}, Closed: true, Fill: draw.Black})
}
