// A camera that turns, or leaves its axis, on the floor: where it goes, where its pans
// end, and what it sees there. The floor stays that of the start, so nobody on it moves.
//
// A view that is turned has the coordinates of one that is not: metres along its own
// axis, counted from where the camera then is. spot lays them on the floor. Everyone is
// as high as the lens was at the start, so from above, the plane of focus of a camera
// that tilts or booms lies where it meets that height.

package floor

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// cameraAlong returns where the camera is along the axis of the start at t, in metres.
func cameraAlong(s *plan.Shot, t float64) float64 {
	if s.Optics.Rig == nil {
		return s.Optics.Camera.At(t)
	}
	return s.Optics.Pose(t).Y
}

// turned reports whether the view is that of a camera with a rig.
func (v sight) turned() bool { return v.pose != nil }

// sameTurn reports whether two views look the same way from the same place.
func (v sight) sameTurn(o sight) bool {
	return v.turned() == o.turned() && (!v.turned() || samePose(*v.pose, *o.pose))
}

// limit returns the farthest metre of a view that can be on the floor.
func (f *floor) limit(v sight) float64 {
	if !v.turned() {
		return f.end()
	}
	return v.x + (f.box.W+f.box.H)/f.perMetre
}

// spot returns where on the page something lies that the view has at x metres and at so
// many times the half width of its picture to the right.
func (f *floor) spot(v sight, x, side float64) draw.Point {
	if !v.turned() {
		return f.at(x, side*(x-v.x)*v.perSide)
	}
	st, ct := math.Sincos(v.pose.Tilt * math.Pi / 180)
	level := (x - v.pose.Y + v.pose.Z*st) / max(ct, 0.05) // the camera looks down on the floor
	across := side * (x - v.x) * v.perSide
	sp, cp := math.Sincos(v.pose.Pan * math.Pi / 180)
	return f.at(v.pose.Y+level*cp-across*sp, v.pose.X+level*sp+across*cp)
}

// apex returns where the lens of a view lies on the page.
func (f *floor) apex(v sight) draw.Point {
	if !v.turned() {
		return f.at(v.x, 0)
	}
	sp, cp := math.Sincos(v.pose.Pan * math.Pi / 180)
	behind := v.x - v.pose.Y
	return f.at(v.pose.Y+behind*cp, v.pose.X+behind*sp)
}

// mostViews is how many views of a camera with a rig are drawn.
const mostViews = 6

// rigSights returns what a camera with a rig sees at first, where each pan ends, and at
// last; each view once.
func rigSights(s *plan.Shot) []sight {
	end := float64(s.Duration)
	var times []float64
	for _, p := range s.Optics.Rig.Pans {
		times = append(times, p.End)
	}
	times = slices.DeleteFunc(append(times, end), func(t float64) bool { return !(t > 0 && t <= end) })
	views := []sight{sightAt(s, 0)}
	for _, t := range sortedUnique(times) {
		known := slices.ContainsFunc(views, func(v sight) bool { return sameView(s, v.t, t) })
		if !known && len(views) < mostViews {
			views = append(views, sightAt(s, t))
		}
	}
	return views
}

// samePose reports whether the camera stands and looks alike on the floor at two times:
// to a centimetre and half a degree.
func samePose(a, b plan.Pose) bool {
	return math.Hypot(a.X-b.X, a.Y-b.Y) < 0.01 && math.Abs(plan.Wrapped(a.Pan-b.Pan)) < 0.5
}

// clipped returns what of a line lies in a box (Liang and Barsky 1984).
func clipped(a, b draw.Point, box draw.Box) (run []draw.Point, ok bool) {
	from, to := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, side := range [4][2]float64{{-dx, a.X - box.X}, {dx, box.Right() - a.X}, {-dy, a.Y - box.Y}, {dy, box.Bottom() - a.Y}} {
		switch p, q := side[0], side[1]; {
		case p == 0 && q < 0:
			return nil, false
		case p < 0:
			from = max(from, q/p)
		case p > 0:
			to = min(to, q/p)
		}
	}
	if !(from < to) {
		return nil, false
	}
	at := func(u float64) draw.Point { return draw.Point{X: a.X + u*dx, Y: a.Y + u*dy} }
	return []draw.Point{at(from), at(to)}, true
}

