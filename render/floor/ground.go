// The scale of a sheet, and what lies where on it.

package floor

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/sheet"
)

// A ground is the part of a sheet that shows the floor. The first camera looks to the
// right; what is right of it is below on the page.
type ground struct {
	box      draw.Box
	origin   draw.Point // where the first camera starts
	scale    float64    // one to so much
	perMetre float64    // millimetres on the page
}

const (
	behindRoom = 12.0 // left of whatever lies farthest back: the body of a camera
	beyondRoom = 8.0  // right of whatever lies farthest ahead
	sideRoom   = 8.0  // above and below the outermost
)

// A reach is how far things lie on a floor: in metres, back and ahead, left and right.
type reach struct{ back, ahead, left, right float64 }

func (r *reach) take(s layout.Spot) {
	if sheet.Finite(s.X) && sheet.Finite(s.Y) {
		r.back, r.ahead = min(r.back, s.Y), max(r.ahead, s.Y)
		r.left, r.right = min(r.left, s.X), max(r.right, s.X)
	}
}

// reach returns how far the cameras of a floor lie, with those places of it.
func (f *Floor) reach(places []int) reach {
	var r reach
	for _, c := range f.Cameras {
		for _, v := range c.States {
			r.take(v.From(0, 0))
		}
		for _, p := range c.Path {
			r.take(p)
		}
		for _, t := range c.Tracks {
			r.take(t.From)
			r.take(t.To)
		}
	}
	for _, i := range places {
		r.take(f.Places[i].At)
	}
	if r.ahead-r.back <= 0 { // nobody is there
		r.ahead = 3
	}
	return r
}

// newGround lays a floor into a box at the largest scale of the ladder that has room.
func newGround(box draw.Box, r reach) ground {
	g := ground{box: box, scale: scaleFor(max((r.ahead-r.back)*1000/(box.W-behindRoom-beyondRoom), (r.right-r.left)*1000/(box.H-2*sideRoom)))}
	g.perMetre = 1000 / g.scale
	middle := box.Y + box.H/2 - (r.left+r.right)/2*g.perMetre
	if low := box.Y + sideRoom - r.left*g.perMetre; box.Y+box.H/2 >= low && box.Y+box.H/2 <= box.Bottom()-sideRoom-r.right*g.perMetre {
		middle = box.Y + box.H/2
	}
	g.origin = draw.Point{X: box.X + behindRoom - r.back*g.perMetre, Y: middle}
	return g
}

// scaleFor returns the largest scale of the ladder that is at most one to need. Below
// 1:200 the ladder goes on in the steps 1, 2, 5.
func scaleFor(need float64) float64 {
	for _, scale := range []float64{10, 20, 25, 50, 100, 200} {
		if scale >= need*(1-1e-9) {
			return scale
		}
	}
	for decade := 100.0; ; decade *= 10 {
		for _, step := range []float64{1, 2, 5} {
			if scale := step * decade; scale >= need*(1-1e-9) || scale > 1e12 {
				return scale
			}
		}
	}
}

// text returns the scale in words.
func (g ground) text() string { return "1:" + sheet.Figures.Number(g.scale, 0) }

// at returns where a spot lies on the page.
func (g ground) at(s layout.Spot) draw.Point {
	return draw.Point{X: g.origin.X + s.Y*g.perMetre, Y: g.origin.Y + s.X*g.perMetre}
}

// holds reports whether a point lies in the box, so far from its edges.
func (g ground) holds(p draw.Point, off float64) bool {
	return g.box.Grow(-off).Holds(draw.Box{X: p.X, Y: p.Y})
}

// run returns the points of a way that lie in the box.
func (g ground) run(way []layout.Spot) []draw.Point {
	var run []draw.Point
	for _, s := range way {
		if p := g.at(s); g.holds(p, -3) {
			run = append(run, p)
		}
	}
	if len(run) < 2 {
		return nil
	}
	return sheet.Simplify(run)
}

// headed returns the direction in which a state looks on the page, and its right.
func headed(v layout.State) (ahead, right draw.Point) {
	sp, cp := math.Sincos(v.Pose.Pan * math.Pi / 180)
	return draw.Point{X: cp, Y: sp}, draw.Point{X: -sp, Y: cp}
}

// moved returns a point moved by multiples of two directions.
func moved(p, a, b draw.Point, byA, byB float64) draw.Point {
	return draw.Point{X: p.X + byA*a.X + byB*b.X, Y: p.Y + byA*a.Y + byB*b.Y}
}
