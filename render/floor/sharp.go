// What is sharp: for each landing the slab of the floor that its focus keeps
// sharp, and under the floor a bar for each, so that those that overlap can be
// told apart.

package floor

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// A focus is where the focus rests, with what is sharp then. Metres along the
// axis from the tape's origin where the camera first stands.
type focus struct {
	start         bool
	pulls         []int
	name          string
	at, near, far float64 // at and far may be infinite
	camera        float64 // where the camera then is
	sight         sight
}

// fociOf returns where the focus starts and where it lands, each place once,
// in the order of the pulls.
func fociOf(s *plan.Shot) []focus {
	var foci []focus
	views := sights(s)
	add := func(z focus, x, t float64) {
		set, camera := s.Judged(x, t), cameraAlong(s, t)
		z.camera, z.sight = camera, seenAs(s, views, t)
		z.at, z.near, z.far = camera+s.ToTape(x, t), camera+s.ToTape(set.Near(x), t), camera+s.ToTape(set.Far(x), t)
		if math.IsNaN(z.at) || math.IsInf(z.at, -1) || !sheet.Finite(z.near) || math.IsNaN(z.far) || !(x > s.Focal(t)) {
			return
		}
		for i := range foci {
			if foci[i].same(z) {
				foci[i].pulls = append(foci[i].pulls, z.pulls...)
				return
			}
		}
		foci = append(foci, z)
	}
	if st := &s.Optics.Start; st.Name != "" || st.Text != "" {
		add(focus{start: true, name: marks.MarkName(s, st.Name, st.Text, 0)}, st.Distance, 0)
	}
	for _, p := range s.Pulls {
		land := float64(p.Land)
		add(focus{pulls: []int{p.Number}, name: marks.MarkName(s, p.To, p.Target, land)}, p.ToLens, land)
	}
	return foci
}

// seenAs returns the view that is drawn for a time, or one of its own for a
// time on the way.
func seenAs(s *plan.Shot, views []sight, t float64) sight {
	for _, v := range views {
		if sameView(s, v.t, t) {
			return v
		}
	}
	return sightAt(s, t)
}

// same reports whether two foci are the same place and keep the same sharp, to
// half a percent.
func (z focus) same(o focus) bool {
	alike := func(a, b float64) bool { return a == b || math.Abs(a-b) <= 0.005*math.Abs(a) }
	return alike(z.at, o.at) && alike(z.near, o.near) && alike(z.far, o.far) && z.camera == o.camera && z.sight.perSide == o.sight.perSide && z.sight.sameTurn(o.sight)
}

// mark returns the focus as a mark, for its numbers.
func (z focus) mark() marks.Mark {
	return marks.Mark{Name: z.name, Start: z.start, Pulls: z.pulls}
}

// zoneShows reports whether a sharp zone reaches onto the floor.
func (f *floor) zoneShows(z focus) bool {
	return z.far >= f.from && z.near < min(f.past, f.reachFar()) || f.from == 0 && f.past == math.Inf(1)
}

// reachFar is the farthest metre of the floor's room, before zones are known.
func (f *floor) reachFar() float64 {
	back, _, _, _ := f.reach()
	return back + (f.box.W-cameraRoom)/f.perMetre
}

// drawZones draws the slabs under everything else, and the bars of the zones
// under the tape.
func (f *floor) drawZones(g *draw.Group) {
	for _, z := range f.zones {
		if outline := f.slab(z); len(outline) > 2 {
			g.Add(draw.Path{Runs: [][]draw.Point{outline}, Closed: true, Fill: draw.BluePale})
		}
	}
	for _, z := range f.zones {
		outline := f.slab(z)
		if len(outline) < 3 {
			continue
		}
		sg := g.Group("slab")
		sg.Title = f.zoneTitle(z)
		sg.Add(draw.Path{Runs: draw.Hatch(outline, 2*sheet.HatchPitch, sheet.HatchLeast), Stroke: sheet.Solid(draw.Blue, sheet.Hair)},
			draw.Path{Runs: f.slabEdges(z), Stroke: sheet.Dashed(draw.Blue, sheet.Thin, 1, 0.6)})
	}
	for i, z := range f.zones {
		f.drawBar(g.Group("zone"), z, f.box.Bottom()+rulerRoom+zoneRow*float64(i))
	}
}

