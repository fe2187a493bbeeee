// Drawing the pieces of a tape.

package ring

import (
	"fmt"
	"math"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/ring/beside"
	"pullscore/render/ring/page"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

const (
	tapeHigh   = 24.0
	pieceHead  = 3.8 // above one of several pieces: which it is
	pieceFoot  = 3.0
	laneTop    = 1.2 // within the tape, above the windows
	laneHigh   = 1.8 // of a window
	lanePitch  = 2.4
	namesTop   = 4.6  // of the names, at least
	scaleHigh  = 3.6  // of what stands on the lower edge
	doubtBelow = 0.32 // from a window to the bar of two sigma
	joinRadius = 1.6
)

// A tape is a piece with its place on a page.
type tape struct {
	*strip
	*piece
	index       int
	left        float64 // where the piece's from lies on the page
	top, bottom float64
	names       float64 // top of the names
}

// x returns where a place on the strip lies on the page.
func (t *tape) x(at float64) float64 { return t.left + at - t.from }

// putTape draws the tape, or says what is missing for it. It reports whether it is drawn.
func putTape(b *page.Book, named *lettered) bool {
	if !(b.Shot.Optics.Diameter > 0) {
		sayNoDiameter(b)
		return false
	}
	st := newStrip(b.Shot, named, b.Width())
	b.Heading("Tape for the ring", st.notes(), st.pieceHeight())
	for i := range st.pieces {
		st.drawPiece(b, i)
	}
	b.Y += 2.5
	return true
}

func (st *strip) pieceHeight() float64 {
	if len(st.pieces) > 1 {
		return pieceHead + tapeHigh + pieceFoot
	}
	return tapeHigh + pieceFoot
}

// drawPiece puts a piece on the page.
func (st *strip) drawPiece(b *page.Book, index int) {
	b.Reserve(st.pieceHeight())
	p := &st.pieces[index]
	t := tape{strip: st, piece: p, index: index, left: sheet.Margin, top: b.Y, bottom: b.Y + tapeHigh}
	if len(st.pieces) > 1 {
		t.left += joinRoom
		t.top, t.bottom = t.top+pieceHead, t.bottom+pieceHead
	}
	t.names = t.top + max(namesTop, laneTop+lanePitch*float64(st.lanes)+0.3)
	if st.anyTwo() {
		t.names += sideZone
	}
	g := b.Root().Group("piece")
	g.Number = index + 1
	b.Y += st.pieceHeight()
	if len(st.pieces) > 1 {
		g.Add(draw.NewText(t.left+3.5, t.top-1.4, fmt.Sprintf("piece %d of %d", index+1, len(st.pieces)), sheet.FontSmall, draw.Black))
	}
	t.drawEdges(g)
	lower := t.drawScale(g.Group("lens-marks"))
	group := g.Group("marks")
	for i := range st.marks {
		if m := &st.marks[i]; m.lane >= 0 && m.window[1] >= t.from && m.window[0] <= t.to {
			t.drawWindow(group, m)
		}
	}
	for i := range st.marks {
		if m := &st.marks[i]; p.shows(m) {
			t.drawMark(group, m)
		}
	}
	for _, l := range p.labels {
		t.drawLabel(group, l)
	}
	t.drawDirection(g.Group("direction"))
	t.drawOwner(g, lower)
}

// drawEdges draws where to cut, and at a join the signs that must meet.
func (t *tape) drawEdges(g *draw.Group) {
	cut, right := g.Group(signs.CutLine), t.x(t.to)
	pen := draw.CutHere(draw.Black)
	pen.Width = draw.FineWidth
	cut.Line(t.left, t.top, right, t.top, pen)
	cut.Line(t.left, t.bottom, right, t.bottom, pen)
	cut.Line(t.left, t.top, t.left, t.bottom, pen)
	cut.Line(right, t.top, right, t.bottom, pen)
	joins := g.Group("joins")
	if !t.first {
		t.drawJoin(joins, t.left, t.left-joinRoom/2, t.index)
	}
	if !t.last {
		t.drawJoin(joins, right, right+joinRoom/2, t.index+1)
	}
}

// drawJoin draws the signs of a cut through the tape: half of each is on either piece, and
// they close when the pieces lie right.
func (t *tape) drawJoin(g *draw.Group, x, beside float64, number int) {
	pen := draw.Solid(draw.Black, draw.GuideWidth)
	for _, y := range []float64{t.top, t.bottom} {
		g.Add(draw.Disc{Centre: draw.Point{X: x, Y: y}, Radius: joinRadius, Stroke: pen})
		g.Line(x-2.2, y, x+2.2, y, pen)
		g.Line(x, y-2.2, x, y+2.2, pen)
	}
	g.Add(draw.NewText(beside, (t.top+t.bottom)/2, "join", sheet.FontSmall, draw.Black).Aligned(draw.Middle),
		draw.NewText(beside, (t.top+t.bottom)/2+3.2, fmt.Sprint(number), sheet.FontNumber, draw.Black).Aligned(draw.Middle))
}

// drawScale draws the lens's own marks on the lower edge, where they meet those of the
// lens, and the stops of the ring. It returns what the texts take.
func (t *tape) drawScale(g *draw.Group) []draw.Box {
	g.Title = "the lens's own marks, to lay the tape by"
	var list []scaleMark
	for _, m := range t.scale {
		if t.holds(m.at) && m.at > t.from && m.at < t.to {
			list = append(list, m)
			drawLensMark(g, draw.Point{X: t.x(m.at), Y: t.bottom}, 180, 1, m.Measured)
			if m.Stop {
				t.drawStop(g, m)
			}
		}
	}
	return t.drawScaleTexts(g, list)
}

// drawLensMark draws a mark of the lens with its tip at p: a triangle that points up,
// turned clockwise by so many degrees.
func drawLensMark(g *draw.Group, p draw.Point, turn, size float64, measured bool) {
	name, fill := signs.Computed, draw.Paper
	if measured {
		name, fill = signs.Measured, draw.Black
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	at := func(x, y float64) draw.Point {
		return draw.Point{X: p.X + size*(x*cos-y*sin), Y: p.Y + size*(x*sin+y*cos)}
	}
	g.Group(name).Add(draw.Path{
		Runs: [][]draw.Point{{p, at(-1, 1.9), at(1, 1.9)}}, Closed: true, Fill: fill, Stroke: draw.Solid(draw.Black, draw.FineWidth),
	})
}

// drawStop draws a stop of the ring across the tape, hatched where the ring does not go.
func (t *tape) drawStop(g *draw.Group, m scaleMark) {
	x := t.x(m.at)
	up, down := draw.Point{X: x, Y: t.top}, draw.Point{X: x, Y: t.bottom - scaleHigh - 0.4}
	if right := (m.Deg > 0) != t.mirrored(); right {
		signs.DrawStop(g, up, down)
	} else {
		signs.DrawStop(g, down, up)
	}
}

// drawScaleTexts writes the figures of the lens's marks beside them.
func (t *tape) drawScaleTexts(g *draw.Group, list []scaleMark) (taken []draw.Box) {
	sortByPlace(list)
	uprights := make([]beside.Upright, len(list))
	texts := make([][]draw.Text, len(list))
	for i, m := range list {
		x := t.x(m.at)
		for k, text := range []string{m.Text + bracketed(m.Other), m.Text} {
			for j, f := range []draw.Font{fontScale, sheet.FontSmall} {
				text := draw.NewText(0, t.bottom-0.9, text, f, draw.Grey)
				texts[i] = append(texts[i], text)
				uprights[i].Forms = append(uprights[i].Forms, beside.Form{Width: text.Room().W, Cost: float64(2*k + j)})
			}
		}
		uprights[i].First, uprights[i].Last = x-triangleHalf, x+triangleHalf
	}
	for i, s := range beside.Seats(uprights, t.left+0.8, t.x(t.to)-0.8) {
		if s.Form < 0 {
			continue
		}
		text := texts[i][s.Form]
		text.At.X = uprights[i].Last + beside.Gap
		if !s.Right {
			text.At.X, text.Align = uprights[i].First-beside.Gap, draw.End
		}
		g.Add(text)
		taken = append(taken, text.Room())
	}
	for _, u := range uprights {
		taken = append(taken, draw.Box{X: u.First, Y: t.bottom - 2, W: u.Last - u.First, H: 2})
	}
	return taken
}

const triangleHalf = 1.0 // of the base of a triangle

func bracketed(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

// drawOwner tells on the lower edge whose tape it is once it is cut out, in the widest
// free stretch.
func (t *tape) drawOwner(g *draw.Group, taken []draw.Box) {
	text := draw.NewText(0, t.bottom-0.9, t.shot.ID+" · "+t.shot.Lens, sheet.FontSmall, draw.Grey)
	if from, to := widest(taken, t.left+1, t.x(t.to)-1); to-from > text.Room().W+3 {
		text.At.X = to - 1.5
		g.Add(text.Aligned(draw.End))
	}
}

// drawDirection draws in the widest free stretch between the names an arrow the way that
// infinity lies.
func (t *tape) drawDirection(g *draw.Group) {
	y := t.names + 2.4
	var taken []draw.Box
	for _, l := range t.labels {
		for _, text := range t.texts(l) {
			taken = append(taken, text.Room())
		}
		taken = append(taken, draw.Box{X: t.x(l.first) - 0.5, Y: y, W: l.last - l.first + 1, H: 1})
	}
	for _, at := range t.stopsOn(t.piece) {
		taken = append(taken, draw.Box{X: t.x(at) - 1.2, Y: y, W: 2.4, H: 1})
	}
	const long = 10.0
	sign := draw.NewText(0, y+fontDistance.Middle(), "∞", fontDistance, draw.Black)
	from, to := widest(taken, t.left+1, t.x(t.to)-1)
	if to-from < long+sign.Room().W+4 {
		return
	}
	x := (from+to-long-sign.Room().W)/2 - 0.5
	if !t.mirrored() {
		arrow(g, x, x+long, y)
		sign.At.X = x + long + 1
	} else {
		sign.At.X = x
		arrow(g, x+sign.Room().W+1+long, x+sign.Room().W+1, y)
	}
	g.Add(sign)
}

// arrow draws a level arrow from x1 to its tip at x2.
func arrow(g *draw.Group, x1, x2, y float64) {
	back := x2 - math.Copysign(2, x2-x1)
	g.Line(x1, y, back, y, draw.Solid(draw.Black, draw.WindowWidth))
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: x2, Y: y}, {X: back, Y: y - 0.9}, {X: back, Y: y + 0.9}}}, Closed: true, Fill: draw.Black})
}

