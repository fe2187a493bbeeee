// The second band of a score: where everyone stands and where the focus is, on
// a scale even in 1/distance, near below.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/gutter"
	"pullscore/render/score/times"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A DepthScale is the range of 1/distance that the band shows, in 1/m.
type DepthScale struct{ Far, Near float64 }

// newDepthScale takes in the focus and every subject with its depth, unless it
// is nearer than four focal lengths: nearer than that to the sensor there is no
// sharp image, and someone who passes the camera must not squeeze the rest.
func newDepthScale(windows []*Window) DepthScale {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(d, least float64) {
		if d > least {
			lo, hi = min(lo, 1/d), max(hi, 1/d)
		}
	}
	for _, w := range windows {
		for i, t := range w.Curves.T {
			take(w.Curves.Focus[i], 0)
			least := 4 * w.Shot.Focal(t)
			for k, u := range w.Shot.Subjects {
				d, half := w.Curves.Distance[k][i], Deep(u)/2
				take(d-half, least)
				take(d+half, least)
			}
		}
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	pad := max(0.1*(hi-lo), 0.03*hi, 1e-4)
	far := lo - pad
	if lo > 0 {
		far = max(far, 0)
	}
	return DepthScale{Far: far, Near: hi + pad}
}

// Deep returns how deep a subject is, in metres; 0 where nothing says it.
func Deep(u *plan.Subject) float64 {
	if u.Deep.Known() {
		return float64(u.Deep)
	}
	return 0
}

// Y returns where a distance stands in a band, held to it; NaN for none.
func (d DepthScale) Y(metres, top, height float64) float64 {
	return min(max(d.free(metres, top, height), top), top+height)
}

// free returns where a distance stands, also outside the band; NaN for none.
func (d DepthScale) free(metres, top, height float64) float64 {
	switch {
	case math.IsNaN(metres):
		return metres
	case metres <= 0:
		return top + 2*height // it is no distance: as far below the band as anything is drawn
	}
	share := (1/metres - d.Far) / (d.Near - d.Far)
	return top + min(max(share, -1), 2)*height
}

// DistanceBand returns the band.
func (w *Window) DistanceBand() Section {
	n := float64(len(w.Shot.Subjects))
	room := LaneHeight + w.EdgeRoom(true) + w.EdgeRoom(false) + BandGap
	low := 30.0
	if w.Tight() {
		low = 24 // so that two have room on a sheet
	}
	least := min(max(low, n*gutter.LabelOne+4), 140) + room
	return Section{Name: "distance", Least: least, Most: max(least, 104), OverTime: true,
		Draw: func(sh *Leaf, g *draw.Group, top, height float64) {
			sh.Open(g, top, "distance", "Distance")
			d := DistanceBand{Leaf: sh, Top: top + LaneHeight + w.EdgeRoom(true), Height: height - room}
			d.draw(g)
		}}
}

// A DistanceBand is the band on a sheet.
type DistanceBand struct {
	*Leaf
	Top, Height float64
}

// Y returns where a distance stands, held to the band.
func (b *DistanceBand) Y(metres float64) float64 { return b.Depth.Y(metres, b.Top, b.Height) }

// Run returns a curve of distances as runs of points, broken where there is no
// distance.
func (b *DistanceBand) Run(values func(i int) float64) [][]draw.Point {
	return b.Window.Runs(func(i int) float64 { return b.Y(values(i)) })
}

func (b *DistanceBand) draw(g *draw.Group) {
	b.DrawScale(g.Group("scale"))
	c := &b.Window.Curves
	b.DrawZone(g)
	focus := Simplified(b.Run(func(i int) float64 { return c.Focus[i] }))
	fg := g.Group("focus")
	fg.Title = "focus"
	fg.Add(draw.Path{Runs: focus, Stroke: b.FocusPen()})
	b.drawHolds(g.Group("holds"))
	b.drawLabels(g.Group("names"))
	b.drawArrivals(g.Group("arrivals"), slices.Concat(focus, b.Limits()))
}

// drawHolds draws over the focus where the plan holds it.
func (b *DistanceBand) drawHolds(g *draw.Group) {
	const over, clear = 2.2, 1.3 // millimetres
	w := b.Window
	for _, h := range b.Shot.Held {
		from, to := float64(h.Start), float64(h.End)
		if !w.Overlaps(from, to) {
			continue
		}
		first, last := w.before(from), w.before(to)
		y, limit := math.Inf(1), math.Inf(1)
		for i := first; i <= last; i++ {
			y, limit = min(y, b.Y(w.Curves.Focus[i])), min(limit, b.Y(w.Curves.Far[i]))
		}
		if math.Abs(y-over-limit) < clear {
			y = limit + over - clear // over the zone, and not on its limit
		}
		if y -= over; y < b.Top-over/2 {
			y += 2 * over // there is more room under it
		}
		signs.DrawHold(g, w.X(from), w.X(to), y, from >= w.from, to <= w.Ends())
	}
}

// before returns the last sample of the curves up to a time.
func (w *Window) before(t float64) int {
	i, found := slices.BinarySearch(w.Curves.T, t)
	if !found {
		i--
	}
	return min(max(i, 0), len(w.Curves.T)-1)
}

// FocusPen returns the stroke of the focus: it must not hide the zone round it.
func (b *DistanceBand) FocusPen() draw.Stroke {
	const thinZone = 1.2
	c := &b.Window.Curves
	for i := range c.T {
		if b.Depth.free(c.Near[i], b.Top, b.Height)-b.Depth.free(c.Far[i], b.Top, b.Height) >= thinZone {
			return draw.Solid(draw.Black, draw.FocusWidth)
		}
	}
	return draw.Solid(draw.Black, draw.WindowWidth)
}

// drawSubjects draws each subject as a band as thick as it is deep.
func (b *DistanceBand) drawSubjects(g *draw.Group) {
	for _, k := range b.Order {
		u := b.Shot.Subjects[k]
		along, half := b.Window.Curves.Distance[k], Deep(u)/2
		sg := g.Group("subject")
		sg.Title = u.Name
		if len(b.Window.Curves.T) == 0 {
			continue
		}
		if half > 0 {
			back := b.Run(func(i int) float64 { return along[i] + half })
			front := b.Run(func(i int) float64 { return along[i] - half })
			if len(back) == len(front) && (len(back) == 1 || b.Shot.Optics.Rig != nil) {
				for i := range back {
					sg.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(sheet.Simplify(back[i]), sheet.Simplify(front[i]))}, Closed: true, Fill: draw.Pale})
				}
			}
		}
		middle := b.Run(func(i int) float64 { return along[i] })
		sg.Add(draw.Path{Runs: Simplified(middle), Stroke: draw.Solid(draw.Mid, draw.SubjectWidth)})
	}
}

