// The figures of a scene at the right of its band.

package story

import (
	"strconv"

	"pullscore/interp/story"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// The sizes of the figures, in millimetres.
const (
	shareWidth = 18.0
	shareHigh  = 3.0
	binsWidth  = 21.0
	binsHigh   = 6.4
)

// drawFigures draws the share of own lines, the ways of the racks, and the lengths of the
// stays.
func (p *pages) drawFigures(g *draw.Group, sc *story.Scene, y float64) {
	p.drawOwn(g.Group("own-lines"), &sc.Figures, y)
	ways := g.Group("ways")
	drawWay(ways, p.Paper.W-waysFrom, y+5, false, sc.Near)
	drawWay(ways, p.Paper.W-waysFrom+9, y+5, true, sc.Far)
	p.drawStays(g.Group("lengths"), &sc.Figures, y)
}

// drawOwn draws the share of the own lines as a bar.
func (p *pages) drawOwn(g *draw.Group, f *story.Figures, y float64) {
	x := p.Paper.W - ownFrom
	if !f.Own.Known() {
		g.Add(draw.NewText(x, y+5, "no lines", sheet.FontNote, draw.Grey))
		return
	}
	share := float64(f.Own)
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y + 2.6, W: shareWidth * share, H: shareHigh}, Fill: draw.Black},
		draw.Rect{Box: draw.Box{X: x, Y: y + 2.6, W: shareWidth, H: shareHigh}, Stroke: draw.Solid(draw.Black, draw.FineWidth)},
		draw.NewText(x, y+9.4, in.Share(share, 0), sheet.FontBody, draw.Black))
}

// drawWay draws how many racks go farther, or nearer: a triangle, and the number.
func drawWay(g *draw.Group, x, y float64, farther bool, n int) {
	const half, high = 0.9, 1.5
	run := []draw.Point{{X: x, Y: y - high}, {X: x + 2*half, Y: y - high}, {X: x + half, Y: y}}
	if farther {
		run = []draw.Point{{X: x, Y: y}, {X: x + 2*half, Y: y}, {X: x + half, Y: y - high}}
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: draw.Black},
		draw.NewText(x+2*half+0.8, y, strconv.Itoa(n), sheet.FontStrong, draw.Black))
}

// drawStays draws how many stays there are of each length.
func (p *pages) drawStays(g *draw.Group, f *story.Figures, y float64) {
	x, base := p.Paper.W-staysFrom, y+2.2+binsHigh
	drawBins(g, f.Bins, draw.Box{X: x, Y: base - binsHigh, W: binsWidth, H: binsHigh})
	g.Add(draw.NewText(x, base+3.4, story.HalfUnder(f.Median, in), sheet.FontSmall, draw.Grey))
}

// drawBins draws the bins in a box, the fullest as high as it is.
func drawBins(g *draw.Group, bins []int, box draw.Box) {
	most := 1
	for _, n := range bins {
		most = max(most, n)
	}
	each := box.W / float64(len(bins))
	for i, n := range bins {
		if n > 0 {
			high := box.H * float64(n) / float64(most)
			g.Add(draw.Rect{Box: draw.Box{X: box.X + each*float64(i) + 0.1, Y: box.Bottom() - high, W: each - 0.2, H: high}, Fill: draw.Soft})
		}
	}
	g.Line(box.X, box.Bottom(), box.Right(), box.Bottom(), draw.Solid(draw.Black, draw.RulerWidth))
}