// drawWindow draws what of a mark's window lies on the piece, true to its width, and under
// it how well the mark is known.
func (t *tape) drawWindow(g *draw.Group, m *stripMark) {
	y := t.top + laneTop + lanePitch*float64(m.lane)
	from, to := t.x(max(m.window[0], t.from)), t.x(min(m.window[1], t.to))
	g.Group(signs.Settings).Add(draw.Rect{Box: draw.Box{X: from, Y: y, W: to - from, H: laneHigh}, Fill: draw.Black})
	half := ringLength(t.shot.Optics.Diameter, 2*m.Sigma)
	lo, hi := max(m.at-half, t.from), min(m.at+half, t.to)
	if !sheet.Finite(half) || half <= 0 || lo >= hi {
		return
	}
	below, pen := y+laneHigh+doubtBelow, draw.Solid(draw.Black, draw.RulerWidth)
	doubt := g.Group(signs.LawError)
	doubt.Line(t.x(lo), below, t.x(hi), below, pen)
	for _, at := range []float64{lo, hi} {
		doubt.Line(t.x(at), below-0.25, t.x(at), below+0.25, pen)
	}
}

// stem is the line of a mark; dashed where it is to be set by eye.
func stem(g *draw.Group, m marks.Mark, from, to draw.Point) {
	pen := draw.Solid(m.Ink(), draw.MarkWidth)
	if m.Rough {
		g, pen = g.Group(signs.ByEye), draw.Assumed(m.Ink())
	}
	g.Line(from.X, from.Y, to.X, to.Y, pen)
}

