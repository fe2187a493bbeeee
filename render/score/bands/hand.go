// The fourth band of a score: what the hand does, in degrees at the hand.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/gutter"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A TurnScale is the range of degrees at the hand that the band shows.
type TurnScale struct{ Low, High float64 }

func newTurnScale(sc *Chart) TurnScale {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(deg float64) {
		if sheet.Finite(deg) {
			lo, hi = min(lo, deg), max(hi, deg)
		}
	}
	for _, w := range sc.Windows {
		for _, deg := range w.Curves.hand {
			take(deg)
		}
	}
	for _, m := range subjectMarks(sc.Shot) {
		take(m.Deg)
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	pad := max(0.1*(hi-lo), 1)
	lo, hi = lo-pad, hi+pad
	for most, p := hi-lo, 0; p < len(sc.Shot.Pulls); p++ { // windows, as far as they do not squeeze the rest
		for _, end := range sc.Shot.Pulls[p].WindowHand {
			if deg := float64(end); sheet.Finite(deg) && max(hi, deg)-min(lo, deg) <= 2*most {
				lo, hi = min(lo, deg-pad/4), max(hi, deg+pad/4)
			}
		}
	}
	return TurnScale{lo, hi}
}

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
		if u.RingDeg.Known() && !sheet.Moves(s, u) {
			marks = append(marks, Mark{u.Name, float64(u.RingDeg * s.Gear), float64(u.Distance)})
		}
	}
	return marks
}

// Marks returns the marks of a window, each once: those that its moves leave
// and reach first, then those of the other subjects that stand.
func (w *Window) Marks() []Mark {
	var marks []Mark
	add := func(m Mark) {
		same := func(o Mark) bool { return o.Name == m.Name && math.Abs(o.Deg-m.Deg) < 0.75 }
		if sheet.Finite(m.Deg) && !slices.ContainsFunc(marks, same) {
			marks = append(marks, m)
		}
	}
	s := w.Shot
	if !w.turning(w.from) { // else it is at nobody's mark
		add(w.resting())
	}
	for _, p := range s.Pulls {
		if w.overlaps(float64(p.Start), float64(p.Land)) {
			add(Mark{sheet.TargetName(s, p.To, p.Target), float64(p.ToDeg * s.Gear), float64(p.ToM)})
		}
	}
	for _, m := range subjectMarks(s) {
		add(m)
	}
	return marks
}

// resting is the mark that the hand is at when the window begins.
func (w *Window) resting() Mark {
	s := w.Shot
	m := Mark{sheet.TargetName(s, s.Optics.Start.Name, s.Optics.Start.Text), w.Curves.hand[0], s.ToTape(s.FocusAt(w.from), w.from)}
	for _, p := range s.Pulls {
		if float64(p.Land) > w.from {
			break
		}
		m.Name = sheet.TargetName(s, p.To, p.Target)
	}
	return m
}

// turning reports whether a pull is under way at t.
func (w *Window) turning(t float64) bool {
	return slices.ContainsFunc(w.Shot.Pulls, func(p *plan.Pull) bool {
		return float64(p.Start) < t && t < float64(p.Land)
	})
}

// Why there is no band.
const (
	Ringless    = "This lens has no ring that can be pulled by angle."
	ringUnknown = "Nothing says how far the ring of this lens turns: no angles."
)

// HandBand returns the band, or a line that says why there is none.
func (w *Window) HandBand() Section {
	if w.Shot.Optics.Ring == nil {
		why := Ringless
		if w.Shot.RingUnknown() {
			why = ringUnknown
		}
		return Section{Name: "hand", Least: LaneHeight + 2, Most: LaneHeight + 2, OverTime: true,
			Draw: func(sh *Leaf, g *draw.Group, top, _ float64) {
				sh.Open(g, top, "hand", "Hand")
				g.Add(draw.NewText(sh.Words(), top+LaneHeight+1, why, sheet.FontNote, draw.Grey).Shortened(sh.Paper.W - sheet.Margin - sh.Words()))
			}}
	}
	n := float64(len(w.Marks()))
	least := min(max(19, n*gutter.LabelOne+1), 100) + LaneHeight + BandGap
	return Section{Name: "hand", Least: least, Most: max(least, 60), OverTime: true,
		Draw: func(sh *Leaf, g *draw.Group, top, height float64) {
			sh.Open(g, top, "hand", "Hand")
			b := HandBand{Leaf: sh, Top: top + LaneHeight, Height: height - LaneHeight - BandGap}
			b.draw(g)
		}}
}

// A HandBand is the band on a sheet.
type HandBand struct {
	*Leaf
	Top, Height float64
}

// Y returns where an angle stands, held to the band: near below, as the distances.
func (b *HandBand) Y(deg float64) float64 {
	return min(max(b.free(deg), b.Top), b.Top+b.Height)
}

// free returns where an angle stands, also outside the band.
func (b *HandBand) free(deg float64) float64 {
	return b.Top + (b.Turn.High-deg)/(b.Turn.High-b.Turn.Low)*b.Height
}

