// Drawing a disc: what is cut out, its marks and windows, and what is written on it.

package ring

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// draw draws the disc round its centre, with the pointer above and its title below.
func (d *disc) draw(g *draw.Group) {
	top := d.centre.Y - d.outer
	g.Group("pointer").Add(draw.Path{Runs: [][]draw.Point{{{X: d.centre.X, Y: top - 0.5}, {X: d.centre.X - 1.7, Y: top - 3.6}, {X: d.centre.X + 1.7, Y: top - 3.6}}}, Closed: true, Fill: draw.Black})
	g.Add(draw.NewText(d.centre.X, d.centre.Y+d.outer+4.2, d.title(), sheet.FontStrong, draw.Black).Aligned(draw.Middle))
	d.drawDisc(g)
	d.drawScale(g.Group("lens-marks"))
	d.drawDirection(g.Group("direction"))
	group := g.Group("marks")
	for i, m := range d.named.list {
		if d.lanes[i] >= 0 {
			d.drawWindow(group, m, d.lanes[i])
		}
	}
	for i, m := range d.named.list {
		d.drawMark(group, i, m)
	}
	d.drawLabels(group)
	d.drawThumbs(g.Group("thumbs"))
}

// title says for which wheel the disc is. It turns with the wheel, so what lies clockwise
// on it comes to the pointer while the wheel turns anticlockwise.
func (d *disc) title() string {
	if d.clockwise {
		return "turns anticlockwise to infinity"
	}
	return "turns clockwise to infinity"
}

// drawDisc draws the cut, the centre and the line that the marks stand on.
func (d *disc) drawDisc(g *draw.Group) {
	cut := draw.CutHere(draw.Black)
	cut.Width = draw.FineWidth
	g.Group(signs.CutLine).Add(draw.Disc{Centre: d.centre, Radius: d.outer, Stroke: cut})
	body := g.Group("body")
	const cross = 2.5
	pen := draw.Solid(draw.Black, draw.GuideWidth)
	body.Line(d.centre.X-cross, d.centre.Y, d.centre.X+cross, d.centre.Y, pen)
	body.Line(d.centre.X, d.centre.Y-cross, d.centre.X, d.centre.Y+cross, pen)
	body.Add(draw.Path{Runs: [][]draw.Point{sheet.Simplify(d.arc(0, 360*d.turns, 0))}, Stroke: draw.Solid(draw.Black, draw.RulerWidth)})
	body.Add(d.shifted(d.owner))
	for _, text := range d.turnNumbers() {
		text = d.shifted(text)
		body.Add(sheet.Halo(text.Box()), text)
	}
}

// shifted returns a text that was placed about the origin, about the disc's centre.
func (d *disc) shifted(t draw.Text) draw.Text {
	t.At.X, t.At.Y = t.At.X+d.centre.X, t.At.Y+d.centre.Y
	return t
}

// turnNumbers are the numbers of the turns, each at the top of its own, where the wheel
// turns more than once; of turns that lie close only some have one. They are placed about
// the origin.
func (d *disc) turnNumbers() []draw.Text {
	if d.turns <= 1 {
		return nil
	}
	var numbers []draw.Text
	every := math.Ceil(4.6 / d.pitch())
	for turn := 0.0; turn < d.turns; turn += every {
		r := d.track(360 * turn)
		text := draw.NewText(-2.2, -r-0.6, "turn "+sheet.Figures.Number(turn+1, 0), sheet.FontSmall, draw.Grey).Aligned(draw.End)
		if turn == 0 { // no line comes from there, and the cut is near
			text.At.Y = -r + sheet.FontSmall.Middle()
		}
		if !d.clockwise {
			text.At.X, text.Align = 2.2, draw.Start
		}
		numbers = append(numbers, text)
	}
	return numbers
}

// drawDirection draws an arrow round the centre, the way that infinity lies.
func (d *disc) drawDirection(g *draw.Group) {
	const radius, from, to = 4.6, 30, 130
	var run []draw.Point
	for deg := float64(from); deg <= to-18; deg += 4 {
		run = append(run, d.point(deg, radius))
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: draw.Solid(draw.Black, draw.WindowWidth)},
		draw.Path{Runs: [][]draw.Point{{d.point(to, radius), d.point(to-25, radius+0.9), d.point(to-25, radius-0.9)}}, Closed: true, Fill: draw.Black})
	at := d.point(165, radius)
	g.Add(draw.NewText(at.X, at.Y+sheet.FontStrong.Middle(), "∞", sheet.FontStrong, draw.Black).Aligned(draw.Middle))
}

// triangleSize is the size of the lens's marks, less where the turns lie close.
func (d *disc) triangleSize() float64 {
	if d.turns <= 1 {
		return 1
	}
	return min(1, d.pitch()/trackMost)
}

