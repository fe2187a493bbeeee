// A floor: its scale, the axis with its ruler, and the camera.

package floor

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/optics"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A floor is a stretch of the ground on the sheet. Metres count along the axis
// from the tape's origin where the camera first stands, and to the right.
type floor struct {
	*overhead
	box        draw.Box // of the ground itself
	from, past float64  // metres: who stands between them is on this floor
	axis       float64  // where the axis lies
	origin     float64  // where 0 m lies
	scale      float64  // one to so much
	perMetre   float64  // millimetres on the page
	zones      []focus  // under the floor
}

const (
	cameraRoom = 10.0 // behind the tape's origin
	nameRoom   = 30.0 // beyond the farthest place
	sideRoom   = 6.0  // beside the outermost
)

// newFloor lays a floor between top and bottom for those who stand from one
// distance to another.
func newFloor(o *overhead, top, bottom, from, past float64) *floor {
	f := &floor{overhead: o, from: from, past: past}
	left := sheet.Margin + floorGutter
	f.box = draw.Box{X: left, Y: top + tagLane, W: o.paper.W - sheet.Margin - left, H: bottom - top - tagLane - rulerRoom}
	back, far, sideLeft, sideRight := f.reach()
	f.choose(far-back, sideRight-sideLeft, zoneRow*float64(o.rows))
	for _, z := range o.shown {
		if f.zoneShows(z) {
			f.zones = append(f.zones, z)
		}
	}
	f.box.H -= zoneRow * float64(len(f.zones))
	f.origin = left + cameraRoom - back*f.perMetre
	f.axis = f.box.Y + f.box.H/2
	f.axis = max(f.axis, f.box.Y+sideRoom-sideLeft*f.perMetre)
	f.axis = min(f.axis, f.box.Bottom()-sideRoom-sideRight*f.perMetre)
	return f
}

// reach returns how far back, forth, left and right things on the floor lie,
// in metres; the camera is always among them.
func (f *floor) reach() (back, far, left, right float64) {
	o := &f.shot.Optics
	for _, t := range append(o.Camera.Keys(), 0) {
		back, far = min(back, o.Camera.At(t)), max(far, o.Camera.At(t))
	}
	if o.Rig != nil {
		for _, t := range o.Keys() {
			p := o.Pose(t)
			back, far = min(back, p.Y), max(far, p.Y)
			left, right = min(left, p.X), max(right, p.X)
		}
	}
	for _, p := range f.people {
		for _, at := range p.places {
			if f.mine(at.x) {
				back, far = min(back, at.x), max(far, at.x)
				left, right = min(left, at.y), max(right, at.y)
			}
		}
	}
	if far-back <= 0 { // nobody is there: as far as the focus reaches
		far = 3
	}
	return back, far, left, right
}

// choose takes the largest round scale that has room for so many metres along
// the axis and across, with zones of that height below.
func (f *floor) choose(along, across, zones float64) {
	w := f.box.W - cameraRoom - nameRoom
	h := f.box.H - zones - 2*sideRoom
	need := max(along*1000/w, across*1000/h)
	for decade := 1.0; ; decade *= 10 {
		for _, step := range []float64{1, 2, 2.5, 5} {
			if f.scale = decade * step; step == 2.5 && decade < 10 {
				continue
			}
			if f.scale >= need*(1-1e-9) {
				f.perMetre = 1000 / f.scale
				return
			}
		}
	}
}

func (f *floor) scaleText() string { return "1:" + sheet.Figures.Number(f.scale, 0) }

// mine reports whether a place belongs on this floor.
func (f *floor) mine(x float64) bool {
	return sheet.Finite(x) && (x >= f.from || f.from == 0) && x < f.past
}

// shows reports whether a place lies within what this floor shows.
func (f *floor) shows(x float64) bool {
	return f.mine(x) && f.origin+x*f.perMetre <= f.box.Right()-spotRadius && f.origin+x*f.perMetre >= f.box.X+spotRadius
}

// at returns where a place lies on the page.
func (f *floor) at(x, y float64) draw.Point {
	return draw.Point{X: f.origin + x*f.perMetre, Y: f.axis + y*f.perMetre}
}

// end is the farthest metre that the floor shows.
func (f *floor) end() float64 { return (f.box.Right() - f.origin) / f.perMetre }

