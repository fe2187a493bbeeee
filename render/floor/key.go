// The words of an overhead: beside each floor what its figures mean, at the
// foot the signs.

package floor

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// drawWords writes beside the floor its scale and what the tape starts from.
func (f *floor) drawWords(g *draw.Group) {
	name := "Floor"
	switch {
	case f.from > 0:
		name = "Far floor"
	case sheet.Finite(f.past):
		name = "Near floor"
	}
	y := f.box.Y + 2.2
	g.Add(draw.NewText(sheet.Margin, y, name+" "+f.scaleText(), sheet.FontHeading, draw.Black))
	y = f.drawScaleBar(g, y+3)
	for _, line := range f.words() {
		for _, part := range sheet.FontSmall.Wrap(line, floorGutter-4) {
			if y += 3.1; y > f.box.Bottom()-0.5 {
				return
			}
			g.Add(draw.NewText(sheet.Margin, y, part, sheet.FontSmall, draw.Grey))
		}
		y += 0.9
	}
}

// drawScaleBar draws a round length to scale, with its name; it returns where
// it ends.
func (f *floor) drawScaleBar(g *draw.Group, y float64) float64 {
	const most = 30.0
	unit := 1.0
	if f.shot.Imperial {
		unit = plan.InchesPerFoot * plan.Inch
	}
	best := 0.0
	for decade := 1e-3; decade*unit*f.perMetre <= most; decade *= 10 {
		for _, n := range []float64{1, 2, 5} {
			if v := n * decade * unit; v*f.perMetre <= most {
				best = v
			}
		}
	}
	w := best * f.perMetre
	g.Add(draw.Rect{Box: draw.Box{X: sheet.Margin, Y: y, W: w / 2, H: 1.1}, Fill: draw.Black, Stroke: sheet.Solid(draw.Black, sheet.Hair)},
		draw.Rect{Box: draw.Box{X: sheet.Margin + w/2, Y: y, W: w / 2, H: 1.1}, Fill: draw.Paper, Stroke: sheet.Solid(draw.Black, sheet.Hair)})
	g.Add(draw.NewText(sheet.Margin+w+1.4, y+1.5, sheet.Style(f.shot).Tape(best), sheet.FontSmall, draw.Black).Shortened(floorGutter - w - 2))
	return y + 2
}

// words are the lines beside the floor, the weightiest first.
func (f *floor) words() []string {
	s := f.shot
	origin := "Tape from the sensor mark, read along the axis"
	if s.Optics.FromLens {
		origin = "Tape from the front of the lens's principal plane, read along the axis"
	}
	switch {
	case s.Optics.Rig != nil:
		origin += " of the start; a bar below it is as far from the camera as the focus then is, along the lens's axis"
	case s.Optics.Travels():
		origin += "; the tape below lies where the camera first stands, distances are from where it is then"
	}
	lines := []string{"Holds when printed at 100 %.", origin + "."}
	views := sights(f.shot)
	for i, v := range views {
		if v.turned() && i > 0 && s.Focal(v.t) == s.Focal(views[0].t) {
			continue // it sees as much, elsewhere
		}
		line := "Field of view " + sheet.Figures.AngleTo(v.angle(), 1) + " at " + sheet.Figures.Millimetres(s.Focal(v.t))
		if i > 0 {
			line += " at the end (dashed)"
		}
		lines = append(lines, line+".")
	}
	if f.past < math.Inf(1) {
		lines = append(lines, "What stands farther is on the floor below, at another scale.")
	}
	return lines
}

// degrees1 writes an angle to a tenth.

