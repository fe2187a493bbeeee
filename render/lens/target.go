// The target: a star whose spokes run together where they are not sharp, and beside it
// a ruler that shows on which side the focus lies.
//
// The ruler is two strips of the same card, hinged on one line in the star's plane. The
// upper is folded back, the lower forward, each by 45 degrees: so a step of 5 mm in
// distance is 5 sqrt 2 mm long on paper, both start at 0 in the star's plane, and none
// hides the star. 200 mm of distance in one straight strip, 283 mm on paper, would fit
// neither sheet.

package lens

import (
	"fmt"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	starRadius = 60.0
	starSpokes = 36   // black ones, and as many white
	starBand   = 123. // the height of the star's part of the card
	ringGap    = 0.7  // the width of the white rings
	hinge      = 14.0 // the card left of the fold
	stripHigh  = 19.0
	stripEnd   = 5.0 // beyond the last line, half a number
	rulerReach = 100 // millimetres of distance each way
	rulerStep  = 5   // likewise, from line to line
)

// onPaper returns how long a distance is on a strip at 45 degrees, both in millimetres.
func onPaper(mm float64) float64 { return mm * math.Sqrt2 }

// fontRuler and fontSide are read through the lens.
var (
	fontRuler = draw.Font{Size: 11, Bold: true}
	fontSide  = draw.Font{Size: 14, Bold: true}
)

// putTarget draws the second page.
func (l Lens) putTarget(h *sheet.Handout) {
	g, top := h.Take(h.Left(), "target")
	c := card{x: sheet.Margin, y: top + 1}
	c.fold = c.x + hinge
	c.right = c.fold + onPaper(rulerReach) + stripEnd
	c.star = c.y + stripHigh
	c.low = c.star + starBand
	c.drawEdges(g.Group("cut"))
	c.drawStar(g.Group("star"))
	c.drawRuler(g.Group("ruler-far"), c.y, c.star, "far", "fold back")
	c.drawRuler(g.Group("ruler-near"), c.low+stripHigh, c.low, "near", "fold forward")
	words := column{g: g.Group("words"), x: c.right + columnGap, y: top + 1}
	words.width = h.Paper.W - sheet.Margin - words.x
	l.writeTarget(&words)
}

// A card is what is cut out: its left, its top, the fold, its right, and the top and
// the foot of the star's part.
type card struct{ x, y, fold, right, star, low float64 }

// drawEdges draws where to cut and where to fold.
func (c card) drawEdges(g *draw.Group) {
	foot := c.low + stripHigh
	for _, y := range []float64{c.y, foot} {
		g.Line(c.x, y, c.right, y, cut())
	}
	for _, y := range []float64{c.star, c.low} {
		g.Line(c.fold, y, c.right, y, cut())
	}
	g.Line(c.x, c.y, c.x, foot, cut())
	g.Line(c.right, c.y, c.right, foot, cut())
	for _, y := range []float64{c.y, c.low} {
		g.Line(c.fold, y, c.fold, y+stripHigh, draw.Solid(draw.Black, draw.RulerWidth))
		g.Add(draw.NewText(c.fold-1.2, y+stripHigh/2, "fold", sheet.FontSmall, draw.Black).Aligned(draw.End))
	}
}

// drawStar draws the spokes, which a ring of white parts at a half and at a quarter of
// the radius.
func (c card) drawStar(g *draw.Group) {
	centre := draw.Point{X: (c.x + c.right) / 2, Y: (c.star + c.low) / 2}
	at := func(deg, radius float64) draw.Point {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return draw.Point{X: centre.X + radius*sin, Y: centre.Y - radius*cos}
	}
	const wide = 360.0 / (2 * starSpokes)
	chords := math.Ceil(wide / (2 * math.Acos(1-draw.Chord/starRadius) * 180 / math.Pi))
	spokes := draw.Path{Closed: true, Fill: draw.Black}
	inner := 0.0
	for _, outer := range []float64{starRadius / 4, starRadius / 2, starRadius + ringGap/2} {
		for i := range starSpokes {
			var out, back []draw.Point
			for k := 0.0; k <= chords; k++ {
				deg := wide * (2*float64(i) + k/chords)
				out = append(out, at(deg, outer-ringGap/2))
				if inner > 0 || k == 0 {
					back = append(back, at(deg, inner))
				}
			}
			slices.Reverse(back)
			spokes.Runs = append(spokes.Runs, append(out, back...))
		}
		inner = outer + ringGap/2
	}
	g.Add(spokes)
}

// drawRuler draws a strip of the ruler. Its lines stand on the edge beside the star,
// and outer is the other edge.
func (c card) drawRuler(g *draw.Group, outer, edge float64, side, how string) {
	out := math.Copysign(1, outer-edge)
	for mm := 0; mm <= rulerReach; mm++ {
		x, long, width := c.fold+onPaper(float64(mm)), 2.4, tapeLine
		switch {
		case mm == 0: // the fold
			continue
		case mm%10 == 0:
			long, width = 7.5, 0.5
		case mm%rulerStep == 0:
			long, width = 5, 0.5
		}
		g.Line(x, edge, x, edge+out*long, draw.Solid(draw.Black, width))
		if mm%10 == 0 {
			g.Add(draw.NewText(x, edge+out*10+fontRuler.Middle(), fmt.Sprint(mm), fontRuler, draw.Black).Aligned(draw.Middle))
		}
	}
	g.Add(draw.NewText(c.fold+1, edge+out*10+fontRuler.Middle(), "0", fontRuler, draw.Black))
	name := draw.NewText(c.fold+3, edge+out*15.2+fontSide.Middle(), side, fontSide, draw.Black)
	g.Add(name, draw.NewText(name.Room().Right()+3, name.At.Y, how+" to 45 degrees; numbers are mm of distance from the star", sheet.FontSmall, draw.Black))
}
