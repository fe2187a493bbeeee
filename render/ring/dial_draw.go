// Drawing a dial: the disc to cut out, its marks and windows, and the names.

package ring

import (
	"fmt"
	"math"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

const (
	dialTick  = 2.6
	dialBar   = 1.0
	dialNames = 34.0 // the longest name on the disc
)

// draw draws the disc round its centre, with its heading above.
func (d *dial) draw(g *draw.Group) {
	g.Add(draw.NewText(d.centre.X, d.centre.Y-d.outer-2.4, d.wheel(), sheet.FontStrong, draw.Black).Aligned(draw.Middle))
	d.drawDisc(g.Group("disc"))
	d.drawScale(g.Group("lens-marks"))
	d.drawDirection(g.Group("direction"))
	group := g.Group("marks")
	for _, m := range d.marks {
		d.drawWindow(group, m)
	}
	d.drawMarks(group)
	d.drawLabels(group)
	d.drawThumbs(g.Group("thumbs"))
}

// wheel names the wheel that the disc is for. The disc turns with it, so what
// lies clockwise on the disc comes to the pointer while the wheel turns
// anticlockwise.
func (d *dial) wheel() string {
	if d.clockwise {
		return "for a wheel that turns anticlockwise towards infinity"
	}
	return "for a wheel that turns clockwise towards infinity"
}

// how tells how the disc is put on.
func (d *dial) how(lettered bool) string {
	size := fmt.Sprintf("Disc for a wheel of %s mm, 1:1.", sheet.Figures.Number(float64(d.shot.WheelMM), 1))
	if d.scaled() {
		size = fmt.Sprintf("The wheel of %s mm is larger than the sheet: this disc is %s mm across, and its angles hold; tape it on the middle of the wheel.", sheet.Figures.Number(float64(d.shot.WheelMM), 1), sheet.Figures.Number(2*d.outer, 1))
	}
	closest := "closest stop"
	if slips(d.shot) {
		closest = "closest mark"
	}
	text := fmt.Sprintf("%s Turn the wheel from near to infinity, see which way it goes as you face it, and take the disc for it: only your gear knows. "+
		"Cut along the dashes, set the ring to its %s, and tape the disc on the wheel, the wedge at the top under a fixed pointer: it turns with the wheel. "+
		"(A scale that stays beside the wheel, read by a pointer on the wheel, is the other disc.) Angles at the hand are those of the ring times %s.", size, closest, sheet.Figures.Number(float64(d.shot.Gear), 2))
	if d.turns > 1 {
		text += fmt.Sprintf(" The wheel turns %s times over the ring: the line runs inwards, and each turn has its number.", sheet.Figures.Number(d.turns, 2))
	}
	if lettered {
		text += " The marks stand close: each has a letter, as in the table."
	}
	if len(d.thumbs()) > 0 {
		text += " Dots at the rim: there the thumb takes hold for the pulls named."
	}
	return text
}

// drawDisc draws the cut, the centre and the line that the marks stand on.
func (d *dial) drawDisc(g *draw.Group) {
	g.Add(draw.Disc{Centre: d.centre, Radius: d.outer, Stroke: sheet.Dashed(draw.Mid, sheet.Thin, 2, 1.2)})
	const cross = 2.5
	g.Line(d.centre.X-cross, d.centre.Y, d.centre.X+cross, d.centre.Y, sheet.Solid(draw.Black, sheet.Hair))
	g.Line(d.centre.X, d.centre.Y-cross, d.centre.X, d.centre.Y+cross, sheet.Solid(draw.Black, sheet.Hair))
	g.Add(draw.Disc{Centre: d.centre, Radius: 0.8, Stroke: sheet.Solid(draw.Black, sheet.Hair)})
	g.Add(d.name())
	g.Add(draw.Path{Runs: [][]draw.Point{sheet.Simplify(d.arc(0, 360*d.turns, 0))}, Stroke: sheet.Solid(draw.Mid, sheet.Thin)})
}

// name tells whose disc it is once it is cut out.
func (d *dial) name() draw.Text {
	text := draw.NewText(d.centre.X, d.centre.Y+dialHub+2.6, d.shot.ID+" · "+d.shot.Lens, sheet.FontSmall, draw.Grey)
	return text.Aligned(draw.Middle).Shortened(d.outer)
}

// keepClear takes what texts may not stand on: the middle of the disc, and lines as far
// as it can be had.
func (d *dial) keepClear(c *sheet.Clearing) {
	c.Taken = append(c.Taken, draw.Box{X: d.centre.X, Y: d.centre.Y}.Grow(dialHub), d.name().Room().Grow(0.2))
	for _, run := range d.rings() {
		c.Avoid(run)
	}
	for _, text := range d.turnNumbers() {
		c.Taken = append(c.Taken, text.Room())
	}
	for _, m := range marks.OfLens(d.shot) {
		if !m.Stop {
			continue
		}
		w := d.wedge(d.hand(m.Deg))
		box := draw.Box{X: w[0].X, Y: w[0].Y}
		for _, p := range w[1:] {
			box = draw.Box{
				X: min(box.X, p.X), Y: min(box.Y, p.Y),
				W: max(box.Right(), p.X) - min(box.X, p.X), H: max(box.Bottom(), p.Y) - min(box.Y, p.Y),
			}
		}
		c.Taken = append(c.Taken, box)
	}
}

// dialHub is half the side of the room in the middle: for the centre, and the
// arrow that tells the way to infinity.
const dialHub = 6.5

// rings are the line that the marks stand on, in chords.
func (d *dial) rings() [][]draw.Point { return [][]draw.Point{d.arc(0, 360*d.turns, 0)} }

// turnNumbers are the numbers of the turns, each at the top of its own, where
// the wheel turns more than once; of turns that lie close only some have one.
func (d *dial) turnNumbers() []draw.Text {
	if d.turns <= 1 {
		return nil
	}
	var numbers []draw.Text
	every := math.Ceil(4.6 / d.pitch())
	for turn := 0.0; turn < d.turns; turn += every {
		at := d.point(360*turn, d.track(360*turn))
		text := draw.NewText(at.X-2.2, at.Y-0.6, "turn "+sheet.Figures.Number(turn+1, 0), sheet.FontSmall, draw.Grey).Aligned(draw.End)
		if turn == 0 { // no line comes from there, and the cut is near
			text.At.Y = at.Y + sheet.FontSmall.Middle()
		}
		if !d.clockwise {
			text.At.X, text.Align = at.X+2.2, draw.Start
		}
		numbers = append(numbers, text)
	}
	return numbers
}

// drawDirection draws an arrow round the centre, the way that infinity lies.
func (d *dial) drawDirection(g *draw.Group) {
	const radius, from, to = 4.6, 30, 130
	var run []draw.Point
	for deg := float64(from); deg <= to-18; deg += 4 {
		run = append(run, d.point(deg, radius))
	}
	g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
	g.Add(draw.Path{Runs: [][]draw.Point{{d.point(to, radius), d.point(to-25, radius+0.9), d.point(to-25, radius-0.9)}}, Closed: true, Fill: draw.Black})
	at := d.point(165, radius)
	g.Add(draw.NewText(at.X, at.Y+sheet.FontStrong.Middle(), "∞", sheet.FontStrong, draw.Black).Aligned(draw.Middle))
	for _, text := range d.turnNumbers() {
		g.Add(sheet.Halo(text.Box()), text)
	}
}

// drawScale draws the lens's own marks lightly outside the line, and wedges at
// the stops of the ring.
func (d *dial) drawScale(g *draw.Group) {
	g.Title = "the lens's own marks, to lay the disc by"
	for _, m := range marks.OfLens(d.shot) {
		deg := d.hand(m.Deg)
		r := d.track(deg)
		if m.Stop {
			g.Add(draw.Path{Runs: [][]draw.Point{d.wedge(deg)}, Closed: true, Fill: draw.Black})
			continue
		}
		a, b := d.point(deg, r), d.point(deg, r+1.5)
		g.Line(a.X, a.Y, b.X, b.Y, sheet.Solid(draw.Mid, sheet.Thin))
	}
}

// wedge is the triangle that points at a stop of the ring, from outside.
func (d *dial) wedge(deg float64) []draw.Point {
	r, half := d.track(deg), 1.2*60/d.outer
	return []draw.Point{d.point(deg, r), d.point(deg-half, r+1.8), d.point(deg+half, r+1.8)}
}

// size returns a length on the disc, less where the turns lie close.
func (d *dial) size(mm float64) float64 {
	if d.turns <= 1 {
		return mm
	}
	return min(mm, mm*d.pitch()/6)
}

// drawWindow draws the window of a mark as a bar along the line, with an end
// where it ends.
func (d *dial) drawWindow(g *draw.Group, m marks.Mark) {
	if !m.Sharp() {
		return
	}
	from, to := d.hand(m.Window[0]), d.hand(m.Window[1])
	inwards, half := d.size(1.4), d.size(dialBar)/2
	g.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(d.arc(from, to, inwards-half), d.arc(from, to, inwards+half))}, Closed: true, Fill: draw.Mid})
	d.drawDoubt(g, m, inwards+half)
	for i, deg := range []float64{from, to} {
		if !m.Open[i] {
			a, b := d.point(deg, d.track(deg)-inwards+1.6*half), d.point(deg, d.track(deg)-inwards-1.6*half)
			g.Line(a.X, a.Y, b.X, b.Y, sheet.Solid(draw.Black, sheet.Thin))
		}
	}
}

// drawDoubt draws inside a window how well its mark is known: a thin bar of two sigma to
// either side.
func (d *dial) drawDoubt(g *draw.Group, m marks.Mark, inwards float64) {
	throw := d.shot.Optics.Ring.Throw()
	from, to := max(m.Deg-2*m.Sigma, 0), min(m.Deg+2*m.Sigma, throw)
	if !sheet.Finite(m.Sigma) || from >= to {
		return
	}
	in, out := inwards+d.size(0.15), inwards+d.size(0.15+doubtBar)
	g.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(d.arc(d.hand(from), d.hand(to), in), d.arc(d.hand(from), d.hand(to), out))}, Closed: true, Fill: draw.Black})
}

// drawMarks draws the lines of the marks.
func (d *dial) drawMarks(g *draw.Group) {
	for _, m := range d.marks {
		if d.two(m) {
			d.drawSides(g, m)
			continue
		}
		run := d.line(m.Deg, dialTick)
		g.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, tick(m, sheet.Medium))
	}
}