func (f *floor) draw(g *draw.Group) {
	g.Add(draw.Rect{Box: f.box, Stroke: sheet.Solid(draw.Pale, sheet.Hair)})
	c := &sheet.Clearing{Bounds: f.box}
	f.drawZones(g.Group("sharp"))
	f.drawRuler(g.Group("tape"))
	f.drawView(g.Group("field-of-view"), c)
	f.drawFoci(g.Group("foci"), c)
	f.drawNearFloor(g.Group("near-floor"), c)
	f.drawPaths(g.Group("paths"), c)
	f.drawCamera(g.Group("camera"), c)
	f.drawPlaces(g.Group("places"), c)
	f.drawNames(g.Group("names"), c)
	f.drawWords(g.Group("words"))
}

// drawNearFloor frames what the other floor shows larger.
func (f *floor) drawNearFloor(g *draw.Group, c *sheet.Clearing) {
	if f.from == 0 {
		return
	}
	to := f.at(f.from, 0).X
	g.Line(to, f.box.Y, to, f.box.Bottom(), sheet.Dashed(draw.Grey, sheet.Thin, 0.5, 0.7))
	text := draw.NewText(to+1, f.box.Bottom()-1.2, "up to here: drawn larger above", sheet.FontSmall, draw.Grey)
	g.Add(sheet.Halo(text.Box()), text)
	c.Taken = append(c.Taken, text.Room())
}

// A lens stands at a place along the axis and sees so far to either side.
type sight struct {
	x, t    float64
	perSide float64    // metres to a side for a metre ahead
	pose    *plan.Pose // of a camera that turns or leaves its axis; nil: it looks along it
}

// sightAt is what the camera sees at a time, with the focus as it then is.
func sightAt(s *plan.Shot, t float64) sight {
	x := s.FocusAt(t)
	focal := s.FocalTo(x, t)
	if !(x > focal) {
		x = math.Inf(1)
	}
	behind := 0.0
	v := optics.ImageDistance(focal, x)
	if !s.Optics.FromLens {
		behind = v
	}
	view := sight{x: cameraAlong(s, t) + behind, t: t, perSide: s.Optics.PictureW() / 2 / v}
	if s.Optics.Rig != nil {
		pose := s.Optics.Pose(t)
		view.pose = &pose
	}
	return view
}

// angle returns the horizontal field of view in degrees.
func (v sight) angle() float64 { return 2 * math.Atan(v.perSide) * 180 / math.Pi }

// sights are what the camera sees at first and, where a dolly or a zoom
// changes that, at last.
func sights(s *plan.Shot) []sight {
	if s.Optics.Rig != nil {
		return rigSights(s)
	}
	first, end := sightAt(s, 0), float64(s.Duration)
	if sameView(s, 0, end) {
		return []sight{first}
	}
	return []sight{first, sightAt(s, end)}
}

// sameView reports whether camera and focal length are alike at two times. What
// the lens breathes is left out: it is less than a line is wide.
func sameView(s *plan.Shot, a, b float64) bool {
	if s.Optics.Rig != nil {
		return samePose(s.Optics.Pose(a), s.Optics.Pose(b)) && s.Focal(a) == s.Focal(b)
	}
	return s.Optics.Camera.At(a) == s.Optics.Camera.At(b) && s.Focal(a) == s.Focal(b)
}

// drawView draws the edges of the field of view, dashed where it ends up.
func (f *floor) drawView(g *draw.Group, c *sheet.Clearing) {
	for i, v := range sights(f.shot) {
		stroke := sheet.Solid(draw.Black, sheet.Thin)
		if i > 0 {
			stroke = sheet.Dashed(draw.Black, sheet.Thin, 2.4, 1.2)
		}
		if v.turned() {
			f.drawTurnedView(g, c, v, stroke)
			continue
		}
		for _, side := range []float64{-1, 1} {
			far := f.end()
			if reach := f.sideReach(side) / v.perSide; v.x+reach < far {
				far = v.x + reach
			}
			run := []draw.Point{f.at(v.x, 0), f.at(far, side*(far-v.x)*v.perSide)}
			if run[0].X >= f.box.X && run[0].X < run[1].X {
				g.Line(run[0].X, run[0].Y, run[1].X, run[1].Y, stroke)
				c.Avoid(chords(run))
			}
		}
	}
}

