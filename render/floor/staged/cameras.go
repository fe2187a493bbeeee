// Cameras, their ways and pans.
//
// The sign of a camera is a wedge: its tip lies on the sensor mark, and it points the way
// the lens looks. Its ID stands in it. Where that has no room, or the wedge would cover
// another or a place, it is smaller, and its ID stands beside it.

package staged

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A camera is a set-up on the page.
type camera struct {
	*Setup
	hatch float64 // degrees
	tip   draw.Point
	ahead draw.Point
	size  signs.WedgeSize
	far   bool       // it stands at the edge, and its tip is not its sensor mark
	told  *draw.Text // how far off it is; nil where that has no room
}

// hatches are those of the cameras of a sheet, in their order.
var hatches = [mostCameras]float64{45, 135, 0, 90}

// layCameras lays the set-ups of a sheet onto it.
func (l *layer) layCameras(setups []Setup, far map[string]bool) []camera {
	list := make([]camera, len(setups))
	for i := range setups {
		c := camera{Setup: &setups[i], hatch: hatches[i], size: signs.SmallWedge, far: far[setups[i].ID]}
		c.tip = l.at(spotOfPose(c.Pose))
		c.ahead, _ = headed(c.Pose.Pan)
		if c.far {
			c.tip = l.edgeTo(c.tip)
		}
		list[i] = c
	}
	for i := range list {
		full := list[i]
		full.size = signs.FullWedge
		if l.hasRoom(full, list, i) {
			list[i] = full
		}
	}
	return list
}

// edgeTo returns the point at the edge of the floor on the way from its middle to another.
func (l *layer) edgeTo(p draw.Point) draw.Point {
	middle := draw.Point{X: l.box.X + l.box.W/2, Y: l.box.Y + l.box.H/2}
	_, last := l.box.Grow(-spare).Share(middle, p)
	return seek.Between(middle, p).At(last)
}

// hasRoom reports whether a wedge can have its full size: its ID fits into it, it covers no
// place, and no other camera.
func (l *layer) hasRoom(c camera, list []camera, at int) bool {
	if !c.holdsID() {
		return false
	}
	for _, i := range l.places {
		if p := l.at(l.floor.Places[i].At); c.near(p) < 1 {
			return false
		}
	}
	for i, o := range list {
		for _, room := range o.room() {
			if i != at && c.near(room.At) < room.Radius {
				return false
			}
		}
	}
	return true
}

// near returns how far a point is from the rooms of a wedge; 0 where it lies in one.
func (c *camera) near(p draw.Point) float64 {
	least := math.Inf(1)
	for _, r := range c.room() {
		least = min(least, max(seek.Distance(p, r.At)-r.Radius, 0))
	}
	return least
}

// room returns circles that cover the wedge.
func (c *camera) room() []seek.Circle {
	_, right := headed(math.Atan2(c.ahead.X, -c.ahead.Y) * 180 / math.Pi)
	at := func(by, aside, radius float64) seek.Circle {
		return seek.Round(moved(c.tip, c.ahead, right, -by*c.size.Long, aside*c.size.Half), radius*c.size.Half)
	}
	return []seek.Circle{at(0.2, 0, 0.3), at(0.42, 0, 0.42), at(0.7, 0, 0.62), at(0.9, 0.6, 0.4), at(0.9, -0.6, 0.4)}
}

var fontID = draw.Font{Size: 7.5, Bold: true}

// idAt returns where the ID stands in a wedge.
func (c *camera) idAt() draw.Text {
	middle, _ := c.size.Middle(c.tip, c.ahead)
	return draw.NewText(middle.X, middle.Y+fontID.Middle(), c.ID, fontID, draw.Paper).Aligned(draw.Middle)
}

// holdsID reports whether the ID fits into the wedge.
func (c *camera) holdsID() bool {
	middle, r := c.size.Middle(c.tip, c.ahead)
	high := 2 * fontID.Middle()
	return math.Hypot(fontID.Room(c.ID)/2, high/2) <= r-0.15 && seek.Distance(middle, c.tip) > 0
}

