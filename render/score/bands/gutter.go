// The gutter of a score: what its bands have in common.

package bands

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/score/gutter"
	"pullscore/render/sheet"
)

const (
	LaneAir    = 1.8 // above a band's heading
	FlagLane   = 5.4 // for a band's heading and its flags
	LaneHeight = LaneAir + FlagLane + 0.6
	BandGap    = 1.2 // below a band
)

// RowHead writes a name at the end of the gutter.
func (sh *Leaf) RowHead(g *draw.Group, base float64, name string) {
	t := draw.NewText(sh.Left-gutter.HeadGap, base, name, sheet.FontBody, draw.Grey).Aligned(draw.End)
	g.Add(t.Shortened(sh.Left - gutter.HeadGap - sheet.Margin - sh.headingRoom()))
}

// BlockTime keeps texts off the plumb lines and the edges of the columns.
func (sh *Leaf) BlockTime(c *sheet.Clearing) {
	sh.BlockPlumbs(c)
	for _, p := range sh.Shot.Pulls {
		c.BlockAt(sh.Window.X(float64(p.Start)))
		c.BlockAt(sh.Window.X(float64(p.Land)))
	}
}

// BlockPlumbs keeps texts off the plumb lines.
func (sh *Leaf) BlockPlumbs(c *sheet.Clearing) {
	for _, x := range sh.PlumbX {
		c.BlockAt(x)
	}
}

// Runs returns a curve over the samples of the window as runs of points, broken
// where y is not a number.
func (w *Window) Runs(y func(i int) float64) [][]draw.Point {
	var runs [][]draw.Point
	broken := true
	for i, t := range w.Curves.T {
		at := y(i)
		if math.IsNaN(at) {
			broken = true
			continue
		}
		if broken {
			runs = append(runs, make([]draw.Point, 0, len(w.Curves.T)-i))
			broken = false
		}
		last := &runs[len(runs)-1]
		*last = append(*last, draw.Point{X: w.X(t), Y: at})
	}
	return runs
}

// Simplified returns every run with as few chords as it needs.
func Simplified(runs [][]draw.Point) [][]draw.Point {
	out := make([][]draw.Point, len(runs))
	for i, run := range runs {
		out[i] = sheet.Simplify(run)
	}
	return out
}
