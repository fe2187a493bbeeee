// The sharp zone in the band of distances. Its limits are drawn where they lie in the
// band, and nowhere else: along the edge of the band runs no limit, and a sign outside
// says to where the zone goes on.

package bands

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// On is how far from the edge of a band something lies in it, in millimetres.
const On = 0.02

// A Stretch is a part of the time axis, in millimetres from the left of the page, and
// where the limit of the zone is at its end, in metres.
type Stretch struct{ From, To, Metres float64 }

// edgeLeast is how long a stretch is at least that has a sign.
const edgeLeast = 12.0

// EdgeRoom returns how high the room is that the signs of a zone take which goes on above
// the band, or below it: 0 where it does not.
func (w *Window) EdgeRoom(above bool) float64 {
	const height = 3.4
	for _, s := range w.stretches(above) {
		if s.To-s.From > edgeLeast {
			return height
		}
	}
	return 0
}

// stretches returns where the zone goes on beyond the far or the near edge of the band.
func (w *Window) stretches(far bool) (list []Stretch) {
	limit := w.Curves.Near
	if far {
		limit = w.Curves.Far
	}
	open := false
	for i, t := range w.Curves.T {
		y := w.Depth.free(limit[i], 0, 100)
		if out := far && y <= 0.02 || !far && y >= 99.98; !out {
			open = false
			continue
		}
		x := w.X(t)
		if !open {
			list = append(list, Stretch{From: x})
			open = true
		}
		last := &list[len(list)-1]
		last.To, last.Metres = x, limit[i]
	}
	return list
}

// Limits returns the limits of the zone as runs, as far as they lie in the band.
func (b *DistanceBand) Limits() [][]draw.Point {
	c := &b.Window.Curves
	var all [][]draw.Point
	for _, limit := range [][]float64{c.Far, c.Near} {
		for _, run := range b.Window.Runs(func(i int) float64 { return b.Depth.free(limit[i], b.Top, b.Height) }) {
			all = append(all, Simplified(sheet.Within(run, b.Top+On, b.Top+b.Height-On))...)
		}
	}
	return all
}

// DrawZone draws the subjects' bands and the sharp zone with its limits.
func (b *DistanceBand) DrawZone(g *draw.Group) {
	c := &b.Window.Curves
	zone, subjects, hatch := g.Group("sharp-zone"), g.Group("subjects"), g.Group("sharp-zone")
	zone.Title, hatch.Title = "sharp zone", "sharp zone"
	b.drawSubjects(subjects)
	far := Simplified(b.Run(func(i int) float64 { return c.Far[i] }))
	near := Simplified(b.Run(func(i int) float64 { return c.Near[i] }))
	if len(far) == 1 && len(near) == 1 {
		outline := sheet.Between(far[0], near[0])
		zone.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.BluePale})
		hatch.Add(draw.Path{Runs: draw.Hatch(outline, sheet.HatchPitch, sheet.HatchLeast), Stroke: draw.Solid(draw.Blue, draw.HatchWidth)})
	}
	if limits := b.Limits(); len(limits) > 0 {
		hatch.Add(draw.Path{Runs: limits, Stroke: draw.Solid(draw.Blue, draw.FineWidth)})
	}
	b.drawEdges(g)
}

// drawEdges says outside the band where the zone goes on to.
func (b *DistanceBand) drawEdges(g *draw.Group) {
	for _, above := range []bool{true, false} {
		for _, s := range b.Window.stretches(above) {
			if s.To-s.From > edgeLeast {
				b.drawEdge(g, s, above)
			}
		}
	}
}

// drawEdge writes where the zone goes on to, as late in the stretch as no line runs
// through it.
func (b *DistanceBand) drawEdge(g *draw.Group, s Stretch, above bool) {
	const wide, gap = 1.8, 0.8
	y := b.Top - 0.7
	if !above {
		y = b.Top + b.Height + 0.7
	}
	value := sheet.Style(b.Shot).Tape(s.Metres)
	text := draw.NewText(0, 0, value, sheet.FontSmall, draw.Blue)
	room := wide + gap + text.Room().W
	at := math.Inf(-1)
	for x := s.To - room; x >= s.From; x-- {
		if b.clear(x-0.6, x+room+0.6) {
			at = x
			break
		}
	}
	if math.IsInf(at, 0) {
		at = max(s.From, s.To-room)
	}
	signs.DrawEdge(g, at+wide/2, y, above, value)
}

// clear reports whether no plumb line, and no line of a landing, falls between two places.
func (b *DistanceBand) clear(from, to float64) bool {
	hit := func(x float64) bool { return x > from && x < to }
	return !slices.ContainsFunc(b.PlumbX, hit) &&
		!slices.ContainsFunc(b.Shot.Pulls, func(p *plan.Pull) bool { return hit(b.Window.X(float64(p.Land))) })
}