// drawKey draws the signs of the floors.
func (o *overhead) drawKey(g *draw.Group) {
	base := o.paper.H - sheet.Edge - 2.6
	g.Line(sheet.Margin, base-4.4, o.paper.W-sheet.Margin, base-4.4, sheet.Solid(draw.Pale, sheet.Hair))
	x := sheet.Margin
	for _, e := range o.keyEntries() {
		if x+e.Width+sheet.KeyText+sheet.FontSmall.Room(e.Text) > o.paper.W-sheet.Margin {
			return
		}
		e.Draw(g, x, base-sheet.FontSmall.Middle())
		text := draw.NewText(x+e.Width+sheet.KeyText, base, e.Text, sheet.FontSmall, draw.Grey)
		g.Add(text)
		x = text.Box().Right() + sheet.KeyGap - 1
	}
}

func (o *overhead) keyEntries() []sheet.KeyEntry {
	spot := func(fill draw.Ink) func(*draw.Group, float64, float64) {
		return func(g *draw.Group, x, y float64) {
			g.Add(draw.Disc{Centre: draw.Point{X: x + spotRadius, Y: y}, Radius: spotRadius, Fill: fill, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
		}
	}
	entries := []sheet.KeyEntry{
		sheet.Entry("where someone starts", 2*spotRadius, spot(draw.Black)),
		sheet.Entry("focus, depth of field", 7, sheet.KeyZone),
		sheet.Entry("S: start; numbers: pulls", 0, sheet.NoSign),
		sheet.Entry("camera and what it sees", 7.5, func(g *draw.Group, x, y float64) {
			g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 1, W: 3, H: 2}, Fill: draw.Black})
			g.Line(x+3, y, x+7.5, y-1.2, sheet.Solid(draw.Black, sheet.Thin))
			g.Line(x+3, y, x+7.5, y+1.2, sheet.Solid(draw.Black, sheet.Thin))
		}),
	}
	if sheet.MovesAtAll(o.shot) {
		entries = append(entries, sheet.Entry("later place", 2*spotRadius, spot(draw.Paper)),
			sheet.Entry("path of a subject", 8, func(g *draw.Group, x, y float64) {
				g.Line(x, y, x+8, y, sheet.Dashed(draw.Black, sheet.Medium, 1.6, 0.9))
			}))
	}
	if o.shot.Optics.Rig != nil {
		return append(entries, o.rigEntries()...)
	}
	if o.shot.Optics.Camera.Moves() {
		entries = append(entries, sheet.Entry(o.trackName(), 8, func(g *draw.Group, x, y float64) {
			g.Line(x, y-0.5, x+8, y-0.5, sheet.Solid(draw.Black, sheet.Thin))
			g.Line(x, y+0.5, x+8, y+0.5, sheet.Solid(draw.Black, sheet.Thin))
		}))
	}
	return entries
}

// rigEntries are the signs of a camera that turns or leaves its axis.
func (o *overhead) rigEntries() (entries []sheet.KeyEntry) {
	if o.shot.Optics.Turns() {
		entries = append(entries, sheet.Entry("where a pan ends", 7.5, func(g *draw.Group, x, y float64) {
			for _, end := range []float64{-1.2, 1.2} {
				g.Line(x, y, x+7.5, y+end, sheet.Dashed(draw.Black, sheet.Thin, 2.4, 1.2))
			}
		}))
	}
	if leavesPlace(o.shot) {
		entries = append(entries, sheet.Entry("way of the camera", 8, func(g *draw.Group, x, y float64) {
			g.Line(x, y, x+8, y, sheet.Solid(draw.Black, sheet.Heavy))
		}))
	}
	return entries
}

// trackName is what the camera's path is: a dolly's track, or the way of whoever
// carries it.
func (o *overhead) trackName() string {
	if sheet.Carried(o.shot) {
		return "path of the camera"
	}
	return "dolly track"
}

// drawCautions draws on an overhead the cautions that apply: distances are
// measured by it.
func (o *overhead) drawCautions(g *draw.Group) {
	base := o.paper.H - sheet.Edge + 1.2
	if list := sheet.MotionCautions(o.shot); len(list) > 0 {
		sheet.DrawSentences(g, base, list)
		base += 3.2
	}
	sheet.DrawSentences(g, base, []string{sheet.LaserCaution, sheet.ChargeCaution})
}
