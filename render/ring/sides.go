// The two lines of a mark where the ring has play: one to land on when the mark is come
// to from near, its triangle pointing towards infinity, and one for the way back.

package ring

import (
	"fmt"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

const (
	linesApart = 0.6                   // millimetres; two lines that are nearer are drawn as one
	sideLong   = 0.9                   // of a triangle, from its line to its tip
	sideHalf   = 0.5                   // and half of its other side
	sideZone   = 2*sideHalf + 0.3      // for triangles, clear of the windows
	sideTick   = dialTick + 2*sideHalf // of the two lines on a disc
)

// sayPlay tells what the two lines of a mark are, or how large the play is where one
// serves.
func sayPlay(h *sheet.Handout, list []marks.Mark, two func(marks.Mark) bool) {
	played := func(m marks.Mark) bool { return m.Sides[0] < m.Sides[1] }
	if !slices.ContainsFunc(list, played) {
		return
	}
	play := float64(h.Shot.Ring.Play)
	text := fmt.Sprintf("This ring has %s of play, too little for two lines to a mark. Come from near, go %s beyond the mark; come from far, as much to its other side.",
		sheet.Figures.Angle(play), sheet.Figures.Angle(play/2))
	if slices.ContainsFunc(list, two) {
		text = fmt.Sprintf("Two lines to a mark, for the ring has %s of play. Come from near, land on the line whose triangle points towards infinity; come from far, on the other.",
			sheet.Figures.Angle(play))
		if slices.ContainsFunc(list, func(m marks.Mark) bool { return played(m) && !two(m) }) {
			text += fmt.Sprintf(" Where two would be nearer than %s mm, one is drawn.", sheet.Figures.Number(linesApart, 1))
		}
	}
	h.Say(text, sheet.FontNote, draw.Black)
}

// sides returns where on the strip a mark lies come to from far, and from near. two is
// false where one line serves.
func (st *strip) sides(m marks.Mark) (at [2]float64, two bool) {
	for i, deg := range m.Sides {
		at[i] = min(max(st.at(deg), -lead+sideLong), st.length+tail-sideLong)
	}
	return at, math.Abs(at[1]-at[0]) >= linesApart
}

// anyTwo reports whether some mark has two lines.
func (st *strip) anyTwo() bool {
	return slices.ContainsFunc(st.marks, func(m stripMark) bool { return m.two })
}

// shows reports whether some of a mark lies on the piece.
func (p *piece) shows(m *stripMark) bool {
	return p.holds(m.at) || m.two && (p.holds(m.sides[0]) || p.holds(m.sides[1]))
}

// drawSides draws what lies on the piece of a mark's two lines, each with its triangle,
// and the line that joins them.
func (t *tape) drawSides(g *draw.Group, m *stripMark) {
	foot := t.top + t.ticks
	ahead := math.Copysign(sideLong, m.sides[1]-m.sides[0])
	for i, tip := range []float64{-ahead, ahead} {
		if !t.holds(m.sides[i]) {
			continue
		}
		x, y := t.x(m.sides[i]), foot-sideHalf
		g.Line(x, t.top, x, foot, tick(m.Mark, tickWidth))
		g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y - sideHalf}, {X: x + tip, Y: y}, {X: x, Y: y + sideHalf}}}, Closed: true, Fill: m.Ink()})
	}
	from, to := max(min(m.sides[0], m.sides[1]), t.from), min(max(m.sides[0], m.sides[1]), t.to)
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: t.x(from), Y: foot}, {X: t.x(to), Y: foot}}}, Stroke: sheet.Solid(m.Ink(), sheet.Hair)})
}

// two reports whether a mark has two lines on the disc: whether they are far enough apart
// on the turn that they stand on.
func (d *dial) two(m marks.Mark) bool {
	apart := d.hand(m.Sides[1]-m.Sides[0]) * math.Pi / 180
	return apart*d.track(d.hand(m.Deg)) >= linesApart
}

// drawSides draws a mark's two lines, each with its triangle, and the line that joins them.
func (d *dial) drawSides(g *draw.Group, m marks.Mark) {
	for i, ahead := range []float64{-1, 1} {
		run := d.line(m.Sides[i], sideTick)
		g.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, tick(m, tickWidth))
		g.Add(draw.Path{Runs: [][]draw.Point{d.triangle(m.Sides[i], ahead)}, Closed: true, Fill: m.Ink()})
	}
	g.Add(draw.Path{Runs: [][]draw.Point{d.arc(d.hand(m.Sides[0]), d.hand(m.Sides[1]), d.size(sideTick))}, Stroke: sheet.Solid(m.Ink(), sheet.Hair)})
}

// triangle is that at a line: ahead is 1 where it points towards infinity, else -1.
func (d *dial) triangle(ring, ahead float64) []draw.Point {
	deg := d.hand(ring)
	r := d.track(deg) - d.size(sideTick-sideHalf)
	tip := deg + ahead*d.size(sideLong)/max(r, 1)*180/math.Pi
	return []draw.Point{d.point(deg, r+d.size(sideHalf)), d.point(tip, r), d.point(deg, r-d.size(sideHalf))}
}

// keepSidesClear keeps texts off the two lines of a mark and their triangles.
func (d *dial) keepSidesClear(c *sheet.Clearing, m marks.Mark) {
	for i, ahead := range []float64{-1, 1} {
		c.Block(d.line(m.Sides[i], sideTick), 0.6)
		c.Block(d.triangle(m.Sides[i], ahead), 0.4)
	}
}
