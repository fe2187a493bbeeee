// Drawing the pieces of a strip, each a tape to cut out.

package ring

import (
	"fmt"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

const (
	pieceHead  = 6.0 // above a piece: which it is, and which way infinity lies
	pieceFoot  = 4.0
	tapeTop    = 0.9 // within the tape, above the windows
	lanesMost  = 9.0 // height of the windows at most
	laneStep   = 1.6
	tickLong   = 4.2 // a mark's line, at least
	scaleZone  = 6.2 // for the lens's own list
	windowBar  = 0.9
	doubtBar   = 0.22 // of two sigma, under a window
	tickWidth  = 0.25 // fine enough to tell two list half a millimetre apart
	fanZone    = 4.5  // in which lines to names go aside
	joinRadius = 1.6
)

// A tape is a piece with its place on a sheet.
type tape struct {
	*strip
	*piece
	index       int
	left        float64 // where the piece's from lies on the sheet
	top, bottom float64
	lane        float64 // height of one
	ticks       float64 // height of the list' own lines
	names       float64 // top of the rows of names
}

// x returns where a place on the strip lies on the sheet.
func (t *tape) x(at float64) float64 { return t.left + at - t.from }

// drawPiece puts a piece on the handout.
func (st *strip) drawPiece(h *sheet.Handout, index int) {
	p := &st.pieces[index]
	t := tape{strip: st, piece: p, index: index, left: sheet.Margin + joinRoom, lane: laneStep}
	if all := laneStep * float64(st.lanes); all > lanesMost {
		t.lane = lanesMost / float64(st.lanes)
	}
	t.ticks = max(t.lane*float64(st.lanes)+tapeTop, tickLong) + 0.4
	if st.anyTwo() {
		t.ticks += sideZone
	}
	zone := t.ticks
	if p.fanned {
		zone += fanZone
	}
	height := zone + rowPitch*float64(max(p.rows, 1)) + scaleZone
	g, top := h.Take(pieceHead+height+pieceFoot, fmt.Sprintf("piece-%d", index+1))
	t.top, t.bottom, t.names = top+pieceHead, top+pieceHead+height, top+pieceHead+zone
	t.drawEdges(g.Group("cut"))
	t.drawDirection(g.Group("direction"), top)
	t.drawScale(g.Group("lens-marks"))
	group := g.Group("marks")
	for i := range st.marks {
		t.drawWindow(group, &st.marks[i])
	}
	for i := range st.marks {
		if m := &st.marks[i]; p.shows(m) {
			t.drawMark(group, m)
		}
	}
}

// drawEdges draws where to cut, and at a join the signs that must meet.
func (t *tape) drawEdges(g *draw.Group) {
	cut := sheet.Dashed(draw.Mid, sheet.Thin, 2, 1.2)
	right := t.x(t.to)
	g.Line(t.left, t.top, right, t.top, cut)
	g.Line(t.left, t.bottom, right, t.bottom, cut)
	g.Line(t.left, t.top, t.left, t.bottom, cut)
	g.Line(right, t.top, right, t.bottom, cut)
	if !t.first {
		t.drawJoin(g, t.left, t.left-joinRoom/2, t.index)
	}
	if !t.last {
		t.drawJoin(g, right, right+joinRoom/2, t.index+1)
	}
}

// drawJoin draws the signs of a cut through the tape: half of each is on either
// piece, and they close when the pieces lie right.
func (t *tape) drawJoin(g *draw.Group, x, beside float64, number int) {
	for _, y := range []float64{t.top, t.bottom} {
		g.Add(draw.Disc{Centre: draw.Point{X: x, Y: y}, Radius: joinRadius, Stroke: sheet.Solid(draw.Black, sheet.Hair)})
		g.Line(x-2.2, y, x+2.2, y, sheet.Solid(draw.Black, sheet.Hair))
		g.Line(x, y-2.2, x, y+2.2, sheet.Solid(draw.Black, sheet.Hair))
	}
	g.Add(draw.NewText(beside, (t.top+t.bottom)/2, "join", sheet.FontSmall, draw.Black).Aligned(draw.Middle),
		draw.NewText(beside, (t.top+t.bottom)/2+3.2, fmt.Sprint(number), sheet.FontNumber, draw.Black).Aligned(draw.Middle))
}

// drawDirection says above the tape which piece it is and which way infinity
// lies, with an arrow.
func (t *tape) drawDirection(g *draw.Group, top float64) {
	text := "towards infinity"
	if len(t.pieces) > 1 {
		text = fmt.Sprintf("piece %d of %d · towards infinity", t.index+1, len(t.pieces))
	}
	base := top + pieceHead - 2.4
	x, tip := t.left, t.left+12
	if t.mirrored() {
		x, tip = tip, x
	}
	sheet.Arrow(g, x, tip, base-sheet.FontSmall.Middle())
	g.Add(draw.NewText(t.left+14, base, text, sheet.FontSmall, draw.Black))
	if !t.first {
		return
	}
	// On the tape itself the lead is free.
	a, b := t.left+2, t.left+lead-2.5
	if t.mirrored() {
		a, b = b, a
	}
	y := t.names + 1.6
	sheet.Arrow(g, a, b, y)
	g.Add(draw.NewText(t.left+lead/2, y-1.6, "∞", sheet.FontStrong, draw.Black).Aligned(draw.Middle))
}

// drawScale draws the lens's own marks lightly on the lower edge: the tape lies
// right when they meet those of the lens. The stops of the ring have a wedge.
func (t *tape) drawScale(g *draw.Group) {
	g.Title = "the lens's own marks, to lay the tape by"
	for _, m := range t.scale {
		if !t.holds(m.at) {
			continue
		}
		x := t.x(m.at)
		if m.Stop {
			g.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: t.bottom}, {X: x - 1, Y: t.bottom - 2.2}, {X: x + 1, Y: t.bottom - 2.2}}}, Closed: true, Fill: draw.Black})
		} else {
			g.Line(x, t.bottom-2, x, t.bottom, sheet.Solid(draw.Mid, sheet.Thin))
		}
	}
	texts := t.scaleTexts()
	taken := make([]draw.Box, len(texts))
	for i, text := range texts {
		g.Add(text)
		taken[i] = text.Room()
	}
	if t.last {
		t.drawOwner(g, taken)
	}
}