// drawScale draws the lens's own marks, their tips on the line of the marks, and the stops
// of the ring, hatched where it does not go.
func (d *disc) drawScale(g *draw.Group) {
	g.Title = "the lens's own marks, to lay the disc by"
	for _, m := range marks.OfLens(d.shot) {
		deg := d.hand(m.Deg)
		drawLensMark(g, d.point(deg, d.track(deg)), d.page(deg), d.triangleSize(), m.Measured)
		if !m.Stop {
			continue
		}
		rim, in := d.radial(deg, 0, d.stemLong)
		if (m.Deg > 0) == d.clockwise { // the hatches lie on the left of who goes from a to b
			signs.DrawStop(g, rim, in)
		} else {
			signs.DrawStop(g, in, rim)
		}
	}
	for _, text := range d.figures {
		g.Add(d.shifted(text))
	}
}

// drawWindow draws the window of a mark along the rim, true to its angle, and inside it how
// well the mark is known.
func (d *disc) drawWindow(g *draw.Group, m marks.Mark, lane int) {
	from, to := d.hand(m.Window[0]), d.hand(m.Window[1])
	out := d.laneTop + d.lanePitch*float64(lane)
	in := out + d.laneHigh
	g.Group(signs.Settings).Add(draw.Path{Runs: [][]draw.Point{sheet.Between(d.arc(from, to, out), d.arc(from, to, in))}, Closed: true, Fill: draw.Black})
	lo, hi, ok := d.doubt(m)
	if !ok {
		return
	}
	pen := draw.Solid(draw.Black, draw.RulerWidth)
	middle := d.doubtDeep(lane)
	doubt := g.Group(signs.LawError)
	doubt.Add(draw.Path{Runs: [][]draw.Point{d.arc(lo, hi, middle)}, Stroke: pen})
	for _, deg := range []float64{lo, hi} {
		a, b := d.radial(deg, middle-0.25, middle+0.25)
		doubt.Line(a.X, a.Y, b.X, b.Y, pen)
	}
}

// doubt returns between which angles at the hand a mark may truly lie, two standard
// deviations to either side; ok is false where that is not known.
func (d *disc) doubt(m marks.Mark) (lo, hi float64, ok bool) {
	lo, hi = d.hand(max(m.Deg-2*m.Sigma, 0)), d.hand(min(m.Deg+2*m.Sigma, d.shot.Optics.Ring.Throw()))
	return lo, hi, sheet.Finite(m.Sigma) && m.Sigma > 0 && lo < hi
}

// doubtDeep is how deep under the track the bar of that lies.
func (d *disc) doubtDeep(lane int) float64 {
	return d.laneTop + d.lanePitch*float64(lane) + d.laneHigh + 0.3
}

// drawMark draws the line of a mark, or its two, from the rim inwards. Where it goes
// through the window of another, a white edge sets it off.
func (d *disc) drawMark(g *draw.Group, i int, m marks.Mark) {
	mg := g.Group("mark")
	mg.Title = m.Title(d.shot)
	for _, ring := range d.angles(m) {
		deg := d.hand(ring)
		d.setOff(mg, i, deg)
		a, b := d.radial(deg, 0, d.stemLong)
		stem(mg, m, a, b)
	}
	if d.two(m) {
		d.drawSides(mg, m)
	}
}

// setOff draws white edges where a line goes through the windows of other marks.
func (d *disc) setOff(g *draw.Group, i int, deg float64) {
	for k, o := range d.named.list {
		from, to := d.hand(o.Window[0]), d.hand(o.Window[1])
		if k == i || d.lanes[k] < 0 || deg <= from || deg >= to {
			continue
		}
		out := d.laneTop + d.lanePitch*float64(d.lanes[k])
		half := setOffHalf / d.track(deg) * 180 / math.Pi
		lo, hi := max(deg-half, from), min(deg+half, to)
		g.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(d.arc(lo, hi, out), d.arc(lo, hi, out+d.laneHigh))}, Closed: true, Fill: draw.Paper})
	}
}

// drawLabels draws the labels that have a place.
func (d *disc) drawLabels(g *draw.Group) {
	for _, l := range d.labels {
		lg := g.Group("label")
		if len(l.leader) > 0 {
			a, b := l.leader[0], l.leader[1]
			lg.Group(signs.Leader).Line(a.X+d.centre.X, a.Y+d.centre.Y, b.X+d.centre.X, b.Y+d.centre.Y, draw.Solid(l.mark.Ink(), draw.FineWidth))
		}
		for _, text := range l.texts {
			text = d.shifted(text)
			if d.turns > 1 { // the line of the next turn
				c := text.Corners()
				lg.Add(draw.Path{Runs: [][]draw.Point{c[:]}, Closed: true, Fill: draw.Paper})
			}
			lg.Add(text)
		}
	}
}