// slab is the outline of what a focus keeps sharp within the field of view, cut
// to the floor.
func (f *floor) slab(z focus) []draw.Point {
	near, far := max(z.near, z.sight.x), min(z.far, f.limit(z.sight))
	if far <= near {
		return nil
	}
	corner := func(x, side float64) draw.Point { return f.spot(z.sight, x, side) }
	return cropped([]draw.Point{corner(near, -1), corner(far, -1), corner(far, 1), corner(near, 1)}, f.box)
}

// slabEdges are the near and the far side of a slab; one that goes on beyond
// the floor has no far side.
func (f *floor) slabEdges(z focus) (edges [][]draw.Point) {
	for _, x := range []float64{z.near, z.far} {
		if run, ok := f.across(x, z.sight); ok {
			edges = append(edges, run)
		}
	}
	return edges
}

// across is the line across the field of view at x metres.
func (f *floor) across(x float64, v sight) (run []draw.Point, ok bool) {
	if v.turned() {
		return f.acrossTurned(x, v)
	}
	if !(x > v.x) || x > f.end() || f.at(x, 0).X < f.box.X {
		return nil, false
	}
	half := (x - v.x) * v.perSide
	a, b := f.at(x, -min(half, f.sideReach(-1))), f.at(x, min(half, f.sideReach(1)))
	return []draw.Point{a, b}, true
}

// cropped cuts a convex outline to a box (Sutherland and Hodgman 1974).
func cropped(run []draw.Point, box draw.Box) []draw.Point {
	for _, inside := range []func(draw.Point) float64{ // how far inside each side
		func(p draw.Point) float64 { return p.X - box.X }, func(p draw.Point) float64 { return box.Right() - p.X },
		func(p draw.Point) float64 { return p.Y - box.Y }, func(p draw.Point) float64 { return box.Bottom() - p.Y },
	} {
		var out []draw.Point
		for i, p := range run {
			q := run[(i+1)%len(run)]
			a, b := inside(p), inside(q)
			if a >= 0 {
				out = append(out, p)
			}
			if a < 0 != (b < 0) {
				u := a / (a - b)
				out = append(out, draw.Point{X: p.X + u*(q.X-p.X), Y: p.Y + u*(q.Y-p.Y)})
			}
		}
		run = out
	}
	return run
}

// drawFoci draws a line across the field of view for each focus, and its
// numbers above the floor.
func (f *floor) drawFoci(g *draw.Group, c *sheet.Clearing) {
	var want []float64
	var shown []focus
	for _, z := range f.zones {
		at := min(z.at, f.limit(z.sight))
		run, ok := f.across(at, z.sight)
		if !ok {
			continue
		}
		if z.at <= f.limit(z.sight) {
			g.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: sheet.Solid(draw.Blue, sheet.Heavy)})
			c.Block(run, sheet.Heavy)
		}
		shown = append(shown, z)
		want = append(want, run[0].X)
	}
	places, most := f.spreadTags(shown, want)
	for i, x := range places {
		tag := draw.NewText(x, f.box.Y-1.6, tagText(shown[i]), sheet.FontNumber, draw.Black).Aligned(draw.Middle)
		g.Add(tag.Shortened(most))
		if shown[i].at <= f.limit(shown[i].sight) {
			run, _ := f.across(shown[i].at, shown[i].sight)
			g.Line(x, f.box.Y-1.1, run[0].X, f.box.Y, sheet.Solid(draw.Blue, sheet.Thin))
			g.Line(run[0].X, f.box.Y, run[0].X, run[0].Y, sheet.Dashed(draw.Blue, sheet.Thin, 0.3, 0.7))
			c.Avoid([]draw.Point{{X: run[0].X, Y: f.box.Y}, run[0]})
		}
	}
}

// spreadTags returns where the numbers of foci stand, and how wide they are at
// most: less where they would stand far from their lines. The rows below the
// floor have them all.
func (f *floor) spreadTags(shown []focus, want []float64) (places []float64, most float64) {
	const far = 7.0
	size := make([]float64, len(shown))
	for _, most = range []float64{sheet.NumberMost, 0.6 * sheet.NumberMost, 0.35 * sheet.NumberMost} {
		for i, z := range shown {
			size[i] = min(sheet.FontNumber.Room(tagText(z)), most) + 2
		}
		places = sheet.Spread(want, size, f.box.X, f.box.Right())
		off := 0.0
		for i := range places {
			off = max(off, math.Abs(places[i]-want[i]))
		}
		if off <= far {
			break
		}
	}
	return places, most
}