func (b *HandBand) draw(g *draw.Group) {
	b.drawMarks(g.Group("marks"))
	ends := g.Group("ends")
	raw := b.Path()
	runs := Simplified(raw)
	path := g.Group("path")
	path.Title = "degrees at the hand"
	path.Add(draw.Path{Runs: runs, Stroke: draw.Solid(draw.Black, draw.HandWidth)})
	c := sheet.Clearing{Bounds: draw.Box{X: b.Left, Y: b.Top - 1, W: b.Window.Right - b.Left + Apron, H: b.Height + 2}}
	for _, run := range runs {
		c.Block(run, draw.HandWidth+0.4)
	}
	b.blockTime(&c)
	b.DrawEnds(ends, &c)
	for _, m := range b.Window.Marks() {
		c.Avoid([]draw.Point{{X: b.Left, Y: b.Y(m.Deg)}, {X: b.Window.Right, Y: b.Y(m.Deg)}})
	}
	for _, box := range GripsBetween(path, runs) {
		c.Taken = append(c.Taken, box.Grow(0.6))
	}
	landings, speeds := g.Group("landings"), g.Group("speeds")
	b.drawLandings(landings, &c)
	for _, p := range b.Shot.Pulls {
		b.writePeak(speeds, &c, p)
	}
}

// drawMarks draws a guide for every mark and names it in the gutter.
func (b *HandBand) drawMarks(g *draw.Group) {
	var labels []gutter.Label
	for _, m := range b.Window.Marks() {
		y := b.Y(m.Deg)
		g.Line(b.Left, y, b.Window.Right, y, draw.Solid(draw.Guide, draw.GuideWidth))
		labels = append(labels, gutter.Label{Name: m.Name, First: sheet.Figures.Angle(m.Deg), Y: y})
		if l := &labels[len(labels)-1]; !math.IsNaN(m.tape) && sheet.Style(b.Shot).Tape(m.tape) != m.Name {
			l.Second = sheet.Style(b.Shot).Tape(m.tape)
		}
	}
	gutter.Draw(g, b.Left, labels, b.Top-0.5, b.Top+b.Height+BandGap)
}

// Ends returns where the ring stops, in degrees at the hand; NaN for an end that nothing
// tells, or that lies beyond the band.
func (b *HandBand) Ends() (near, far float64) {
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
func (b *HandBand) DrawEnds(g *draw.Group, c *sheet.Clearing) {
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
func (b *HandBand) Path() [][]draw.Point {
	var out [][]draw.Point
	for _, run := range runsOf(b.Window, func(i int) float64 { return b.Y(b.Window.Curves.hand[i]) }) {
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
func (b *HandBand) gaps() [][2]float64 {
	const seen = 2.2
	var gaps [][2]float64
	for _, p := range b.Shot.Pulls {
		for _, t := range p.Grips {
			if !(t > b.Window.from && t < b.Window.to) || b.Window.away(p) {
				continue
			}
			from := b.Window.X(t)
			gaps = append(gaps, [2]float64{from, max(b.Window.X(t+p.LostEach), from+seen)})
		}
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return int(math.Copysign(1, a[0]-b[0])) })
	return gaps
}

// GripsBetween marks the gaps between the runs of a path, and returns the boxes of the
// marks.
func GripsBetween(g *draw.Group, runs [][]draw.Point) (boxes []draw.Box) {
	for i := 1; i < len(runs); i++ {
		boxes = append(boxes, signs.DrawRegrip(g, runs[i-1][len(runs[i-1])-1], runs[i][0]))
	}
	return boxes
}

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
func (b *HandBand) Landing(p *plan.Pull) (l Landing, ok bool) {
	lo, hi := float64(p.WindowHand[0]), float64(p.WindowHand[1])
	if !b.Window.Holds(float64(p.Land)) || !(lo <= hi) || !sheet.Finite(hi-lo) {
		return l, false
	}
	upper, lower := b.free(hi), b.free(lo)
	l = Landing{Upper: b.Y(hi), Lower: b.Y(lo), Pull: p.Number, Above: upper < b.Top-on, Below: lower > b.Top+b.Height+on}
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
func (b *HandBand) drawLandings(g *draw.Group, c *sheet.Clearing) {
	const clear = 0.6 // between a text and a window
	var widths []func()
	for _, p := range b.Shot.Pulls {
		l, ok := b.Landing(p)
		if !ok || p.Kind == "follow" || b.Window.away(p) {
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

// peakLeast is how high a move is at least beside which its greatest speed stands,
// millimetres.
const peakLeast = 8.0

// writePeak writes the greatest speed of a move in the middle of it, if there is room
// beside it; the table has it too.
func (b *HandBand) writePeak(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	t := (float64(p.Start) + float64(p.Land)) / 2
	if !p.Peak.Known() || !b.Window.Holds(t) || p.Kind == "follow" || b.Window.away(p) {
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