// drawLabels names the subjects in the gutter, each where it stands when the
// sheet starts.
func (b *DistanceBand) drawLabels(g *draw.Group) {
	var names []gutter.Label
	for _, k := range b.Order {
		u := b.Shot.Subjects[k]
		d := b.Window.Curves.Distance[k][0]
		first, second := sheet.Style(b.Shot).Both(d)
		if y := b.Y(d); !math.IsNaN(y) {
			names = append(names, gutter.Label{Name: u.Name, First: first, Second: second, Y: y})
		}
	}
	gutter.Draw(g, b.Left, names, b.Top-0.5, b.Top+b.Height+BandGap)
}

// drawArrivals writes where a walk ends, as far as there is room.
func (b *DistanceBand) drawArrivals(g *draw.Group, lines [][]draw.Point) {
	if len(b.Shot.Blocking) == 0 {
		return
	}
	c := b.Clearing(lines)
	b.WriteArrivals(g, &c, b.Shot.Blocking, "")
}

// Clearing returns the band as a plot for texts that keep off lines.
func (b *DistanceBand) Clearing(lines [][]draw.Point) sheet.Clearing {
	c := sheet.Clearing{Bounds: draw.Box{X: b.Left, Y: b.Top, W: b.Window.Right - b.Left, H: b.Height}}
	for _, run := range lines {
		c.Block(run, 1)
	}
	b.BlockTime(&c)
	for _, along := range b.Window.Curves.Distance {
		for _, run := range b.Run(func(i int) float64 { return along[i] }) {
			c.Avoid(sheet.Simplify(run))
		}
	}
	return c
}

// WriteArrivals writes where moves end, each after a label.
func (b *DistanceBand) WriteArrivals(g *draw.Group, c *sheet.Clearing, moves []plan.Blocking, label string) {
	for _, m := range moves {
		u := b.Shot.Subject(m.Who)
		t := float64(m.End)
		if u == nil || !b.Window.Holds(t) {
			continue
		}
		d := b.Shot.DistanceAt(u, t)
		text := draw.NewText(0, 0, label+u.Name+" "+sheet.Style(b.Shot).Tape(d), sheet.FontSmall, draw.Grey)
		at := draw.Point{X: b.Window.X(t), Y: b.Y(d)}
		if !math.IsNaN(at.Y) {
			c.WriteAnywhere(g, text, at)
		}
	}
}

// DrawScale draws the scale right of the band and writes its distances, in the plan's
// units.
func (b *DistanceBand) DrawScale(g *draw.Group) {
	x := b.Window.Right
	for _, m := range b.Ticks() {
		y := b.Y(m)
		g.Line(x, y, x+1.2, y, draw.Solid(draw.Black, draw.RulerWidth))
		g.Add(draw.NewText(x+1.8, y+sheet.FontSmall.Middle(), sheet.Style(b.Shot).Tape(m), sheet.FontSmall, draw.Grey))
	}
}

// tickPitch is how far distances are apart on the scale at least, millimetres.
const tickPitch = 4.5

// besideName reports whether a distance stands so near to a subject's that it would be
// taken for it.
func (b *DistanceBand) besideName(m float64) bool {
	const alike, apart = 0.05, 1.0
	return slices.ContainsFunc(b.Window.Curves.Distance, func(along []float64) bool {
		if len(along) == 0 {
			return false
		}
		off := math.Abs(b.Y(along[len(along)-1]) - b.Y(m))
		return off > alike && off < apart
	})
}

// Ticks returns the distances to write, in metres: the roundest that stand far
// enough apart, infinity first.
func (b *DistanceBand) Ticks() []float64 {
	return times.Distances(b.Shot.Imperial, b.Depth.Far, b.Depth.Near, func(m float64, ticks []float64) bool {
		return !b.besideName(m) && !slices.ContainsFunc(ticks, func(o float64) bool { return math.Abs(b.Y(o)-b.Y(m)) < tickPitch })
	})
}
