// Fields of view, axes, and slabs that are sharp.

package floor

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/signs"
)

// viewEnds returns how far a state's field of view is drawn: a tenth beyond the farthest
// place ahead of it, in metres along its axis.
func (f *Floor) viewEnds(v layout.State, places []int) float64 {
	far, any := 0.0, 0.0
	for _, i := range places {
		p := f.Places[i].At
		far = max(far, v.Pose.View(p.X, p.Y, f.Places[i].Up).Along)
		any = max(any, layout.Apart(p, v.From(0, 0)))
	}
	switch {
	case far > v.Lens:
		return 1.1 * far
	case any > v.Lens: // all are behind it
		return any
	}
	return v.Lens + 3
}

// edges returns the two sides of a state's field of view on the page, as far as it is
// drawn.
func (l *layer) edges(v layout.State) []seek.Segment {
	var list []seek.Segment
	end := l.floor.viewEnds(v, l.places)
	for _, side := range []float64{-1, 1} {
		if s, ok := seek.Between(l.at(v.Apex()), l.at(v.Spot(end, side))).Clipped(l.box); ok {
			list = append(list, s)
		}
	}
	return list
}

// drawSights draws what each camera sees in each of its states.
func (l *layer) drawSights(g *draw.Group, c *seek.Clearing) {
	for _, camera := range l.floor.Cameras {
		for i, v := range camera.States {
			if !v.Shown {
				continue
			}
			sub, stroke := g.Group("view"), draw.Solid(draw.Black, draw.RulerWidth)
			if i > 0 {
				sub, stroke = g.Group(signs.LaterState), draw.Later(draw.Black)
			}
			for _, edge := range l.edges(v) {
				l.limit(sub, c, edge, stroke)
			}
			if i == 0 {
				l.drawAxis(g, c, v)
			}
		}
	}
}

// limit draws a line that no text may lie on, with gaps at the places.
func (l *layer) limit(g *draw.Group, c *seek.Clearing, s seek.Segment, stroke draw.Stroke) {
	for _, part := range s.Outside(l.keepOut) {
		g.Group(signs.Limit).Line(part.A.X, part.A.Y, part.B.X, part.B.Y, stroke)
		c.Lines = append(c.Lines, part)
	}
}

// drawAxis draws the axis of the lens at the start.
func (l *layer) drawAxis(g *draw.Group, c *seek.Clearing, v layout.State) {
	axis := seek.Between(l.at(v.From(0, 0)), l.at(v.Spot(l.floor.viewEnds(v, l.places), 0)))
	s, ok := axis.Clipped(l.box)
	if !ok {
		return
	}
	sub := g.Group(signs.LensAxis)
	for _, part := range s.Outside(l.keepOut) {
		sub.Line(part.A.X, part.A.Y, part.B.X, part.B.Y, draw.Axis(draw.Grey))
	}
	c.Lines = append(c.Lines, s)
}

// mostSlabs is how many zones may lie over each other before they are bars alone.
const mostSlabs = 3

// drawSlabs draws what each focus keeps sharp, unless too many lie over each other.
func (l *layer) drawSlabs(g *draw.Group, c *seek.Clearing) {
	for i := range l.floor.Cameras {
		var slabs [][]draw.Point
		var zones []layout.Zone
		for _, z := range l.zones {
			if outline := l.slab(z.Zone); z.camera == i && seek.Area(outline) > 0.2 {
				slabs, zones = append(slabs, outline), append(zones, z.Zone)
			}
		}
		if tooMany(slabs) {
			continue
		}
		for k, outline := range slabs {
			c.Tints = append(c.Tints, outline)
			sub := g.Group(signs.Focus)
			sub.Title = draw.Clean(l.zoneTitle(zones[k]))
			sub.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.Zone},
				draw.Path{Runs: seek.Hatched(outline, []float64{45, 135, 0, 90}[i%4], signs.HatchPitch, signs.HatchLeast), Stroke: draw.Solid(draw.Blue, draw.HatchWidth)})
		}
		for _, z := range zones {
			l.drawLimits(g, c, z)
		}
	}
}

// drawLimits draws the near and the far side of a slab, as far as they lie in the field of
// view.
func (l *layer) drawLimits(g *draw.Group, c *seek.Clearing, z layout.Zone) {
	end := l.floor.viewEnds(z.Seen, l.places)
	for _, along := range []float64{z.Near, z.Far} {
		if !(along > z.Seen.Lens && along <= end) {
			continue
		}
		if s, ok := seek.Between(l.at(z.Seen.Spot(along, -1)), l.at(z.Seen.Spot(along, 1))).Clipped(l.box); ok {
			l.limit(g, c, s, draw.Solid(draw.Blue, draw.FineWidth))
		}
	}
}

// slab returns the outline of what a focus keeps sharp within the field of view, cut to the
// box.
func (l *layer) slab(z layout.Zone) []draw.Point {
	v := z.Seen
	near, far := max(z.Near, v.Lens), min(z.Far, l.floor.viewEnds(v, l.places))
	if !(far > near) {
		return nil
	}
	return seek.Cropped([]draw.Point{l.at(v.Spot(near, -1)), l.at(v.Spot(far, -1)), l.at(v.Spot(far, 1)), l.at(v.Spot(near, 1))}, seek.Corners(l.box))
}

// tooMany reports whether some outline lies over as many others as may lie over each other.
func tooMany(outlines [][]draw.Point) bool {
	for i, a := range outlines {
		over := 0
		for k, b := range outlines {
			if i != k && seek.Area(seek.Cropped(a, b)) > 0.5 {
				over++
			}
		}
		if over >= mostSlabs {
			return true
		}
	}
	return false
}

// zoneTitle says what a zone is.
func (l *layer) zoneTitle(z layout.Zone) string {
	style := l.floor.Style
	return z.Name + ": focus " + style.Tape(z.At) + ", sharp from " + style.Tape(z.Near) + " to " + style.Tape(math.Max(z.Far, z.Near))
}
