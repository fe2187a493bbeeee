// Who stands where on the floor, and how they get about.

package floor

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A person is a subject with the places that it comes to. Metres along the
// axis from the tape's origin where the camera first stands, and to the right.
type person struct {
	*plan.Subject
	places []floorPlace
	paths  [][]draw.Point // in metres
}

// A floorPlace is a place where someone stands, or turns.
type floorPlace struct {
	x, y     float64 // metres
	from, to float64 // seconds of the shot
	distance float64 // as the tape reads then
}

func sortedUnique(values []float64) []float64 {
	slices.Sort(values)
	return slices.Compact(values)
}

// peopleOf returns the subjects with their ways.
func peopleOf(s *plan.Shot) []person {
	people := make([]person, len(s.Subjects))
	for i, u := range s.Subjects {
		people[i] = newPerson(s, u)
	}
	return people
}

// newPerson follows a subject from one start or stop of its tracks to the
// next.
func newPerson(s *plan.Shot, u *plan.Subject) person {
	p := person{Subject: u}
	end := float64(s.Duration)
	at := func(t float64) draw.Point { return draw.Point{X: u.Along.At(t), Y: u.Across.At(t)} }
	stand := func(t float64) {
		q := at(t)
		p.places = append(p.places, floorPlace{x: q.X, y: q.Y, from: t, to: end, distance: s.DistanceAt(u, t)})
	}
	stand(0)
	times := []float64{0}
	for _, t := range slices.Concat(u.Along.Keys(), u.Across.Keys()) {
		if t > 0 && t < end {
			times = append(times, t)
		}
	}
	times = sortedUnique(append(times, end))
	for i := 1; i < len(times); i++ {
		from, to := times[i-1], times[i]
		if path := walk(at, from, to); len(path) > 1 {
			p.places[len(p.places)-1].to = from
			p.paths = append(p.paths, path)
			stand(to)
		}
	}
	return p
}

// walk returns the way between two times in metres, nothing for a stay.
func walk(at func(float64) draw.Point, from, to float64) []draw.Point {
	const samples = 32
	a, path := at(from), []draw.Point{}
	length := 0.0
	for i := range samples + 1 {
		q := at(from + (to-from)*float64(i)/samples)
		length = max(length, math.Hypot(q.X-a.X, q.Y-a.Y))
		path = append(path, q)
	}
	if length < 0.001 { // a millimetre is no walk
		return nil
	}
	return path
}

// label says who stands at a place, and below it where and when.
func (o *overhead) label(p person, i int) (name, figures string) {
	at := p.places[i]
	name = p.Name
	first, second := sheet.Style(o.shot).Both(at.distance)
	figures = first
	if second != "" {
		figures += " · " + second
	}
	if i == 0 && p.Slant.Known() {
		figures += ", slant tape " + sheet.Style(o.shot).Tape(float64(p.Slant))
	}
	if len(p.places) == 1 {
		return name, figures
	}
	name = fmt.Sprintf("%s %d", p.Name, i+1)
	switch {
	case i == 0:
		figures += " · leaves at " + sheet.When(o.shot, at.to)
	default:
		figures += " · from " + sheet.When(o.shot, at.from)
	}
	return name, figures
}

// drawPaths draws the ways of those on the floor, with an arrow at each end.
func (f *floor) drawPaths(g *draw.Group, c *sheet.Clearing) {
	for _, p := range f.people {
		for _, path := range p.paths {
			var run []draw.Point
			for _, q := range path {
				if f.shows(q.X) {
					run = append(run, f.at(q.X, q.Y))
				}
			}
			if len(run) < 2 {
				continue
			}
			run = sheet.Simplify(run)
			pg := g.Group("path")
			pg.Title = p.Name + " goes"
			pg.Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: sheet.Dashed(draw.Black, sheet.Medium, 1.6, 0.9)})
			pathArrow(pg, run)
			c.Block(run, 1)
		}
	}
}

// pathArrow draws an arrow in the middle of a path: its ends have the discs of
// the places.
func pathArrow(g *draw.Group, run []draw.Point) {
	total := runLength(run)
	if total < 5 {
		return
	}
	tip, dir := along(run, total/2+1.2)
	const long, half = 2.4, 1.0
	back := draw.Point{X: tip.X - long*dir.X, Y: tip.Y - long*dir.Y}
	g.Add(draw.Path{Closed: true, Fill: draw.Black, Runs: [][]draw.Point{{tip,
		{X: back.X - half*dir.Y, Y: back.Y + half*dir.X}, {X: back.X + half*dir.Y, Y: back.Y - half*dir.X}}}})
}

