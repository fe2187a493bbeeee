// The band and its marks.

package hand

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/gutter"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A Mark is an angle at the hand that has a name.
type Mark struct {
	Name string
	Deg  float64
	tape float64 // metres as the tape reads
}

// subjectMarks returns a mark for each subject that always stands where it is
// at the start.
func subjectMarks(s *plan.Shot) []Mark {
	var marks []Mark
	for _, u := range s.Subjects {
		if bands.HasMark(s, u) {
			marks = append(marks, Mark{u.Name, float64(u.RingDeg * s.Gear), float64(u.Distance)})
		}
	}
	return marks
}

// Marks returns the marks of a window, each once: those that its moves leave
// and reach first, then those of the other subjects that stand.
func Marks(w *bands.Window) []Mark {
	var marks []Mark
	add := func(m Mark) {
		same := func(o Mark) bool { return o.Name == m.Name && math.Abs(o.Deg-m.Deg) < 0.75 }
		if sheet.Finite(m.Deg) && !slices.ContainsFunc(marks, same) {
			marks = append(marks, m)
		}
	}
	s := w.Shot
	if !turning(w, w.From()) { // else it is at nobody's mark
		add(resting(w))
	}
	for _, p := range s.Pulls {
		if w.Overlaps(float64(p.Start), float64(p.Land)) {
			add(Mark{sheet.TargetName(s, p.To, p.Target), float64(p.ToDeg * s.Gear), float64(p.ToM)})
		}
	}
	for _, m := range subjectMarks(s) {
		add(m)
	}
	return marks
}

// resting is the mark that the hand is at when the window begins.
func resting(w *bands.Window) Mark {
	s := w.Shot
	m := Mark{sheet.TargetName(s, s.Optics.Start.Name, s.Optics.Start.Text), w.Curves.Hand[0], s.ToTape(s.FocusAt(w.From()), w.From())}
	for _, p := range s.Pulls {
		if float64(p.Land) > w.From() {
			break
		}
		m.Name = sheet.TargetName(s, p.To, p.Target)
	}
	return m
}

// turning reports whether a pull is under way at t.
func turning(w *bands.Window, t float64) bool {
	return slices.ContainsFunc(w.Shot.Pulls, func(p *plan.Pull) bool {
		return float64(p.Start) < t && t < float64(p.Land)
	})
}

// Why there is no band.
const (
	Ringless    = "This lens has no ring that can be pulled by angle."
	ringUnknown = "Nothing says how far the ring of this lens turns: no angles."
)

// Section returns the band, or a line that says why there is none.
func Section(w *bands.Window) bands.Section {
	if w.Shot.Optics.Ring == nil {
		why := Ringless
		if w.Shot.RingUnknown() {
			why = ringUnknown
		}
		return bands.Section{Name: "hand", Least: bands.LaneHeight + 2, Most: bands.LaneHeight + 2, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
				sh.Open(g, top, "hand", "Hand")
				g.Add(draw.NewText(sh.Words(), top+bands.LaneHeight+1, why, sheet.FontNote, draw.Grey).Shortened(sh.Paper.W - sheet.Margin - sh.Words()))
			}}
	}
	n := float64(len(Marks(w)))
	least := min(max(19, n*gutter.LabelOne+1), 100) + bands.LaneHeight + bands.BandGap
	return bands.Section{Name: "hand", Least: least, Most: max(least, 60), OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Open(g, top, "hand", "Hand")
			b := Band{Leaf: sh, Top: top + bands.LaneHeight, Height: height - bands.LaneHeight - bands.BandGap}
			b.draw(g)
		}}
}

// A Band is the band on a sheet.
type Band struct {
	*bands.Leaf
	Top, Height float64
}

// Y returns where an angle stands, held to the band: near below, as the distances.
func (b *Band) Y(deg float64) float64 {
	return min(max(b.free(deg), b.Top), b.Top+b.Height)
}

// free returns where an angle stands, also outside the band.
func (b *Band) free(deg float64) float64 {
	return b.Top + (b.Turn.High-deg)/(b.Turn.High-b.Turn.Low)*b.Height
}

func (b *Band) draw(g *draw.Group) {
	b.drawMarks(g.Group("marks"))
	ends := g.Group("ends")
	raw := b.Path()
	runs := bands.Simplified(raw)
	path := g.Group("path")
	path.Title = "degrees at the hand"
	path.Add(draw.Path{Runs: runs, Stroke: draw.Solid(draw.Black, draw.HandWidth)})
	c := sheet.Clearing{Bounds: draw.Box{X: b.Left, Y: b.Top - 1, W: b.Window.Right - b.Left + bands.Apron, H: b.Height + 2}}
	for _, run := range runs {
		c.Block(run, draw.HandWidth+0.4)
	}
	b.BlockTime(&c)
	b.DrawEnds(ends, &c)
	for _, m := range Marks(b.Window) {
		c.Avoid([]draw.Point{{X: b.Left, Y: b.Y(m.Deg)}, {X: b.Window.Right, Y: b.Y(m.Deg)}})
	}
	for _, box := range Grips(path, runs) {
		c.Taken = append(c.Taken, box.Grow(0.6))
	}
	landings, speeds := g.Group("landings"), g.Group("speeds")
	b.drawLandings(landings, &c)
	for _, p := range b.Shot.Pulls {
		b.writePeak(speeds, &c, p)
	}
}