// sideReach is how many metres the floor shows to the left (-1) or the right.
func (f *floor) sideReach(side float64) float64 {
	if side < 0 {
		return (f.axis - f.box.Y) / f.perMetre
	}
	return (f.box.Bottom() - f.axis) / f.perMetre
}

// chords cuts a slanting line into short chords, so that their boxes follow
// it.
func chords(run []draw.Point) []draw.Point {
	a, b := run[0], run[1]
	n := max(1, int(math.Hypot(b.X-a.X, b.Y-a.Y)/2))
	out := make([]draw.Point, n+1)
	for i := range out {
		u := float64(i) / float64(n)
		out[i] = draw.Point{X: a.X + u*(b.X-a.X), Y: a.Y + u*(b.Y-a.Y)}
	}
	return out
}

// drawCamera draws the camera where it starts and, dashed, where it ends; under
// it the way of the dolly, with times.
func (f *floor) drawCamera(g *draw.Group, c *sheet.Clearing) {
	if f.shot.Optics.Rig != nil {
		f.drawRig(g, c)
		return
	}
	views := sights(f.shot)
	if last := views[len(views)-1]; f.shot.Optics.Camera.At(last.t) != f.shot.Optics.Camera.At(0) {
		f.drawBody(g, c, f.at(last.x, 0), true)
	}
	f.drawBody(g, c, f.at(views[0].x, 0), false)
	for i, b := range f.shot.Blocking {
		if b.Kind != "dolly" {
			continue
		}
		from, to := f.at(f.shot.Optics.Camera.At(float64(b.Start)), 0), f.at(f.shot.Optics.Camera.At(float64(b.End)), 0)
		y := f.axis + 4.6 + 2.2*float64(i%2)
		if y > f.box.Bottom()-1 || !(math.Abs(to.X-from.X) >= 0.3) {
			continue
		}
		dg := g.Group("dolly")
		for _, rail := range []float64{-0.5, 0.5} {
			dg.Line(from.X, y+rail, to.X, y+rail, sheet.Solid(draw.Black, sheet.Thin))
		}
		if math.Abs(to.X-from.X) > 3 {
			sheet.Arrow(dg, from.X, to.X, y)
		}
		c.Block([]draw.Point{{X: from.X, Y: y}, {X: to.X, Y: y}}, 2.2)
		text := draw.NewText(0, 0, fmt.Sprintf("dolly %s, %s to %s", sheet.Style(f.shot).Tape(math.Abs(f.shot.Optics.Camera.At(float64(b.End))-f.shot.Optics.Camera.At(float64(b.Start)))),
			sheet.When(f.shot, float64(b.Start)), sheet.When(f.shot, float64(b.End))), sheet.FontSmall, draw.Black)
		c.Write(dg, text, draw.Point{X: (from.X + to.X) / 2, Y: y + 1})
	}
}

// drawBody draws a camera whose lens is at p, as a sign of fixed size.
func (f *floor) drawBody(g *draw.Group, c *sheet.Clearing, p draw.Point, last bool) {
	body := draw.Box{X: p.X - 7.5, Y: p.Y - 2, W: 5, H: 4}
	if body.X < f.box.X-8 || p.X > f.box.Right() {
		return
	}
	stroke, fill := sheet.Solid(draw.Black, sheet.Medium), draw.Black
	if last {
		stroke, fill = sheet.Dashed(draw.Black, sheet.Thin, 0.7, 0.5), draw.Paper
	}
	g.Add(draw.Rect{Box: body, Fill: fill, Stroke: stroke},
		draw.Path{Runs: [][]draw.Point{{{X: body.Right(), Y: p.Y - 0.9}, {X: p.X, Y: p.Y - 1.7}, {X: p.X, Y: p.Y + 1.7}, {X: body.Right(), Y: p.Y + 0.9}}}, Closed: true, Fill: fill, Stroke: stroke})
	c.Taken = append(c.Taken, body.Grow(0.3), draw.Box{X: body.Right(), Y: p.Y - 1.7, W: 2.5, H: 3.4}.Grow(0.3))
}
