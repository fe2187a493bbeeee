// The fourth band of a score: what the hand does, in degrees at the hand.

package score

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A turnScale is the range of degrees at the hand that the band shows.
type turnScale struct{ low, high float64 }

func newTurnScale(sc *score) turnScale {
	lo, hi := math.Inf(1), math.Inf(-1)
	take := func(deg float64) {
		if sheet.Finite(deg) {
			lo, hi = min(lo, deg), max(hi, deg)
		}
	}
	for _, w := range sc.windows {
		for _, deg := range w.curves.hand {
			take(deg)
		}
	}
	for _, m := range subjectMarks(sc.shot) {
		take(m.deg)
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	pad := max(0.08*(hi-lo), 1)
	return turnScale{lo - pad, hi + pad}
}

// A mark is an angle at the hand that has a name.
type mark struct {
	name string
	deg  float64
	tape float64 // metres as the tape reads
}

// subjectMarks returns a mark for each subject that always stands where it is
// at the start.
func subjectMarks(s *plan.Shot) []mark {
	var marks []mark
	for _, u := range s.Subjects {
		if u.RingDeg.Known() && !sheet.Moves(s, u) {
			marks = append(marks, mark{u.Name, float64(u.RingDeg * s.Gear), float64(u.Distance)})
		}
	}
	return marks
}

// marks returns the marks of a window, each once: those that its moves leave
// and reach first, then those of the other subjects that stand.
func (w *window) marks() []mark {
	var marks []mark
	add := func(m mark) {
		same := func(o mark) bool { return o.name == m.name && math.Abs(o.deg-m.deg) < 0.75 }
		if sheet.Finite(m.deg) && !slices.ContainsFunc(marks, same) {
			marks = append(marks, m)
		}
	}
	s := w.shot
	if !w.turning(w.from) { // else it is at nobody's mark
		add(w.resting())
	}
	for _, p := range s.Pulls {
		if w.overlaps(float64(p.Start), float64(p.Land)) {
			add(mark{sheet.TargetName(s, p.To, p.Target), float64(p.ToDeg * s.Gear), float64(p.ToM)})
		}
	}
	for _, m := range subjectMarks(s) {
		add(m)
	}
	return marks
}

// resting is the mark that the hand is at when the window begins.
func (w *window) resting() mark {
	s := w.shot
	m := mark{sheet.TargetName(s, s.Optics.Start.Name, s.Optics.Start.Text), w.curves.hand[0], s.ToTape(s.FocusAt(w.from), w.from)}
	for _, p := range s.Pulls {
		if float64(p.Land) > w.from {
			break
		}
		m.name = sheet.TargetName(s, p.To, p.Target)
	}
	return m
}

// turning reports whether a pull is under way at t.
func (w *window) turning(t float64) bool {
	return slices.ContainsFunc(w.shot.Pulls, func(p *plan.Pull) bool {
		return float64(p.Start) < t && t < float64(p.Land)
	})
}

// Why there is no band.
const (
	ringless    = "This lens has no ring that can be pulled by angle."
	ringUnknown = "Nothing says how far the ring of this lens turns: no angles."
)

// handBand returns the band, or a line that says why there is none.
func (w *window) handBand() section {
	if w.shot.Optics.Ring == nil {
		why := ringless
		if w.shot.RingUnknown() {
			why = ringUnknown
		}
		return section{name: "hand", least: laneHeight + 2, most: laneHeight + 2, overTime: true,
			draw: func(sh *leaf, g *draw.Group, top, _ float64) {
				sh.open(g, top, "hand", "Hand")
				g.Add(draw.NewText(sh.left, top+laneHeight+1, why, sheet.FontNote, draw.Grey))
			}}
	}
	n := float64(len(w.marks()))
	least := min(max(20, n*labelOne+1), 100) + laneHeight + bandGap
	return section{name: "hand", least: least, most: max(least, 46), overTime: true,
		draw: func(sh *leaf, g *draw.Group, top, height float64) {
			sh.open(g, top, "hand", "Hand")
			b := handBand{leaf: sh, top: top + laneHeight, height: height - laneHeight - bandGap}
			b.draw(g)
		}}
}

// A handBand is the band on a sheet.
type handBand struct {
	*leaf
	top, height float64
}

// y returns where an angle stands: near below, as the distances.
func (b *handBand) y(deg float64) float64 {
	share := (b.turn.high - deg) / (b.turn.high - b.turn.low)
	if math.IsNaN(share) {
		return share
	}
	return b.top + min(max(share, 0), 1)*b.height
}

func (b *handBand) draw(g *draw.Group) {
	b.drawMarks(g.Group("marks"))
	runs := simplified(b.path())
	path := g.Group("path")
	path.Title = "degrees at the hand"
	path.Add(draw.Path{Runs: runs, Stroke: sheet.Solid(draw.Black, sheet.Heavy)})
	c := sheet.Clearing{Bounds: draw.Box{X: b.left, Y: b.top - 1, W: b.right - b.left + apron, H: b.height + 2}}
	for _, run := range runs {
		c.Block(run, sheet.Heavy+0.4)
	}
	b.blockTime(&c)
	for _, m := range b.window.marks() {
		c.Avoid([]draw.Point{{X: b.left, Y: b.y(m.deg)}, {X: b.right, Y: b.y(m.deg)}})
	}
	gripsBetween(path, runs)
	landings, speeds := g.Group("landings"), g.Group("speeds")
	for _, p := range b.shot.Pulls {
		if p.Kind != "follow" {
			b.drawLanding(landings, &c, p)
		}
	}
	for _, p := range b.shot.Pulls {
		b.writePeak(speeds, &c, p)
	}
}

// drawMarks draws a dashed line for every mark and names it in the gutter.
func (b *handBand) drawMarks(g *draw.Group) {
	var labels []gutterLabel
	for _, m := range b.window.marks() {
		y := b.y(m.deg)
		g.Line(b.left, y, b.right, y, sheet.Dashed(draw.Mid, sheet.Hair, 1.2, 1.2))
		labels = append(labels, gutterLabel{name: m.name, first: sheet.Figures.Angle(m.deg), y: y})
		if l := &labels[len(labels)-1]; !math.IsNaN(m.tape) && sheet.Style(b.shot).Tape(m.tape) != m.name {
			l.second = sheet.Style(b.shot).Tape(m.tape)
		}
	}
	b.gutterLabels(g, labels, b.top-0.5, b.top+b.height+bandGap)
}

// path returns the path of the hand, with a gap where it lets go.
func (b *handBand) path() [][]draw.Point {
	var out [][]draw.Point
	for _, run := range runsOf(b.window, func(i int) float64 { return b.y(b.window.curves.hand[i]) }) {
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
func (b *handBand) gaps() [][2]float64 {
	const seen = 1.3
	var gaps [][2]float64
	for _, p := range b.shot.Pulls {
		for _, t := range p.Grips {
			if !(t > b.window.from && t < b.window.to) {
				continue
			}
			from := b.window.x(t)
			gaps = append(gaps, [2]float64{from, max(b.window.x(t+p.LostEach), from+seen)})
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
				head = append(head, pointAt(q, p, from))
			}
			if q.X < to && p.X > to {
				tail = append(tail, pointAt(q, p, to))
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

func pointAt(p, q draw.Point, x float64) draw.Point {
	return draw.Point{X: x, Y: p.Y + (q.Y-p.Y)*(x-p.X)/(q.X-p.X)}
}

// gripsBetween marks the gaps between the runs of a path.
func gripsBetween(g *draw.Group, runs [][]draw.Point) {
	for i := 1; i < len(runs); i++ {
		gripEnds(g, runs[i-1][len(runs[i-1])-1], runs[i][0])
	}
}

// gripEnds marks both sides of a gap.
func gripEnds(g *draw.Group, p, q draw.Point) {
	for _, end := range []draw.Point{p, q} {
		g.Add(draw.Disc{Centre: end, Radius: 0.62, Fill: draw.Paper, Stroke: sheet.Solid(draw.Black, sheet.Thin)})
	}
}

// bracketOff is how far from the landing its bracket stands.
const bracketOff = 1.4

// landing returns between what heights the bracket of a landing stands, if it
// has one on the sheet. A window too small to be seen is drawn larger. Where
// nothing lands there is no window, or one with its ends the wrong way round.
func (b *handBand) landing(p *plan.Pull) (upper, lower float64, ok bool) {
	lo, hi := float64(p.WindowHand[0]), float64(p.WindowHand[1])
	if !b.window.holds(float64(p.Land)) || !(lo <= hi) || !sheet.Finite(hi-lo) {
		return 0, 0, false
	}
	const least = 2.6
	upper, lower = b.y(hi), b.y(lo)
	if room := least - (lower - upper); room > 0 {
		upper, lower = upper-room/2, lower+room/2
	}
	return upper, lower, true
}

// drawLanding draws the window of a landing as a bracket and writes how wide it
// truly is.
func (b *handBand) drawLanding(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	upper, lower, ok := b.landing(p)
	if !ok {
		return
	}
	x := b.window.x(float64(p.Land)) + bracketOff
	bracket(g, x, upper, lower, !p.OpenFar, !p.OpenNear)
	c.Taken = append(c.Taken, draw.Box{X: x - 1, Y: upper, W: 1.2, H: lower - upper}.Grow(0.2))
	text := draw.NewText(0, 0, sheet.WindowWidth(p), sheet.FontSmall, draw.Black)
	c.Write(g, text, draw.Point{X: x, Y: (upper + lower) / 2})
}

// bracketArm is how long the arms of a bracket are.
const bracketArm = 1.0

// bracket draws a square bracket that holds what is left of it. An end that a
// stop of the ring bounds has no arm.
func bracket(g *draw.Group, x, upper, lower float64, top, bottom bool) {
	g.Add(draw.Path{Runs: [][]draw.Point{bracketRun(x, upper, lower, -bracketArm, top, bottom)}, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
}

// bracketRun returns the run of a bracket whose arms reach to x + arm.
func bracketRun(x, upper, lower, arm float64, top, bottom bool) []draw.Point {
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
func (b *handBand) writePeak(g *draw.Group, c *sheet.Clearing, p *plan.Pull) {
	t := (float64(p.Start) + float64(p.Land)) / 2
	if !p.Peak.Known() || !b.window.holds(t) || p.Kind == "follow" {
		return
	}
	at := draw.Point{X: b.window.x(t), Y: b.y(b.shot.HandAt(t))}
	if !math.IsNaN(at.Y) {
		c.Write(g, draw.NewText(0, 0, sheet.Figures.Speed(float64(p.Peak)), sheet.FontSmall, draw.Grey), at)
	}
}