// drawTurnedView draws the edges of one view.
func (f *floor) drawTurnedView(g *draw.Group, c *sheet.Clearing, v sight, stroke draw.Stroke) {
	for _, side := range []float64{-1, 1} {
		if run, ok := clipped(f.apex(v), f.spot(v, f.limit(v), side), f.box); ok {
			g.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, stroke)
			c.Avoid(chords(run))
		}
	}
}

// acrossTurned returns the line across a view at x metres, its upper end first.
func (f *floor) acrossTurned(x float64, v sight) (run []draw.Point, ok bool) {
	if !(x > v.x) || math.IsInf(x, 1) {
		return nil, false
	}
	run, ok = clipped(f.spot(v, x, -1), f.spot(v, x, 1), f.box)
	if ok && run[0].Y > run[1].Y {
		slices.Reverse(run)
	}
	return run, ok
}

// drawRig draws the camera where it starts and, dashed, where each view of it is, with
// its way, its pans and what else it does.
func (f *floor) drawRig(g *draw.Group, c *sheet.Clearing) {
	f.drawWay(g, c)
	views := sights(f.shot)
	for i := len(views) - 1; i >= 0; i-- {
		f.drawTurnedBody(g, c, views[i], i > 0)
	}
	f.drawArcs(g, c)
	f.writeMoves(g, c)
}

// drawTurnedBody draws the sign of a camera that looks where its view does.
func (f *floor) drawTurnedBody(g *draw.Group, c *sheet.Clearing, v sight, last bool) {
	p := f.apex(v)
	if !f.box.Grow(8).Holds(draw.Box{X: p.X, Y: p.Y}) {
		return
	}
	stroke, fill := sheet.Solid(draw.Black, sheet.Medium), draw.Black
	if last {
		stroke, fill = sheet.Dashed(draw.Black, sheet.Thin, 0.7, 0.5), draw.Paper
	}
	sp, cp := math.Sincos(v.pose.Pan * math.Pi / 180)
	at := func(ahead, right float64) draw.Point {
		return draw.Point{X: p.X + ahead*cp - right*sp, Y: p.Y + ahead*sp + right*cp}
	}
	body := []draw.Point{at(-7.5, -2), at(-2.5, -2), at(-2.5, 2), at(-7.5, 2)}
	hood := []draw.Point{at(-2.5, -0.9), at(0, -1.7), at(0, 1.7), at(-2.5, 0.9)}
	for _, run := range [][]draw.Point{body, hood} {
		g.Add(draw.Path{Runs: [][]draw.Point{run}, Closed: true, Fill: fill, Stroke: stroke})
	}
	c.Block([]draw.Point{at(-6, 0), at(-4.5, 0), at(-3, 0), at(-1.5, 0), at(0, 0)}, 4.2)
}

// leavesPlace reports whether the camera goes anywhere that is seen from above.
func leavesPlace(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Optics.Keys(), func(t float64) bool {
		p := s.Optics.Pose(t)
		return math.Hypot(p.X, p.Y) >= 0.01
	})
}

// drawWay draws where the camera goes, with an arrow.
func (f *floor) drawWay(g *draw.Group, c *sheet.Clearing) {
	const steps = 240
	var run []draw.Point
	for i := range steps + 1 {
		t := float64(f.shot.Duration) * float64(i) / steps
		if p := f.apex(sightAt(f.shot, t)); f.box.Grow(3).Holds(draw.Box{X: p.X, Y: p.Y}) {
			run = append(run, p)
		}
	}
	if !leavesPlace(f.shot) || runLength(run) < 1 {
		return
	}
	run = sheet.Simplify(run)
	wg := g.Group("way")
	wg.Title = "the camera goes"
	wg.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: sheet.Solid(draw.Black, sheet.Heavy)})
	pathArrow(wg, run)
	c.Block(run, 1)
}

const (
	arcRadius = 16.0 // of the first pan, millimetres from the lens
	arcPitch  = 3.0  // from one to the next
	arcLeast  = 1.0  // degrees
)

