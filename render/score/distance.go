// The second band of a score: where everyone stands and where the focus is, on
// a scale even in 1/distance, near below.

package score

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A depthScale is the range of 1/distance that the band shows, in 1/m.
type depthScale struct{ far, near float64 }

// newDepthScale takes in the focus and every subject with its depth, unless it
// is nearer than four focal lengths: nearer than that to the sensor there is no
// sharp image, and someone who passes the camera must not squeeze the rest.
func newDepthScale(windows []*window) depthScale {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(d, least float64) {
		if d > least {
			lo, hi = min(lo, 1/d), max(hi, 1/d)
		}
	}
	for _, w := range windows {
		for i, t := range w.curves.t {
			take(w.curves.focus[i], 0)
			least := 4 * w.shot.Focal(t)
			for k, u := range w.shot.Subjects {
				d, half := w.curves.distance[k][i], deep(u)/2
				take(d-half, least)
				take(d+half, least)
			}
		}
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	pad := max(0.09*(hi-lo), 0.03*hi, 1e-4)
	far := lo - pad
	if lo > 0 {
		far = max(far, 0)
	}
	return depthScale{far: far, near: hi + pad}
}

func deep(u *plan.Subject) float64 {
	if u.Deep.Known() {
		return float64(u.Deep)
	}
	return 0
}

// y returns where a distance stands in a band, held to it; NaN for none.
func (d depthScale) y(metres, top, height float64) float64 {
	if math.IsNaN(metres) {
		return metres
	}
	inv := d.near
	if metres > 0 {
		inv = 1 / metres
	}
	share := (inv - d.far) / (d.near - d.far)
	return top + min(max(share, 0), 1)*height
}

// distanceBand returns the band.
func (w *window) distanceBand() section {
	n := float64(len(w.shot.Subjects))
	least := min(max(34, n*labelOne+4), 140) + laneHeight + bandGap
	return section{name: "distance", least: least, most: max(least, 82), overTime: true,
		draw: func(sh *leaf, g *draw.Group, top, height float64) {
			sh.open(g, top, "distance", "Distance")
			d := distanceBand{leaf: sh, top: top + laneHeight, height: height - laneHeight - bandGap}
			d.draw(g)
		}}
}

// A distanceBand is the band on a sheet.
type distanceBand struct {
	*leaf
	top, height float64
}

func (b *distanceBand) y(metres float64) float64 { return b.depth.y(metres, b.top, b.height) }

// run returns a curve of distances as runs of points, broken where there is no
// distance.
func (b *distanceBand) run(values func(i int) float64) [][]draw.Point {
	return runsOf(b.window, func(i int) float64 { return b.y(values(i)) })
}

func (b *distanceBand) draw(g *draw.Group) {
	b.drawScale(g.Group("scale"))
	c := &b.window.curves
	far := simplified(b.run(func(i int) float64 { return c.far[i] }))
	near := simplified(b.run(func(i int) float64 { return c.near[i] }))
	b.drawZone(g, far, near)

	focus := simplified(b.run(func(i int) float64 { return c.focus[i] }))
	fg := g.Group("focus")
	fg.Title = "focus"
	fg.Add(draw.Path{Runs: focus, Stroke: sheet.Solid(draw.Blue, sheet.Heavy)})
	b.drawLabels(g.Group("names"))
	b.drawArrivals(g.Group("arrivals"), slices.Concat(focus, far, near))
}

// drawZone draws the subjects' bands and the sharp zone with its edges.
func (b *distanceBand) drawZone(g *draw.Group, far, near [][]draw.Point) {
	zone, subjects, hatch := g.Group("sharp-zone"), g.Group("subjects"), g.Group("sharp-zone")
	zone.Title, hatch.Title = "sharp zone", "sharp zone"
	b.drawSubjects(subjects)
	if len(far) == 1 && len(near) == 1 {
		outline := sheet.Between(far[0], near[0])
		zone.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.BluePale})
		hatch.Add(draw.Path{Runs: draw.Hatch(outline, sheet.HatchPitch, sheet.HatchLeast), Stroke: sheet.Solid(draw.Blue, sheet.Hair)})
	}
	hatch.Add(draw.Path{Runs: slices.Concat(far, near), Stroke: sheet.Solid(draw.Blue, sheet.Hair)})
}

// drawSubjects draws each subject as a band as thick as it is deep.
func (b *distanceBand) drawSubjects(g *draw.Group) {
	for k, u := range b.shot.Subjects {
		along, half := b.window.curves.distance[k], deep(u)/2
		sg := g.Group("subject")
		sg.Title = u.Name
		if half > 0 {
			back := b.run(func(i int) float64 { return along[i] + half })
			front := b.run(func(i int) float64 { return along[i] - half })
			if len(back) == 1 && len(front) == 1 {
				sg.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(sheet.Simplify(back[0]), sheet.Simplify(front[0]))}, Closed: true, Fill: draw.Pale})
			}
		}
		middle := b.run(func(i int) float64 { return along[i] })
		sg.Add(draw.Path{Runs: simplified(middle), Stroke: sheet.Solid(draw.Mid, sheet.Hair)})
	}
}

