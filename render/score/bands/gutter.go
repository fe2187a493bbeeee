// The gutter of a score: names before the bands, kept apart, with leader lines
// to what they name.

package bands

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	HeadGap    = 4.0 // between a row head and the time axis
	LaneAir    = 1.8 // above a band's heading
	FlagLane   = 5.4 // for a band's heading and its flags
	LaneHeight = LaneAir + FlagLane + 0.6
	BandGap    = 1.2 // below a band

	labelTwo = 6.6  // height of a label of two lines
	LabelOne = 3.4  // and of one
	nameLow  = 1.55 // from the middle of a label of two lines up to its name's
)

// A GutterLabel is a name with figures, to stand at y.
type GutterLabel struct {
	Name, First, Second string
	Y                   float64
}

// GutterLabels writes labels between top and bottom: on two lines each where
// all have room for it, else on one. Those that have none at all are left out;
// so the weightiest come first.
func (sh *Leaf) GutterLabels(g *draw.Group, labels []GutterLabel, top, bottom float64) {
	height, low := labelTwo, nameLow
	if float64(len(labels))*labelTwo > bottom-top {
		height, low = LabelOne, 0
	}
	labels = labels[:min(len(labels), int((bottom-top)/height+1e-9))]
	want, size := make([]float64, len(labels)), make([]float64, len(labels))
	names := map[string]int{}
	for i, l := range labels {
		want[i], size[i] = l.Y+low, height
		names[l.Name]++
	}
	for i, y := range sheet.Spread(want, size, top, bottom) {
		l := labels[i]
		if height == labelTwo {
			sh.labelOnTwo(g, l, y)
		} else {
			sh.labelOnOne(g, l, names[l.Name] > 1, y)
		}
		sh.leader(g, l.Y, y-low)
	}
}

// labelOnTwo writes the name and, below it, the figure in both units.
func (sh *Leaf) labelOnTwo(g *draw.Group, l GutterLabel, y float64) {
	x := sh.Left - HeadGap
	name := draw.NewText(x, y-nameLow+sheet.FontStrong.Middle(), l.Name, sheet.FontStrong, draw.Black).Aligned(draw.End)
	g.Add(name.Shortened(x - sheet.Margin))
	figure := l.First
	if l.Second != "" {
		figure += " · " + l.Second
	}
	g.Add(draw.NewText(x, y+nameLow+sheet.FontSmall.Middle()-0.1, figure, sheet.FontSmall, draw.Grey).Aligned(draw.End).Shortened(x - sheet.Margin))
}

// labelOnOne writes the name and the first figure on a line; both figures where
// another label has the name too.
func (sh *Leaf) labelOnOne(g *draw.Group, l GutterLabel, twice bool, y float64) {
	x := sh.Left - HeadGap
	figures := l.First
	if twice && l.Second != "" {
		figures += " · " + l.Second
	}
	figure := draw.NewText(x, y+sheet.FontSmall.Middle(), figures, sheet.FontSmall, draw.Grey).Aligned(draw.End)
	g.Add(figure)
	x -= figure.Room().W + 1.2
	g.Add(draw.NewText(x, y+sheet.FontSmall.Middle(), l.Name, sheet.FontNumber, draw.Black).Aligned(draw.End).Shortened(x - sheet.Margin))
}

// leader joins a label that stands at y to what it names, at to.
func (sh *Leaf) leader(g *draw.Group, to, y float64) {
	const near, far = 0.7, 0.3
	lg := g.Group(signs.Leader)
	lg.Line(sh.Left-HeadGap+near, y, sh.Left-far, to, draw.Solid(draw.Grey, draw.FineWidth))
}

// blockTime keeps texts off the plumb lines and the edges of the columns.
func (sh *Leaf) blockTime(c *sheet.Clearing) {
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

// runsOf returns a curve over a window's samples as runs of points, broken
// where y is not a number.
func runsOf(w *Window, y func(i int) float64) [][]draw.Point {
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