// drawCameras draws the cameras of a sheet with what they do, and returns words beside them.
func (l *layer) drawCameras(g *draw.Group, c *seek.Clearing) (words []seek.Label) {
	for i := range l.cameras {
		l.drawWay(g, c, &l.cameras[i])
	}
	for i := range l.cameras {
		words = append(words, l.drawPans(g, c, &l.cameras[i])...)
	}
	for i := range l.cameras {
		words = append(words, l.drawBody(g, c, &l.cameras[i])...)
	}
	return words
}

// drawBody draws a camera, with its ID in it or beside it.
func (l *layer) drawBody(g *draw.Group, c *seek.Clearing, cam *camera) []seek.Label {
	sub := signs.DrawWedge(g, cam.tip, cam.ahead, cam.size, false)
	sub.Title, sub.ID, sub.Link = draw.Clean("set-up "+cam.ID), l.floor.wedgeID(cam.Setup), l.floor.blockID(cam.Setup)
	c.Discs = append(c.Discs, cam.room()...)
	middle, radius := cam.size.Middle(cam.tip, cam.ahead)
	figures := draw.NewText(0, 0, cam.figures(l.floor), fontValue, draw.Grey).Shortened(widestName)
	t := seek.Label{At: middle, Radius: radius, Spare: 1}
	if cam.size == signs.FullWedge {
		sub.Add(cam.idAt())
		t.Lines, t.Told = []draw.Text{figures}, true
	} else {
		t.Lines = []draw.Text{draw.NewText(0, 0, cam.ID, fontName, draw.Black).Shortened(widestName), figures}
	}
	words := []seek.Label{t}
	if cam.far {
		l.drawFar(g, c, cam)
	}
	return words
}

// figures returns the focal length of a set-up and how high its camera stands.
func (s *Setup) figures(f *Floor) string {
	return sheet.Figures.Millimetres(s.FocalMM/1000) + " · " + f.Style.Tape(s.Pose.Z) + " high"
}

const farLine = 26.0 // millimetres

// tellFar finds the place for the distance of a camera that stands at the edge, on its axis,
// and keeps lines out of it.
func (l *layer) tellFar(cam *camera) {
	if !cam.far {
		return
	}
	words := cam.Focus
	if words == "" {
		words = l.floor.Style.Tape(math.Hypot(cam.Pose.X, cam.Pose.Y)) + " to the zero point"
	}
	inside := l.box.Grow(-1)
	for _, share := range []float64{0.55, 0.7, 0.85, 1} {
		middle := moved(cam.tip, cam.ahead, cam.ahead, share*farLine, 0)
		text := draw.NewText(middle.X, middle.Y+fontValue.Middle(), words, fontValue, draw.Black).Aligned(draw.Middle)
		room := text.Room()
		text.At.X += max(inside.X-room.X, 0) - max(room.Right()-inside.Right(), 0)
		room = text.Room()
		if !inside.Holds(room) || slices.ContainsFunc(l.keepOut, func(c seek.Circle) bool { return c.Touches(room.Grow(0.7)) }) {
			continue
		}
		cam.told = &text
		for x := room.X; x < room.Right()+1; x++ {
			l.keepOut = append(l.keepOut, seek.Round(draw.Point{X: min(x, room.Right()), Y: room.Y + room.H/2}, room.H/2+0.8))
		}
		return
	}
}

