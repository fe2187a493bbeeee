// The two lines of a mark where the ring has play: one to land on when the mark is come
// to from near, its triangle pointing towards infinity, and one for the way back.

package ring

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

const (
	linesApart = 0.6              // millimetres; two lines that are nearer are drawn as one
	sideLong   = 0.9              // of a triangle, from its line to its tip
	sideHalf   = 0.5              // and half of its other side
	sideZone   = 2*sideHalf + 0.3 // for triangles, clear of the windows
)

// playText tells what the two lines of a mark are, or how large the play is where one
// serves; "" where the ring has none.
func playText(shot *plan.Shot, list []marks.Mark) string {
	if !slices.ContainsFunc(list, func(m marks.Mark) bool { return m.Sides[0] < m.Sides[1] }) {
		return ""
	}
	play := float64(shot.Ring.Play)
	return fmt.Sprintf("The ring has %s of play. Come from near, land on the line whose triangle points towards infinity; come from far, on the other. "+
		"Where two would be nearer than %s mm one is drawn: go %s beyond it.",
		sheet.Figures.Angle(play), sheet.Figures.Number(linesApart, 1), sheet.Figures.Angle(play/2))
}

// sides returns where on the strip a mark lies come to from far, and from near. two is
// false where one line serves.
func (st *strip) sides(m marks.Mark) (at [2]float64, two bool) {
	for i, deg := range m.Sides {
		at[i] = min(max(st.at(deg), -endRoom+sideLong), st.length+endRoom-sideLong)
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
	foot := t.names - 0.2
	ahead := math.Copysign(sideLong, m.sides[1]-m.sides[0])
	for i, tip := range []float64{-ahead, ahead} {
		if !t.holds(m.sides[i]) {
			continue
		}
		x, y := t.x(m.sides[i]), foot-sideHalf
		t.setOff(g, m, m.sides[i])
		stem(g, m.Mark, draw.Point{X: x, Y: t.top}, draw.Point{X: x, Y: t.foot()})
		g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: y - sideHalf}, {X: x + tip, Y: y}, {X: x, Y: y + sideHalf}}}, Closed: true, Fill: m.Ink()})
	}
	first, last := m.ends()
	from, to := max(first, t.from), min(last, t.to)
	g.Line(t.x(from), t.foot(), t.x(to), t.foot(), draw.Solid(m.Ink(), draw.FineWidth))
}

// two reports whether a mark has two lines on the disc: whether they are far enough apart
// on the turn that they stand on.
func (d *disc) two(m marks.Mark) bool {
	apart := d.hand(m.Sides[1]-m.Sides[0]) * math.Pi / 180
	return apart*d.track(d.hand(m.Deg)) >= linesApart
}

// angles returns the angles of the ring at which a mark has a line.
func (d *disc) angles(m marks.Mark) []float64 {
	if d.two(m) {
		return m.Sides[:]
	}
	return []float64{m.Deg}
}

// drawSides draws the triangles of a mark's two lines, and the line that joins them.
func (d *disc) drawSides(g *draw.Group, m marks.Mark) {
	for i, ahead := range []float64{-1, 1} {
		g.Add(draw.Path{Runs: [][]draw.Point{d.triangle(m.Sides[i], ahead)}, Closed: true, Fill: m.Ink()})
	}
	g.Add(draw.Path{Runs: [][]draw.Point{d.arc(d.hand(m.Sides[0]), d.hand(m.Sides[1]), d.stemLong)}, Stroke: draw.Solid(m.Ink(), draw.FineWidth)})
}

// triangle is that at a line: ahead is 1 where it points towards infinity, else -1.
func (d *disc) triangle(ring, ahead float64) []draw.Point {
	deg := d.hand(ring)
	size := min(1, d.stemLong/4)
	r := d.track(deg) - d.stemLong + sideHalf*size
	tip := deg + ahead*size*sideLong/max(r, 1)*180/math.Pi
	return []draw.Point{d.point(deg, r+sideHalf*size), d.point(tip, r), d.point(deg, r-sideHalf*size)}
}
