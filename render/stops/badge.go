// The numbers of racks that share a line: discs in a row, with dots between them.

package stops

import (
	"math"
	"strconv"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A badge is the numbers of racks in a row.
type badge struct {
	numbers []int
	more    bool // there are more racks than numbers
	width   float64
}

const (
	mostNumbers = 4   // in a badge
	discHigh    = 3.8 // millimetres
	dotRoom     = 2.2 // between two discs
)

func newBadge(numbers []int) badge {
	b := badge{numbers: numbers}
	if len(numbers) > mostNumbers {
		b.numbers, b.more = numbers[:mostNumbers-1], true
	}
	for _, n := range b.numbers {
		b.width += 2*signs.DiscRadius(n) + dotRoom
	}
	if b.width -= dotRoom; b.more {
		b.width += dotRoom/2 + sheet.FontNumber.Room("…")
	}
	return b
}

// box returns the area of the badge from x on, if its middle line goes as on says.
func (b badge) box(x float64, on func(x float64) float64) draw.Box {
	top, bottom := math.Inf(1), math.Inf(-1)
	for u := 0.0; u <= 1; u += 0.125 {
		y := on(x + u*b.width)
		top, bottom = min(top, y-discHigh/2), max(bottom, y+discHigh/2)
	}
	return draw.Box{X: x, Y: top, W: b.width, H: bottom - top}
}

// draw draws the badge from x on. Each number stands where on says; a dot parts it from
// the next, and interrupts the line.
func (b badge) draw(g *draw.Group, x float64, on func(x float64) float64) {
	for i, n := range b.numbers {
		if i > 0 {
			g.Add(draw.Rect{Box: draw.Box{X: x, Y: on(x+dotRoom/2) - 0.7, W: dotRoom, H: 1.4}, Fill: draw.Paper})
			b.write(g, x+dotRoom/2, on, "·", draw.Middle)
			x += dotRoom
		}
		r := signs.DiscRadius(n)
		signs.DrawRack(g, x+r, on(x+r), n).Title = "rack " + strconv.Itoa(n)
		x += 2 * r
	}
	if b.more {
		b.write(g, x+dotRoom/2, on, "…", draw.Start)
	}
}

func (b badge) write(g *draw.Group, x float64, on func(x float64) float64, text string, a draw.Align) {
	g.Add(draw.NewText(x, on(x)+sheet.FontNumber.Middle(), text, sheet.FontNumber, draw.Black).Aligned(a))
}
