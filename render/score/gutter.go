// The gutter of a score: names before the bands, kept apart, with leader lines
// to what they name.

package score

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	headGap    = 4.8 // between a row head and the time axis
	laneAir    = 2.4 // above a band's heading
	flagLane   = 5.4 // for a band's heading and its flags
	laneHeight = laneAir + flagLane
	bandGap    = 1.2 // below a band

	labelTwo = 6.6  // height of a label of two lines
	labelOne = 3.4  // and of one
	nameLow  = 1.55 // from the middle of a label of two lines up to its name's
)

// A gutterLabel is a name with figures, to stand at y.
type gutterLabel struct {
	name, first, second string
	y                   float64
}

// gutterLabels writes labels between top and bottom: on two lines each where
// all have room for it, else on one. Those that have none at all are left out;
// so the weightiest come first.
func (sh *leaf) gutterLabels(g *draw.Group, labels []gutterLabel, top, bottom float64) {
	height, low := labelTwo, nameLow
	if float64(len(labels))*labelTwo > bottom-top {
		height, low = labelOne, 0
	}
	labels = labels[:min(len(labels), int((bottom-top)/height+1e-9))]
	want, size := make([]float64, len(labels)), make([]float64, len(labels))
	names := map[string]int{}
	for i, l := range labels {
		want[i], size[i] = l.y+low, height
		names[l.name]++
	}
	for i, y := range sheet.Spread(want, size, top, bottom) {
		l := labels[i]
		if height == labelTwo {
			sh.labelOnTwo(g, l, y)
		} else {
			sh.labelOnOne(g, l, names[l.name] > 1, y)
		}
		sh.leader(g, l.y, y-low)
	}
}

// labelOnTwo writes the name and, below it, the figure in both units.
func (sh *leaf) labelOnTwo(g *draw.Group, l gutterLabel, y float64) {
	x := sh.left - headGap
	name := draw.NewText(x, y-nameLow+sheet.FontStrong.Middle(), l.name, sheet.FontStrong, draw.Black).Aligned(draw.End)
	g.Add(name.Shortened(x - sheet.Margin))
	figure := l.first
	if l.second != "" {
		figure += " · " + l.second
	}
	g.Add(draw.NewText(x, y+nameLow+sheet.FontSmall.Middle()-0.1, figure, sheet.FontSmall, draw.Grey).Aligned(draw.End).Shortened(x - sheet.Margin))
}

// labelOnOne writes the name and the first figure on a line; both figures where
// another label has the name too.
func (sh *leaf) labelOnOne(g *draw.Group, l gutterLabel, twice bool, y float64) {
	x := sh.left - headGap
	figures := l.first
	if twice && l.second != "" {
		figures += " · " + l.second
	}
	figure := draw.NewText(x, y+sheet.FontSmall.Middle(), figures, sheet.FontSmall, draw.Grey).Aligned(draw.End)
	g.Add(figure)
	x -= figure.Width + 1.2
	g.Add(draw.NewText(x, y+sheet.FontSmall.Middle(), l.name, sheet.FontNumber, draw.Black).Aligned(draw.End).Shortened(x - sheet.Margin))
}

// leader joins a label that stands at y to what it names, at to.
func (sh *leaf) leader(g *draw.Group, to, y float64) {
	const near, far = 0.9, 0.5
	g.Line(sh.left-headGap+near, y, sh.left-far, to, sheet.Solid(draw.Mid, sheet.Hair))
}

// blockTime keeps texts off the plumb lines and the edges of the columns.
func (sh *leaf) blockTime(c *sheet.Clearing) {
	sh.blockPlumbs(c)
	for _, p := range sh.shot.Pulls {
		c.BlockAt(sh.window.x(float64(p.Start)))
		c.BlockAt(sh.window.x(float64(p.Land)))
	}
}

// blockPlumbs keeps texts off the plumb lines.
func (sh *leaf) blockPlumbs(c *sheet.Clearing) {
	for _, x := range sh.plumbX {
		c.BlockAt(x)
	}
}

// runsOf returns a curve over a window's samples as runs of points, broken
// where y is not a number.
func runsOf(w *window, y func(i int) float64) [][]draw.Point {
	var runs [][]draw.Point
	broken := true
	for i, t := range w.curves.t {
		at := y(i)
		if math.IsNaN(at) {
			broken = true
			continue
		}
		if broken {
			runs = append(runs, make([]draw.Point, 0, len(w.curves.t)-i))
			broken = false
		}
		last := &runs[len(runs)-1]
		*last = append(*last, draw.Point{X: w.x(t), Y: at})
	}
	return runs
}

// simplified returns every run with as few chords as it needs.
func simplified(runs [][]draw.Point) [][]draw.Point {
	out := make([][]draw.Point, len(runs))
	for i, run := range runs {
		out[i] = sheet.Simplify(run)
	}
	return out
}