// scaleTexts are the figures of the lens's marks that have room on the piece,
// with those in the plan's units beside them where they have room too.
func (t *tape) scaleTexts() []draw.Text {
	var texts []draw.Text
	var others []string
	apart := func(text draw.Text, but int) bool {
		return !slices.ContainsFunc(texts, func(o draw.Text) bool {
			return (but < 0 || o != texts[but]) && text.Room().Grow(0.6).Overlaps(o.Room())
		})
	}
	for _, m := range t.scale {
		if text := t.scaleText(m, m.Text); t.holds(m.at) && apart(text, -1) {
			texts, others = append(texts, text), append(others, m.Other)
		}
	}
	for i, other := range others {
		if other == "" {
			continue
		}
		both := draw.NewText(texts[i].At.X, texts[i].At.Y, texts[i].String+" ("+other+")", sheet.FontSmall, draw.Grey).Aligned(draw.Middle)
		if both = t.inside(both); apart(both, i) {
			texts[i] = both
		}
	}
	return texts
}

// scaleText sets a figure above a mark of the lens.
func (t *tape) scaleText(m scaleMark, figure string) draw.Text {
	return t.inside(draw.NewText(t.x(m.at), t.bottom-2.9, figure, sheet.FontSmall, draw.Grey).Aligned(draw.Middle))
}

// inside moves a text from its place onto the piece.
func (t *tape) inside(text draw.Text) draw.Text {
	half := text.Room().W/2 + 0.8
	text.At.X = min(max(text.At.X, t.left+half), t.x(t.to)-half)
	return text
}

// drawOwner tells at the tape's end whose it is, once it is cut out.
func (t *tape) drawOwner(g *draw.Group, taken []draw.Box) {
	right := t.x(t.to) - 1
	room := tail - 4
	for _, b := range taken {
		room = min(room, max(right-b.Right()-1.5, 0))
	}
	owner := draw.NewText(right, t.bottom-1.2, t.shot.ID+" · "+t.shot.Lens, sheet.FontSmall, draw.Grey).Aligned(draw.End).Shortened(room)
	if owner.Width <= room {
		g.Add(owner)
	}
}

// drawWindow draws what of a mark's window lies on the piece as a bar, with an
// end where it ends.
func (t *tape) drawWindow(g *draw.Group, m *stripMark) {
	if !m.Sharp() || m.window[1] < t.from || m.window[0] > t.to {
		return
	}
	y := t.top + tapeTop + t.lane*(float64(m.lane)+0.5)
	bar := min(windowBar, 0.6*t.lane)
	from, to := t.x(max(m.window[0], t.from)), t.x(min(m.window[1], t.to))
	g.Add(draw.Rect{Box: draw.Box{X: from, Y: y - bar/2, W: to - from, H: bar}, Fill: draw.Mid})
	t.drawDoubt(g, m, y+bar/2)
	openLeft, openRight := m.Open[0], m.Open[1]
	if t.mirrored() {
		openLeft, openRight = openRight, openLeft
	}
	arm := min(0.75, t.lane/2)
	if !openLeft && m.window[0] >= t.from {
		g.Line(from, y-arm, from, y+arm, sheet.Solid(draw.Black, sheet.Thin))
	}
	if !openRight && m.window[1] <= t.to {
		g.Line(to, y-arm, to, y+arm, sheet.Solid(draw.Black, sheet.Thin))
	}
}