// drawFar draws the line to a camera that stands at the edge, with its distance in a gap.
func (l *layer) drawFar(g *draw.Group, c *seek.Clearing, cam *camera) {
	if cam.told == nil {
		return
	}
	sub := g.Group("far")
	line := seek.Between(cam.tip, moved(cam.tip, cam.ahead, cam.ahead, farLine+4, 0))
	room := cam.told.Room()
	from, to := room.Grow(0.7).Share(line.A, line.B)
	if from >= to {
		from, to = 1, 1
	}
	for _, part := range [][2]float64{{0, from}, {to, 1}} {
		if s, ok := seek.Between(line.At(part[0]), line.At(part[1])).Clipped(l.box); ok && s.Length() > 0.5 {
			sub.Line(s.A.X, s.A.Y, s.B.X, s.B.Y, draw.Solid(draw.Black, draw.RulerWidth))
			c.Lines = append(c.Lines, s)
		}
	}
	sub.Add(*cam.told)
	c.Boxes = append(c.Boxes, room)
}

// drawWay draws where a camera goes, and where it is in the end.
func (l *layer) drawWay(g *draw.Group, c *seek.Clearing, cam *camera) {
	if len(cam.Path) == 0 || cam.far {
		return
	}
	var run []draw.Point
	for _, s := range cam.Path {
		run = append(run, l.at(s))
	}
	last := camera{tip: l.at(spotOfPose(cam.End)), size: signs.LaterWedge}
	last.ahead, _ = headed(cam.End.Pan)
	if short := before(run, &last); short != nil {
		signs.DrawWedge(g, last.tip, last.ahead, last.size, true)
		c.Discs = append(c.Discs, last.room()...)
		run = short
	}
	if run = sheet.Simplify(run); len(run) < 2 || seek.LengthOf(run) < 1 {
		return
	}
	sub := g.Group("path")
	sub.Title = draw.Clean("the camera of " + cam.ID + " goes")
	signs.DrawCameraWay(sub, run)
	c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
}

// before returns a way as far as it comes to the sign of the camera at its end; nil where
// next to nothing is left of it.
func before(run []draw.Point, last *camera) []draw.Point {
	const off, least = 0.5, 3.5
	for len(run) > 1 && last.near(run[len(run)-1]) < off {
		run = run[:len(run)-1]
	}
	if len(run) < 2 || seek.LengthOf(run) < least {
		return nil
	}
	return run
}

const (
	arcRadius = 10.0 // of the first pan of a camera, from its sensor mark, millimetres
	arcPitch  = 2.6  // from one to the next
	arcMost   = 5
)

// drawPans draws the pans of a camera as arcs, and returns their degrees.
func (l *layer) drawPans(g *draw.Group, c *seek.Clearing, cam *camera) (words []seek.Label) {
	for i, p := range cam.Pans {
		at := l.at(p.At)
		if cam.far {
			at = cam.tip
		}
		runs, ends := l.arc(at, p, arcRadius+arcPitch*float64(i%arcMost))
		if len(runs) == 0 {
			continue
		}
		sub := g.Group("turn")
		sub.Title = draw.Clean(cam.ID + " pans")
		signs.DrawPanArc(sub, runs, ends)
		longest := runs[0]
		for _, run := range runs {
			c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
			if len(run) > len(longest) {
				longest = run
			}
		}
		n := len(longest)
		if at, ok := l.open(longest[n/2], longest[n/4], longest[3*n/4], longest[0], longest[n-1]); ok {
			words = append(words, wordAt(sheet.Figures.AngleTo(math.Abs(p.By), 1), at, 0.3))
		}
	}
	return words
}

// arc returns what of the arc of a pan lies in the box, and whether its end does.
func (l *layer) arc(at draw.Point, p Pan, radius float64) (runs [][]draw.Point, ends bool) {
	var run []draw.Point
	steps := max(8, int(math.Abs(p.By)/3))
	for i := range steps + 1 {
		ahead, _ := headed(p.From + p.By*float64(i)/float64(steps))
		q := moved(at, ahead, ahead, radius, 0)
		if l.holds(q, 1) {
			run = append(run, q)
			continue
		}
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	if ends = len(run) > 1; ends {
		runs = append(runs, run)
	}
	return runs, ends
}