// foot is where the lines of marks end.
func (t *tape) foot() float64 { return t.names + 0.8*fontName.Size*draw.MM + 0.4 }

// drawMark draws a mark's line, or its two, from the upper edge down beside its name.
// Where it goes through the window of another, a white edge sets it off.
func (t *tape) drawMark(g *draw.Group, m *stripMark) {
	mg := g.Group("mark")
	mg.Title = m.Title(t.shot)
	if m.two {
		t.drawSides(mg, m)
		return
	}
	x := t.x(m.at)
	t.setOff(mg, m, m.at)
	stem(mg, m.Mark, draw.Point{X: x, Y: t.top}, draw.Point{X: x, Y: t.foot()})
}

// setOff draws white edges where a line goes through the windows of other marks.
func (t *tape) setOff(g *draw.Group, m *stripMark, at float64) {
	for i := range t.marks {
		o := &t.marks[i]
		if o.index == m.index || o.lane < 0 || at <= o.window[0] || at >= o.window[1] {
			continue
		}
		y := t.top + laneTop + lanePitch*float64(o.lane)
		left, right := max(at-setOffHalf, o.window[0]), min(at+setOffHalf, o.window[1])
		g.Add(draw.Rect{Box: draw.Box{X: t.x(left), Y: y, W: right - left, H: laneHigh}, Fill: draw.Paper})
	}
}

const setOffHalf = 0.5

// texts returns the texts of a label at their places.
func (t *tape) texts(l label) []draw.Text {
	var list []draw.Text
	y := t.names
	for i, line := range l.lines {
		f := fontOfLine(i, l.isLetter)
		ink := draw.Grey
		for _, m := range l.marks {
			if !m.Aside() {
				ink = draw.Black
			}
		}
		text := draw.NewText(t.x(l.last)+beside.Gap, y+0.8*f.Size*draw.MM, line, f, ink)
		if !l.right {
			text.At.X, text.Align = t.x(l.first)-beside.Gap, draw.End
		}
		list = append(list, text)
		y += f.Height()
	}
	return list
}

// drawLabel writes a label. Below the lines of marks that share one it draws a line that
// joins them.
func (t *tape) drawLabel(g *draw.Group, l label) {
	lg := g.Group("label")
	for _, text := range t.texts(l) {
		lg.Add(text)
	}
	if len(l.marks) > 1 {
		lg.Line(t.x(l.first), t.foot(), t.x(l.last), t.foot(), draw.Solid(draw.Black, draw.FineWidth))
	}
}