// drawLabels names the subjects in the gutter, each where it stands when the
// sheet starts.
func (b *distanceBand) drawLabels(g *draw.Group) {
	var names []gutterLabel
	for k, u := range b.shot.Subjects {
		d := b.window.curves.distance[k][0]
		first, second := sheet.Style(b.shot).Both(d)
		if y := b.y(d); !math.IsNaN(y) {
			names = append(names, gutterLabel{name: u.Name, first: first, second: second, y: y})
		}
	}
	b.gutterLabels(g, names, b.top-0.5, b.top+b.height+bandGap)
}

// drawArrivals writes where a walk ends, as far as there is room.
func (b *distanceBand) drawArrivals(g *draw.Group, lines [][]draw.Point) {
	if len(b.shot.Blocking) == 0 {
		return
	}
	c := b.clearing(lines)
	b.writeArrivals(g, &c, b.shot.Blocking, "")
}

// clearing returns the band as a plot for texts that keep off lines.
func (b *distanceBand) clearing(lines [][]draw.Point) sheet.Clearing {
	c := sheet.Clearing{Bounds: draw.Box{X: b.left, Y: b.top, W: b.right - b.left, H: b.height}}
	for _, run := range lines {
		c.Block(run, 1)
	}
	b.blockTime(&c)
	for _, along := range b.window.curves.distance {
		for _, run := range b.run(func(i int) float64 { return along[i] }) {
			c.Avoid(sheet.Simplify(run))
		}
	}
	return c
}

// writeArrivals writes where moves end, each after a label.
func (b *distanceBand) writeArrivals(g *draw.Group, c *sheet.Clearing, moves []plan.Blocking, label string) {
	for _, m := range moves {
		u := b.shot.Subject(m.Who)
		t := float64(m.End)
		if u == nil || !b.window.holds(t) {
			continue
		}
		d := b.shot.DistanceAt(u, t)
		text := draw.NewText(0, 0, label+u.Name+" "+sheet.Style(b.shot).Tape(d), sheet.FontSmall, draw.Grey)
		at := draw.Point{X: b.window.x(t), Y: b.y(d)}
		if !math.IsNaN(at.Y) {
			c.Write(g, text, at)
		}
	}
}

// drawScale draws the grid and writes its distances, in the plan's units.
func (b *distanceBand) drawScale(g *draw.Group) {
	for _, m := range b.ticks() {
		y := b.y(m)
		g.Line(b.left, y, b.right, y, sheet.Solid(draw.Pale, sheet.Hair))
		g.Add(draw.NewText(b.right+1.6, y+sheet.FontSmall.Middle(), sheet.Style(b.shot).Tape(m), sheet.FontSmall, draw.Grey))
	}
}

// Round distances, the roundest first, in metres or in feet; and the steps of
// those that are tried where a narrow range has hardly any of them.
var (
	round  = []float64{1, 2, 5, 0.5, 10, 3, 1.5, 0.7, 0.3, 20, 0.2, 50, 100, 4, 0.8, 0.6, 0.4, 2.5, 7, 1.2, 0.25, 0.1, 0.15, 200, 500}
	finer  = []float64{0.1, 0.05, 0.02, 0.01, 0.005}
	finerF = []float64{1. / 2, 1. / 4, 1. / 12, 1. / 24}
)

// ticks returns the distances to write, in metres: the roundest that stand far
// enough apart, infinity first.
func (b *distanceBand) ticks() []float64 {
	unit, steps := 1.0, finer
	if b.shot.Imperial {
		unit, steps = plan.InchesPerFoot*plan.Inch, finerF
	}
	var ticks []float64
	try := func(m float64) {
		if inv := 1 / m; inv < b.depth.far || inv > b.depth.near {
			return
		}
		if !slices.ContainsFunc(ticks, func(o float64) bool { return math.Abs(b.y(o)-b.y(m)) < 4.4 }) {
			ticks = append(ticks, m)
		}
	}
	try(math.Inf(1))
	for _, r := range round {
		try(r * unit)
	}
	for _, step := range steps {
		if len(ticks) >= 3 || b.depth.far <= 0 {
			break
		}
		from, to := math.Ceil(1/b.depth.near/unit/step), math.Floor(1/b.depth.far/unit/step)
		for n := from; n <= min(to, from+200); n++ {
			try(n * step * unit)
		}
	}
	return ticks
}