func runLength(run []draw.Point) (total float64) {
	for i := 1; i < len(run); i++ {
		total += math.Hypot(run[i].X-run[i-1].X, run[i].Y-run[i-1].Y)
	}
	return total
}

// along returns the point so far along a run, and the way that the run goes
// there.
func along(run []draw.Point, far float64) (p, dir draw.Point) {
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		d := math.Hypot(b.X-a.X, b.Y-a.Y)
		if d == 0 {
			continue
		}
		dir = draw.Point{X: (b.X - a.X) / d, Y: (b.Y - a.Y) / d}
		if far <= d {
			return draw.Point{X: a.X + far*dir.X, Y: a.Y + far*dir.Y}, dir
		}
		far -= d
	}
	return run[len(run)-1], dir
}

const (
	spotRadius  = 1.25
	labelWidest = 62.0
	figurePitch = 3.0
)

// drawPlaces draws the places on the floor: the first of each full, later ones
// open; under them, as long as it is deep, a bar, and from each a line of dots
// to the axis, where its distance is read.
func (f *floor) drawPlaces(g *draw.Group, c *sheet.Clearing) {
	under, discs := g.Group("depths"), g.Group("spots")
	for _, p := range f.people {
		for i, at := range p.places {
			if f.shows(at.x) {
				f.drawPlace(under, discs, c, p, i)
			}
		}
	}
}

func (f *floor) drawPlace(under, discs *draw.Group, c *sheet.Clearing, p person, i int) {
	q := f.at(p.places[i].x, p.places[i].y)
	if math.Abs(q.Y-f.axis) > 2*spotRadius && (i == 0 || f.shot.Optics.Rig == nil) { // a camera that turns reads it elsewhere
		under.Line(q.X, q.Y, q.X, f.axis, sheet.Dashed(draw.Mid, sheet.Hair, 0.3, 0.9))
	}
	if half := float64(p.Deep) / 2 * f.perMetre; half > spotRadius && sheet.Finite(half) {
		under.Line(max(q.X-half, f.box.X), q.Y, min(q.X+half, f.box.Right()), q.Y, sheet.Solid(draw.Mid, 1))
	}
	fill := draw.Black
	if i > 0 {
		fill = draw.Paper
	}
	discs.Add(draw.Disc{Centre: q, Radius: spotRadius, Fill: fill, Stroke: sheet.Solid(draw.Black, sheet.Medium)})
	c.Taken = append(c.Taken, draw.Box{X: q.X, Y: q.Y}.Grow(spotRadius+0.2))
}

// drawNames names the places: first where each stands first.
func (f *floor) drawNames(g *draw.Group, c *sheet.Clearing) {
	for _, first := range []bool{true, false} {
		for _, p := range f.people {
			for i, at := range p.places {
				if (i == 0) == first && f.shows(at.x) {
					f.drawName(g, c, p, i)
				}
			}
		}
	}
}

// drawName writes who stands at a place: on two lines; on less room the name
// alone, ever shorter.
func (f *floor) drawName(g *draw.Group, c *sheet.Clearing, p person, i int) {
	name, figures := f.label(p, i)
	ng := g.Group("place")
	ng.Title = draw.Clean(name + ", " + figures)
	at := f.at(p.places[i].x, p.places[i].y)
	w := min(max(sheet.FontStrong.Room(draw.Clean(name)), sheet.FontSmall.Room(figures)), labelWidest)
	if box, ok := f.place(c, at, w, sheet.FontStrong.Height()+figurePitch); ok {
		sheet.LeadTo(ng, at, box)
		base := box.Y + 0.8*sheet.FontStrong.Size*draw.MM
		ng.Add(sheet.Halo(box), draw.NewText(box.X, base, name, sheet.FontStrong, draw.Black).Shortened(w+1e-9),
			draw.NewText(box.X, base+figurePitch, figures, sheet.FontSmall, draw.Grey).Shortened(w+1e-9))
		return
	}
	for w = min(sheet.FontStrong.Room(draw.Clean(name)), labelWidest); w > sheet.FontStrong.Room("…"); w *= 0.6 {
		if box, ok := f.place(c, at, w, sheet.FontStrong.Height()); ok {
			sheet.LeadTo(ng, at, box)
			ng.Add(sheet.Halo(box), draw.NewText(box.X, box.Y+0.8*sheet.FontStrong.Size*draw.MM, name, sheet.FontStrong, draw.Black).Shortened(w+1e-9))
			return
		}
	}
}

// place finds room for a box near a point, or else anywhere on the floor.
func (f *floor) place(c *sheet.Clearing, at draw.Point, w, h float64) (draw.Box, bool) {
	if box, ok := c.Near(at, w, h); ok {
		return box, true
	}
	return c.Anywhere(at, w, h, func(draw.Box) bool { return true })
}
