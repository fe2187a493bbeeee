// The windows in which the hand lands, true to scale.

package hand

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// BracketOff is how far right of the landing its window stands, millimetres.
const BracketOff = 1.6

// A Landing is the window of a landing as it stands on the sheet, true to scale.
type Landing struct {
	Upper, Lower float64 // its ends, held to the band
	Above, Below bool    // it goes on beyond the band
	Far, Near    bool    // the ring ends there
	Pull         int     // the number of its pull
	drawn        [2]bool // the far and the near end of the ring are drawn across the band
}

// Landing returns the window of a landing, if it has one on the sheet. Where nothing
// lands there is no window, or one with its ends the wrong way round.
func (b *Band) Landing(p *plan.Pull) (l Landing, ok bool) {
	lo, hi := float64(p.WindowHand[0]), float64(p.WindowHand[1])
	if !b.Window.Holds(float64(p.Land)) || !(lo <= hi) || !sheet.Finite(hi-lo) {
		return l, false
	}
	upper, lower := b.free(hi), b.free(lo)
	l = Landing{Upper: b.Y(hi), Lower: b.Y(lo), Pull: p.Number, Above: upper < b.Top-bands.On, Below: lower > b.Top+b.Height+bands.On}
	l.Far, l.Near = p.OpenFar && !l.Above, p.OpenNear && !l.Below
	near, far := b.Ends()
	l.drawn = [2]bool{!math.IsNaN(far), !math.IsNaN(near)}
	return l, true
}

// Draw draws the window with its upright line at x and its ends to that side: below 0 to
// the left.
func (l Landing) Draw(g *draw.Group, x, side float64) {
	ends := [2]bool{!l.Above && !l.Far, !l.Below && !l.Near}
	var window *draw.Group
	if ends[0] && ends[1] && side < 0 || l.Lower-l.Upper < signs.WindowLeast {
		window = signs.DrawWindow(g, x, l.Upper, l.Lower)
	} else {
		window = g.Group(signs.Window)
		bracket(window, x, l, side, ends)
	}
	window.Number = l.Pull
	const half, off = 1.6, 1.1
	if l.Far && !l.drawn[0] {
		signs.DrawStop(g, draw.Point{X: x - half, Y: l.Upper}, draw.Point{X: x + half, Y: l.Upper})
	}
	if l.Near && !l.drawn[1] {
		signs.DrawStop(g, draw.Point{X: x + half, Y: l.Lower}, draw.Point{X: x - half, Y: l.Lower})
	}
	if l.Above {
		goesOn(g, x, l.Upper-off, true)
	}
	if l.Below {
		goesOn(g, x, l.Lower+off, false)
	}
}

// bracket draws a window that does not have both of its ends in the band.
func bracket(g *draw.Group, x float64, l Landing, side float64, ends [2]bool) {
	const arm = 1.1
	run := []draw.Point{{X: x, Y: l.Upper}, {X: x, Y: l.Lower}}
	if ends[0] {
		run = append([]draw.Point{{X: x + side*arm, Y: l.Upper}}, run...)
	}
	if ends[1] {
		run = append(run, draw.Point{X: x + side*arm, Y: l.Lower})
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)})
}

// goesOn draws the sign of a window that goes on beyond the band.
func goesOn(g *draw.Group, x, y float64, up bool) {
	signs.DrawEdge(g, x, y, up, "")
}

// drawLandings draws the windows of all landings, then writes how wide each is where no
// other window stands.
func (b *Band) drawLandings(g *draw.Group, c *sheet.Clearing) {
	const clear = 0.6 // between a text and a window
	var widths []func()
	for _, p := range b.Shot.Pulls {
		l, ok := b.Landing(p)
		if !ok || p.Kind == "follow" || b.Window.Away(p) {
			continue
		}
		x := b.Window.X(float64(p.Land)) + BracketOff
		l.Draw(g, x, -1)
		c.Taken = append(c.Taken, draw.Box{X: x - 1.2, Y: l.Upper, W: 1.2, H: l.Lower - l.Upper}.Grow(clear))
		if l.Lower-l.Upper < signs.WindowLeast {
			c.Taken = append(c.Taken, draw.Box{X: x - 1.2, Y: l.Upper - 1.7, W: 1.8, H: l.Lower - l.Upper + 3.4}.Grow(clear))
		}
		widths = append(widths, func() {
			text := draw.NewText(0, 0, sheet.WindowWidth(p), sheet.FontSmall, draw.Black)
			c.Write(g, text, draw.Point{X: x + 0.6, Y: (l.Upper + l.Lower) / 2})
		})
	}
	for _, write := range widths {
		write()
	}
}
