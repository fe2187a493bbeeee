// The scale of a sheet, and what lies where on it.

package staged

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A ground is the part of a sheet that shows the floor: upstage is up.
type ground struct {
	box      draw.Box
	zero     draw.Point // where the zero point lies, which may be outside
	scale    float64    // one to so much
	perMetre float64    // millimetres on the page
}

// spare is how far inside the frame all places and cameras lie: as much as the sign of a
// camera needs behind its sensor mark.
const spare = 12.0

// An extent is how far points of the floor reach.
type extent struct {
	lo, hi Spot
	any    bool
}

func (e *extent) take(s Spot) {
	if !sheet.Finite(s.X) || !sheet.Finite(s.Y) {
		return
	}
	if !e.any {
		e.lo, e.hi, e.any = s, s, true
	}
	e.lo.X, e.hi.X = min(e.lo.X, s.X), max(e.hi.X, s.X)
	e.lo.Y, e.hi.Y = min(e.lo.Y, s.Y), max(e.hi.Y, s.Y)
}

func (e *extent) wide() float64 { return e.hi.X - e.lo.X }
func (e *extent) deep() float64 { return e.hi.Y - e.lo.Y }

func (e *extent) middle() Spot { return Spot{X: (e.lo.X + e.hi.X) / 2, Y: (e.lo.Y + e.hi.Y) / 2} }

// holds reports whether a point lies within.
func (e *extent) holds(s Spot) bool {
	return e.any && s.X >= e.lo.X && s.X <= e.hi.X && s.Y >= e.lo.Y && s.Y <= e.hi.Y
}

// taken returns how far the places and marks of a floor reach, with those set-ups.
func (f *Floor) taken(setups []Setup) (e extent) {
	for _, p := range f.Places {
		e.take(p.At)
	}
	for _, m := range f.Marks {
		e.take(m.At)
	}
	for _, c := range setups {
		e.take(Spot{X: c.Pose.X, Y: c.Pose.Y})
		for _, s := range c.Path {
			e.take(s)
		}
	}
	return e
}

const (
	farTimes    = 3.0 // a camera farther than so often the spread of the rest stands at the edge
	leastSpread = 2.0 // metres: a single person has no spread
)

// parted returns which of the set-ups stand on the floor as it is drawn, and which at its
// edge, as they are too far off. Those go first that are the farthest.
func (f *Floor) parted(setups []Setup) (near []Setup, far map[string]bool) {
	near, far = append(near, setups...), map[string]bool{}
	for len(near) > 0 {
		worst, at := 0.0, -1
		for i, c := range near {
			rest := append(append([]Setup(nil), near[:i]...), near[i+1:]...)
			e := f.taken(rest)
			if !e.any {
				continue
			}
			spread := max(e.wide(), e.deep(), leastSpread)
			if by := apart(Spot{X: c.Pose.X, Y: c.Pose.Y}, e.middle()) / spread; by > worst {
				worst, at = by, i
			}
		}
		if at < 0 || worst <= farTimes {
			break
		}
		far[near[at].ID] = true
		near = append(near[:at], near[at+1:]...)
	}
	return near, far
}

// newGround lays a floor into a box at the largest scale of the ladder that has room.
func newGround(box draw.Box, e extent) ground {
	e.take(e.middle()) // a floor with nobody has its zero point
	g := ground{box: box, scale: scaleFor(max(e.wide()/(box.W-2*spare), e.deep()/(box.H-2*spare)) * 1000)}
	g.perMetre = 1000 / g.scale
	if zero := (Spot{}); !e.holds(zero) { // it is on the sheet where that costs nothing
		with := e
		with.take(zero)
		if max(with.wide()/(box.W-2*spare), with.deep()/(box.H-2*spare))*1000 <= g.scale {
			e = with
		}
	}
	m := e.middle()
	g.zero = draw.Point{X: box.X + box.W/2 - m.X*g.perMetre, Y: box.Y + box.H/2 + m.Y*g.perMetre}
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
			if scale := step * decade; scale >= need*(1-1e-9) && scale > 200 || scale > 1e12 {
				return scale
			}
		}
	}
}

// text returns the scale in words.
func (g ground) text() string { return "1:" + sheet.Figures.Number(g.scale, 0) }

// at returns where a spot lies on the page.
func (g ground) at(s Spot) draw.Point {
	return draw.Point{X: g.zero.X + s.X*g.perMetre, Y: g.zero.Y - s.Y*g.perMetre}
}

// holds reports whether a point lies in the box, so far from its edges.
func (g ground) holds(p draw.Point, off float64) bool {
	return g.box.Grow(-off).Holds(draw.Box{X: p.X, Y: p.Y})
}

// headed returns the direction in which a camera looks on the page, and its right.
func headed(pan float64) (ahead, right draw.Point) {
	sin, cos := math.Sincos(pan * math.Pi / 180)
	return draw.Point{X: sin, Y: -cos}, draw.Point{X: cos, Y: sin}
}

// moved returns a point moved by multiples of two directions.
func moved(p, a, b draw.Point, byA, byB float64) draw.Point {
	return draw.Point{X: p.X + byA*a.X + byB*b.X, Y: p.Y + byA*a.Y + byB*b.Y}
}

// spotOfPose returns where the sensor mark of a camera is.
func spotOfPose(p plan.Pose) Spot { return Spot{p.X, p.Y, p.Z} }