// drawMarks draws a guide for every mark and names it in the gutter.
func (b *Band) drawMarks(g *draw.Group) {
	var labels []gutter.Label
	for _, m := range Marks(b.Window) {
		y := b.Y(m.Deg)
		g.Line(b.Left, y, b.Window.Right, y, draw.Solid(draw.Guide, draw.GuideWidth))
		labels = append(labels, gutter.Label{Name: m.Name, First: sheet.Figures.Angle(m.Deg), Y: y})
		if l := &labels[len(labels)-1]; !math.IsNaN(m.tape) && sheet.Style(b.Shot).Tape(m.tape) != m.Name {
			l.Second = sheet.Style(b.Shot).Tape(m.tape)
		}
	}
	gutter.Draw(g, b.Left, labels, b.Top-0.5, b.Top+b.Height+bands.BandGap)
}

// Ends returns where the ring stops, in degrees at the hand; NaN for an end that nothing
// tells, or that lies beyond the band.
func (b *Band) Ends() (near, far float64) {
	near, far = math.NaN(), math.NaN()
	atClosest, atThrow := b.Shot.Optics.Ring.Stops()
	if atClosest && b.Turn.Low <= 0 {
		near = 0
	}
	if end := b.Shot.Optics.Ring.Throw() * float64(b.Shot.Gear); atThrow && end <= b.Turn.High {
		far = end
	}
	return near, far
}

// DrawEnds draws the ends of the ring across the band, hatched where the hand cannot go,
// and keeps texts off them.
func (b *Band) DrawEnds(g *draw.Group, c *sheet.Clearing) {
	near, far := b.Ends()
	left, right := b.Left, b.Window.Right
	if y := b.Y(near); !math.IsNaN(y) {
		signs.DrawStop(g, draw.Point{X: right, Y: y}, draw.Point{X: left, Y: y})
		c.Block([]draw.Point{{X: left, Y: y}, {X: right, Y: y}}, 2)
	}
	if y := b.Y(far); !math.IsNaN(y) {
		signs.DrawStop(g, draw.Point{X: left, Y: y}, draw.Point{X: right, Y: y})
		c.Block([]draw.Point{{X: left, Y: y}, {X: right, Y: y}}, 2)
	}
}

// Path returns the path of the hand, with a gap where it lets go.
func (b *Band) Path() [][]draw.Point {
	var out [][]draw.Point
	for _, run := range b.Window.Runs(func(i int) float64 { return b.Y(b.Window.Curves.Hand[i]) }) {
		for _, gap := range b.gaps() {
			head, tail := sheet.CutRun(run, gap[0], gap[1])
			if len(head) > 1 {
				out = append(out, head)
			}
			run = tail
		}
		if len(run) > 1 {
			out = append(out, run)
		}
	}
	return out
}

// gaps returns where the hand lets go, as ranges of x in order, each wide
// enough to be seen.
func (b *Band) gaps() [][2]float64 {
	const seen = 2.2
	var gaps [][2]float64
	for _, p := range b.Shot.Pulls {
		for _, t := range p.Grips {
			if !(t > b.Window.From() && t < b.Window.To()) || b.Window.Away(p) {
				continue
			}
			from := b.Window.X(t)
			gaps = append(gaps, [2]float64{from, max(b.Window.X(t+p.LostEach), from+seen)})
		}
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return int(math.Copysign(1, a[0]-b[0])) })
	return gaps
}

// Grips marks the gaps between the runs of a path, and returns the boxes of the
// marks.
func Grips(g *draw.Group, runs [][]draw.Point) (boxes []draw.Box) {
	for i := 1; i < len(runs); i++ {
		boxes = append(boxes, signs.DrawRegrip(g, runs[i-1][len(runs[i-1])-1], runs[i][0]))
	}
	return boxes
}

// peakLeast is how high a move is at least beside which its greatest speed stands,
// millimetres.
const peakLeast = 8.0

// writePeak writes the greatest speed of a move in the middle of it, if there is room
// beside it; the table has it too.
func (b *Band) writePeak(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	t := (float64(p.Start) + float64(p.Land)) / 2
	if !p.Peak.Known() || !b.Window.Holds(t) || p.Kind == "follow" || b.Window.Away(p) {
		return
	}
	if high := b.free(float64(p.FromDeg*b.Shot.Gear)) - b.free(float64(p.ToDeg*b.Shot.Gear)); !(math.Abs(high) >= peakLeast) {
		return
	}
	at := draw.Point{X: b.Window.X(t), Y: b.Y(b.Shot.HandAt(t))}
	if !math.IsNaN(at.Y) {
		c.Write(g, draw.NewText(0, 0, sheet.Figures.Speed(float64(p.Peak)), sheet.FontSmall, draw.Grey), at)
	}
}
