// Fields of view: their two sides, each with a strip of hatch inside it that tells whose
// it is. All of a field hatched would lie under every name of the sheet.

package staged

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/floor/seek"
	"pullscore/render/signs"
)

const (
	stripWide  = 2.0  // of the hatch inside a side of a field of view, millimetres
	leastSides = 18.0 // how long its sides are at least
	pastThem   = 1.1  // how far they go, of the way to the farthest that is seen
	hatchLeast = 0.5
)

// A sight is the field of view of a camera on the page.
type sight struct {
	apex        draw.Point
	left, right draw.Point // the ends of its sides
}

// sightOf returns the field of view of a camera as its shot starts.
func (l *layer) sightOf(c *camera) (sight, bool) {
	cos := math.Cos(c.Pose.Tilt * math.Pi / 180)
	if cos < 0.05 || c.PerSide <= 0 { // it looks straight down
		return sight{}, false
	}
	ahead, right := headed(c.Pose.Pan)
	mark := l.at(spotOfPose(c.Pose))
	apex := moved(mark, ahead, ahead, c.Lens*cos*l.perMetre, 0)
	slope := c.PerSide / cos
	long := max(pastThem*c.Reach*cos-c.Lens*cos, 0) * l.perMetre
	long = max(long, leastSides/math.Hypot(1, slope))
	return sight{apex, moved(apex, ahead, right, long, -long*slope), moved(apex, ahead, right, long, long*slope)}, true
}

// drawSights draws what each camera sees at first.
func (l *layer) drawSights(g *draw.Group, c *seek.Clearing) {
	for i := range l.cameras {
		cam := &l.cameras[i]
		v, ok := l.sightOf(cam)
		if !ok {
			continue
		}
		sub := g.Group("view")
		sub.Title = draw.Clean("what " + cam.ID + " sees")
		for _, end := range []draw.Point{v.left, v.right} {
			side, ok := seek.Between(v.apex, end).Clipped(l.box)
			if !ok {
				continue
			}
			var runs [][]draw.Point
			for _, part := range side.Outside(l.keepOut) {
				runs = append(runs, []draw.Point{part.A, part.B})
				c.Lines = append(c.Lines, part)
			}
			strip := l.strip(v, end)
			c.Tints = append(c.Tints, strip)
			signs.DrawSide(sub, runs, seek.Hatched(strip, cam.hatch, signs.SidePitch, hatchLeast))
		}
	}
}

// strip returns the outline of the strip inside a side, within the field of view and the
// floor.
func (l *layer) strip(v sight, end draw.Point) []draw.Point {
	s := seek.Between(v.apex, end)
	long := s.Length()
	in := draw.Point{X: -(end.Y - v.apex.Y) / long, Y: (end.X - v.apex.X) / long} // to the right
	if end == v.right {
		in = draw.Point{X: -in.X, Y: -in.Y}
	}
	strip := []draw.Point{v.apex, end, moved(end, in, in, stripWide, 0), moved(v.apex, in, in, stripWide, 0)}
	return seek.Cropped(seek.Cropped(strip, []draw.Point{v.apex, v.left, v.right}), seek.Corners(l.box))
}