// tagText is the numbers of a focus, with an arrow where it lies beyond the
// floor.
func tagText(z focus) string {
	if math.IsInf(z.at, 1) {
		return z.mark().Numbers() + " ∞"
	}
	return z.mark().Numbers()
}

func (f *floor) zoneTitle(z focus) string {
	return fmt.Sprintf("%s %s: sharp from %s to %s", z.mark().Numbers(), z.name, sheet.Style(f.shot).Tape(z.near-z.camera), sheet.Style(f.shot).Tape(z.far-z.camera))
}

// drawBar draws a zone as a bar along the tape with a tick at the focus, its
// name before it, and beside it from where to where it goes.
func (f *floor) drawBar(g *draw.Group, z focus, top float64) {
	g.Title = f.zoneTitle(z)
	y := top + zoneRow/2
	marks.Write(g, z.mark(), z.name, sheet.Margin, y+sheet.FontNote.Middle(), floorGutter-3)
	g.Line(f.box.X, top+zoneRow, f.box.Right(), top+zoneRow, sheet.Solid(draw.Pale, sheet.Hair))
	left, right := f.at(z.near, 0).X, f.at(min(z.far, f.end()), 0).X
	from, to := min(max(left, f.box.X), f.box.Right()), min(max(right, f.box.X), f.box.Right())
	bar := draw.Box{X: from, Y: y - 0.8, W: to - from, H: 1.6}
	corners := []draw.Point{{X: bar.X, Y: bar.Y}, {X: bar.Right(), Y: bar.Y}, {X: bar.Right(), Y: bar.Bottom()}, {X: bar.X, Y: bar.Bottom()}}
	g.Add(draw.Rect{Box: bar, Fill: draw.BluePale}, draw.Path{Runs: draw.Hatch(corners, sheet.HatchPitch, 1), Stroke: sheet.Solid(draw.Blue, sheet.Hair)})
	f.drawBarEnds(g, z, bar)
	if at := f.at(min(z.at, f.end()), 0).X; z.at <= f.end() && at >= f.box.X {
		g.Line(at, y-1.3, at, y+1.3, sheet.Solid(draw.Blue, sheet.Heavy))
	}
	f.writeBar(g, z, bar)
}

// drawBarEnds closes a bar where the zone ends on the floor, and puts an arrow
// where it goes on.
func (f *floor) drawBarEnds(g *draw.Group, z focus, bar draw.Box) {
	y := bar.Y + bar.H/2
	if z.near <= f.end() && f.at(z.near, 0).X >= f.box.X {
		g.Line(bar.X, y-1.1, bar.X, y+1.1, sheet.Solid(draw.Black, sheet.Thin))
	}
	if z.far <= f.end() {
		if bar.Right() > f.box.X {
			g.Line(bar.Right(), y-1.1, bar.Right(), y+1.1, sheet.Solid(draw.Black, sheet.Thin))
		}
		return
	}
	tip := f.box.Right()
	g.Add(draw.Path{Runs: [][]draw.Point{{{X: tip, Y: y}, {X: tip - 2, Y: y - 1.1}, {X: tip - 2, Y: y + 1.1}}}, Closed: true, Fill: draw.Black})
}

// writeBar writes from where to where a zone is sharp: right of its bar, left
// of it, or on it.
func (f *floor) writeBar(g *draw.Group, z focus, bar draw.Box) {
	near, near2 := sheet.Style(f.shot).Both(z.near - z.camera)
	far, far2 := sheet.Style(f.shot).Both(z.far - z.camera)
	words := near + " to " + far
	if far2 == "" {
		far2 = "∞"
	}
	words += "  (" + near2 + " to " + far2 + ")"
	text := draw.NewText(0, bar.Y+bar.H/2+sheet.FontSmall.Middle(), words, sheet.FontSmall, draw.Black)
	before := 1.6
	if z.far > f.end() && bar.W < 3 { // its arrow stands there
		before = 3.6
	}
	switch {
	case bar.Right()+1.6+text.Room().W <= f.box.Right():
		text.At.X = bar.Right() + 1.6
	case bar.X-before-text.Room().W >= f.box.X:
		text.At.X = bar.X - before - text.Room().W
	default:
		text.At.X = (bar.X+bar.Right())/2 - text.Room().W/2
		text.At.X = min(max(text.At.X, f.box.X+1), f.box.Right()-3-text.Room().W)
		g.Add(sheet.Halo(text.Box()))
	}
	g.Add(text)
}
