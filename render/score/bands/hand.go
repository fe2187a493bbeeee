// The fourth band of a score: what the hand does, in degrees at the hand.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
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
	pad := max(0.08*(hi-lo), 1)
	return TurnScale{lo - pad, hi + pad}
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
				g.Add(draw.NewText(sh.Left, top+LaneHeight+1, why, sheet.FontNote, draw.Grey))
			}}
	}
	n := float64(len(w.Marks()))
	least := min(max(20, n*LabelOne+1), 100) + LaneHeight + BandGap
	return Section{Name: "hand", Least: least, Most: max(least, 46), OverTime: true,
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

// Y returns where an angle stands: near below, as the distances.
func (b *HandBand) Y(deg float64) float64 {
	share := (b.Turn.High - deg) / (b.Turn.High - b.Turn.Low)
	if math.IsNaN(share) {
		return share
	}
	return b.Top + min(max(share, 0), 1)*b.Height
}

func (b *HandBand) draw(g *draw.Group) {
	b.drawMarks(g.Group("marks"))
	runs := Simplified(b.Path())
	path := g.Group("path")
	path.Title = "degrees at the hand"
	path.Add(draw.Path{Runs: runs, Stroke: sheet.Solid(draw.Black, sheet.Heavy)})
	c := sheet.Clearing{Bounds: draw.Box{X: b.Left, Y: b.Top - 1, W: b.Right - b.Left + Apron, H: b.Height + 2}}
	for _, run := range runs {
		c.Block(run, sheet.Heavy+0.4)
	}
	b.blockTime(&c)
	for _, m := range b.Window.Marks() {
		c.Avoid([]draw.Point{{X: b.Left, Y: b.Y(m.Deg)}, {X: b.Right, Y: b.Y(m.Deg)}})
	}
	GripsBetween(path, runs)
	landings, speeds := g.Group("landings"), g.Group("speeds")
	for _, p := range b.Shot.Pulls {
		if p.Kind != "follow" {
			b.drawLanding(landings, &c, p)
		}
	}
	for _, p := range b.Shot.Pulls {
		b.writePeak(speeds, &c, p)
	}
}

// drawMarks draws a dashed line for every mark and names it in the gutter.
func (b *HandBand) drawMarks(g *draw.Group) {
	var labels []GutterLabel
	for _, m := range b.Window.Marks() {
		y := b.Y(m.Deg)
		g.Line(b.Left, y, b.Right, y, sheet.Dashed(draw.Mid, sheet.Hair, 1.2, 1.2))
		labels = append(labels, GutterLabel{Name: m.Name, First: sheet.Figures.Angle(m.Deg), Y: y})
		if l := &labels[len(labels)-1]; !math.IsNaN(m.tape) && sheet.Style(b.Shot).Tape(m.tape) != m.Name {
			l.Second = sheet.Style(b.Shot).Tape(m.tape)
		}
	}
	b.GutterLabels(g, labels, b.Top-0.5, b.Top+b.Height+BandGap)
}

// Path returns the path of the hand, with a gap where it lets go.
func (b *HandBand) Path() [][]draw.Point {
	var out [][]draw.Point
	for _, run := range runsOf(b.Window, func(i int) float64 { return b.Y(b.Window.Curves.hand[i]) }) {
		for _, gap := range b.gaps() {
			head, tail := cutRun(run, gap[0], gap[1])
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
	const seen = 1.3
	var gaps [][2]float64
	for _, p := range b.Shot.Pulls {
		for _, t := range p.Grips {
			if !(t > b.Window.from && t < b.Window.to) {
				continue
			}
			from := b.Window.X(t)
			gaps = append(gaps, [2]float64{from, max(b.Window.X(t+p.LostEach), from+seen)})
		}
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return int(math.Copysign(1, a[0]-b[0])) })
	return gaps
}

// cutRun returns what of a run lies before from and what lies after to.
func cutRun(run []draw.Point, from, to float64) (head, tail []draw.Point) {
	for i, p := range run {
		if i > 0 {
			q := run[i-1]
			if q.X < from && p.X > from {
				head = append(head, PointAt(q, p, from))
			}
			if q.X < to && p.X > to {
				tail = append(tail, PointAt(q, p, to))
			}
		}
		if p.X <= from {
			head = append(head, p)
		}
		if p.X >= to {
			tail = append(tail, p)
		}
	}
	return head, tail
}

// PointAt returns where the line from p to q is at x.
func PointAt(p, q draw.Point, x float64) draw.Point {
	return draw.Point{X: x, Y: p.Y + (q.Y-p.Y)*(x-p.X)/(q.X-p.X)}
}

// GripsBetween marks the gaps between the runs of a path.
func GripsBetween(g *draw.Group, runs [][]draw.Point) {
	for i := 1; i < len(runs); i++ {
		GripEnds(g, runs[i-1][len(runs[i-1])-1], runs[i][0])
	}
}

// GripEnds marks both sides of a gap.
func GripEnds(g *draw.Group, p, q draw.Point) {
	for _, end := range []draw.Point{p, q} {
		g.Add(draw.Disc{Centre: end, Radius: 0.62, Fill: draw.Paper, Stroke: sheet.Solid(draw.Black, sheet.Thin)})
	}
}

// bracketOff is how far from the landing its bracket stands.
const BracketOff = 1.4

// Landing returns between what heights the bracket of a landing stands, if it
// has one on the sheet. A window too small to be seen is drawn larger. Where
// nothing lands there is no window, or one with its ends the wrong way round.
func (b *HandBand) Landing(p *plan.Pull) (upper, lower float64, ok bool) {
	lo, hi := float64(p.WindowHand[0]), float64(p.WindowHand[1])
	if !b.Window.Holds(float64(p.Land)) || !(lo <= hi) || !sheet.Finite(hi-lo) {
		return 0, 0, false
	}
	const least = 2.6
	upper, lower = b.Y(hi), b.Y(lo)
	if room := least - (lower - upper); room > 0 {
		upper, lower = upper-room/2, lower+room/2
	}
	return upper, lower, true
}

// drawLanding draws the window of a landing as a bracket and writes how wide it
// truly is.
func (b *HandBand) drawLanding(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	upper, lower, ok := b.Landing(p)
	if !ok {
		return
	}
	x := b.Window.X(float64(p.Land)) + BracketOff
	Bracket(g, x, upper, lower, !p.OpenFar, !p.OpenNear)
	c.Taken = append(c.Taken, draw.Box{X: x - 1, Y: upper, W: 1.2, H: lower - upper}.Grow(0.2))
	text := draw.NewText(0, 0, sheet.WindowWidth(p), sheet.FontSmall, draw.Black)
	c.Write(g, text, draw.Point{X: x, Y: (upper + lower) / 2})
}

// bracketArm is how long the arms of a bracket are.
const BracketArm = 1.0

// Bracket draws a square bracket that holds what is left of it. An end that a
// stop of the ring bounds has no arm.
func Bracket(g *draw.Group, x, upper, lower float64, top, bottom bool) {
	g.Add(draw.Path{Runs: [][]draw.Point{BracketRun(x, upper, lower, -BracketArm, top, bottom)}, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
}

// BracketRun returns the run of a bracket whose arms reach to x + arm.
func BracketRun(x, upper, lower, arm float64, top, bottom bool) []draw.Point {
	run := []draw.Point{{X: x, Y: upper}, {X: x, Y: lower}}
	if top {
		run = append([]draw.Point{{X: x + arm, Y: upper}}, run...)
	}
	if bottom {
		run = append(run, draw.Point{X: x + arm, Y: lower})
	}
	return run
}

// writePeak writes the greatest speed of a move in the middle of it, where it
// is reached.
func (b *HandBand) writePeak(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	t := (float64(p.Start) + float64(p.Land)) / 2
	if !p.Peak.Known() || !b.Window.Holds(t) || p.Kind == "follow" {
		return
	}
	at := draw.Point{X: b.Window.X(t), Y: b.Y(b.Shot.HandAt(t))}
	if !math.IsNaN(at.Y) {
		c.Write(g, draw.NewText(0, 0, sheet.Figures.Speed(float64(p.Peak)), sheet.FontSmall, draw.Grey), at)
	}
}