// drawArcs draws each pan as an arc before the lens, with its degrees and its times.
func (f *floor) drawArcs(g *draw.Group, c *sheet.Clearing) {
	n := 0
	for _, t := range f.shot.Turns {
		by := float64(t.To - t.From)
		if t.Kind != "pan" || math.Abs(by) < arcLeast {
			continue
		}
		p := f.apex(sightAt(f.shot, float64(t.End)))
		radius := arcRadius + arcPitch*float64(n%5)
		n++
		runs, ends := f.arc(p, radius, float64(t.From), by)
		if len(runs) == 0 {
			continue
		}
		ag := g.Group("pan")
		ag.Add(draw.Path{Runs: runs, Stroke: sheet.Solid(draw.Black, sheet.Thin)})
		for _, run := range runs {
			c.Block(run, 0.8)
		}
		if ends {
			arcArrow(ag, runs[len(runs)-1])
		}
		longest := slices.MaxFunc(runs, func(a, b []draw.Point) int { return len(a) - len(b) })
		f.writeNear(ag, c, f.turnWords(t), longest[len(longest)/2])
	}
}

// arc returns what of an arc round p lies on the floor, and whether its end does.
func (f *floor) arc(p draw.Point, radius, from, by float64) (runs [][]draw.Point, ends bool) {
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	steps := max(8, int(math.Abs(by)/3))
	for i := range steps + 1 {
		sin, cos := math.Sincos((from + by*float64(i)/float64(steps)) * math.Pi / 180)
		q := draw.Point{X: p.X + radius*cos, Y: p.Y + radius*sin}
		if f.box.Holds(draw.Box{X: q.X, Y: q.Y}) {
			run = append(run, q)
			continue
		}
		flush()
	}
	ends = len(run) > 1
	flush()
	return runs, ends
}

// arcArrow draws the head of an arrow at the end of a run.
func arcArrow(g *draw.Group, run []draw.Point) {
	const long, half = 1.6, 0.7
	tip := run[len(run)-1]
	_, dir := along(run, runLength(run))
	back := draw.Point{X: tip.X - long*dir.X, Y: tip.Y - long*dir.Y}
	g.Add(draw.Path{Closed: true, Fill: draw.Black, Runs: [][]draw.Point{{tip,
		{X: back.X - half*dir.Y, Y: back.Y + half*dir.X}, {X: back.X + half*dir.Y, Y: back.Y - half*dir.X}}}})
}

// writeNear writes words at a point, or else where there is room on the floor, with a
// line to the point.
func (f *floor) writeNear(g *draw.Group, c *sheet.Clearing, words string, p draw.Point) {
	text := draw.NewText(0, 0, words, sheet.FontSmall, draw.Black)
	if c.Write(g, text, p) {
		return
	}
	if box, ok := c.Anywhere(p, text.Room().W, text.Font.Height(), func(draw.Box) bool { return true }); ok {
		text.At = draw.Point{X: box.X, Y: box.Y + text.Box().H - (text.Box().Bottom() - text.At.Y)}
		g.Add(sheet.Halo(box), text)
		sheet.LeadTo(g, p, box)
	}
}

// turnWords says how far a turn goes and when.
func (f *floor) turnWords(t plan.Turn) string {
	return fmt.Sprintf("%s %s, %s to %s", t.Kind, moments.Heading(t.Kind, float64(t.To-t.From), sheet.Figures),
		sheet.When(f.shot, float64(t.Start)), sheet.When(f.shot, float64(t.End)))
}

// writeMoves writes what the camera does besides panning: where a way of it ends, and at
// its start what cannot be seen from above.
func (f *floor) writeMoves(g *draw.Group, c *sheet.Clearing) {
	write := func(words string, t float64) {
		f.writeNear(g, c, words, f.apex(sightAt(f.shot, t)))
	}
	for _, b := range f.shot.Blocking {
		if goes := moments.Goes(&b, sheet.Style(f.shot)); goes != "" {
			write(goes+", from "+sheet.When(f.shot, float64(b.Start)), float64(b.Start+b.End)/2)
		}
	}
	for _, t := range f.shot.Turns {
		if t.Kind == "tilt" {
			write(f.turnWords(t), float64(t.End))
		}
	}
}
