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

// A side is a side of the field of view of a camera, cut to the floor.
type side struct {
	camera int
	seek.Segment
	parts []seek.Segment // without what lies over it
	strip []draw.Point   // of hatch inside it
}

// sides returns those of all cameras as their shots start.
func (l *layer) sides() (list []side) {
	for i := range l.cameras {
		v, ok := l.sightOf(&l.cameras[i])
		if !ok {
			continue
		}
		for _, end := range []draw.Point{v.left, v.right} {
			if s, ok := seek.Between(v.apex, end).Clipped(l.box); ok {
				list = append(list, side{i, s, s.Outside(l.keepOut), l.strip(v, end)})
			}
		}
	}
	return list
}

// drawSights draws what each camera sees at first, with gaps where names lie over it.
func (l *layer) drawSights(g *draw.Group, sides []side, names []draw.Box) {
	var sub *draw.Group
	last := -1
	for _, s := range sides {
		cam := &l.cameras[s.camera]
		if s.camera != last {
			sub, last = g.Group("view"), s.camera
			sub.Title = draw.Clean("what " + cam.ID + " sees")
		}
		var runs [][]draw.Point
		for _, part := range s.parts {
			for _, left := range cut(part, names) {
				runs = append(runs, []draw.Point{left.A, left.B})
			}
		}
		signs.DrawSide(sub, runs, seek.Hatched(s.strip, cam.hatch, signs.SidePitch, hatchLeast))
	}
}

// cut returns what of a segment lies beside all of some boxes, and a little off them.
func cut(s seek.Segment, boxes []draw.Box) []seek.Segment {
	const off, least = 0.64, 1.0 // of a text that keeps clear, nothing is cut
	left := []seek.Segment{s}
	for _, b := range boxes {
		var next []seek.Segment
		for _, s := range left {
			from, to := b.Grow(off).Share(s.A, s.B)
			if from >= to {
				next = append(next, s)
				continue
			}
			for _, part := range []seek.Segment{seek.Between(s.A, s.At(from)), seek.Between(s.At(to), s.B)} {
				if part.Length() >= least {
					next = append(next, part)
				}
			}
		}
		left = next
	}
	return left
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