// drawDoubt draws under a window how well its mark is known: a thin bar of two sigma to
// either side.
func (t *tape) drawDoubt(g *draw.Group, m *stripMark, top float64) {
	half := ringLength(t.shot.Optics.Diameter, 2*m.Sigma)
	from, to := max(m.at-half, t.from), min(m.at+half, t.to)
	if !sheet.Finite(half) || from >= to {
		return
	}
	g.Add(draw.Rect{Box: draw.Box{X: t.x(from), Y: top + 0.15, W: to - from, H: doubtBar}, Fill: draw.Black})
}

// tick is the line of a mark: dashed where it is to be set by eye.
func tick(m marks.Mark, width float64) draw.Stroke {
	if m.Rough {
		return sheet.Dashed(m.Ink(), width, 0.7, 0.5)
	}
	return sheet.Solid(m.Ink(), width)
}

// drawMark draws a mark's line, or its two, from the upper edge down to its name, and the
// name right of it.
func (t *tape) drawMark(g *draw.Group, m *stripMark) {
	mg := g.Group("mark")
	mg.Title = m.Title(t.shot)
	x, stem := t.x(m.at), t.x(m.stem)
	if m.two {
		t.drawSides(mg, m)
	} else {
		mg.Line(x, t.top, x, t.top+t.ticks, tick(m.Mark, tickWidth))
	}
	if m.row < 0 || !t.holds(m.at) {
		return
	}
	base := t.names + rowPitch*float64(m.row) + 2.4
	mg.Add(draw.Path{Runs: [][]draw.Point{{{X: x, Y: t.top + t.ticks}, {X: stem, Y: t.names}, {X: stem, Y: base + 0.4}}}, Stroke: sheet.Solid(m.Ink(), sheet.Hair)})
	marks.Write(mg, m.Mark, m.Label, stem+flagGap, base, m.room-flagGap-markGap)
}

// sayHow tells how the tape is put on.
func (st *strip) sayHow(h *sheet.Handout) {
	o := &st.shot.Optics
	h.Say(fmt.Sprintf("Tape for a ring of %s mm across: 1° is %s mm. Cut along the dashes, %s, and hold the upper edge to the index. "+
		"The text reads upright from behind the camera.",
		sheet.Figures.Number(o.Diameter*1000, 1), sheet.Figures.Number(ringLength(o.Diameter, 1), 3), layOn(st.shot)), sheet.FontNote, draw.Black)
	switch o.TurnsTo {
	case "left", "right":
		h.Say(fmt.Sprintf("The top of this ring turns %s towards infinity, seen from behind the camera; so infinity is on the %s of the tape.",
			o.TurnsTo, map[string]string{"left": "right", "right": "left"}[o.TurnsTo]), sheet.FontNote, draw.Black)
	default:
		h.Say("The kit does not say which way this ring turns. Drawn for one whose top turns left towards infinity, seen from behind the camera. "+
			"If yours turns right, write turns right into the lens: the strip is then drawn the other way round.", sheet.FontStrong, draw.Black)
	}
	round := ringLength(o.Diameter, 360)
	switch {
	case st.length > round:
		h.Say(fmt.Sprintf("This ring turns more than once (%s mm round): the tape lies over itself; better mark the hand wheel.", sheet.Figures.Number(round, 0)), sheet.FontStrong, draw.Black)
	case st.length+lead+tail > round:
		h.Say(fmt.Sprintf("The ring is %s mm round: trim the ends beyond the wedges so that the tape does not lie over itself.", sheet.Figures.Number(round, 0)), sheet.FontNote, draw.Black)
	}
	sayUnnamed(h, st.unnamed(), "tape")
}

// layOn tells what the tape is laid by: the stops of the ring, where it has any that
// hold, and the lens's own marks.
func layOn(s *plan.Shot) string {
	switch {
	case slips(s) && s.Optics.Marked:
		return "lay the wedges and the light marks on the lens's own marks, since nothing holds this ring at its ends"
	case slips(s):
		return "lay the wedges on the lens's own marks of its closest distance and of infinity, since nothing holds this ring at its ends"
	case s.Optics.Marked:
		return "lay the wedges on the ring's two stops and the light marks on the lens's own"
	}
	return "lay the wedges on the ring's two stops"
}

// slips reports whether nothing holds the ring of a lens at its ends.
func slips(s *plan.Shot) bool {
	return s.Ring != nil && (s.Ring.Ends == "slip" || s.Ring.Ends == "linear")
}

// sayUnnamed says how many marks have no name on what is cut out, if any.
func sayUnnamed(h *sheet.Handout, n int, on string) {
	if n > 0 {
		h.Say(fmt.Sprintf("%s too close to others to be named on the %s: see the table.", map[bool]string{true: "1 mark stands", false: fmt.Sprint(n, " marks stand")}[n == 1], on), sheet.FontStrong, draw.Black)
	}
}

// unnamed counts the marks that have no name on the tape.
func (st *strip) unnamed() (n int) {
	for _, m := range st.marks {
		if m.row < 0 {
			n++
		}
	}
	return n
}
