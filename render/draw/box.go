// Boxes: the area that a thing takes on the page.

package draw

import "math"

// A Box is an upright rectangle, in millimetres. X and Y are its top left corner.
type Box struct{ X, Y, W, H float64 }

// Right returns the x of the box's right side, in millimetres.
func (b Box) Right() float64 { return b.X + b.W }

// Bottom returns the y of the box's lower side, in millimetres.
func (b Box) Bottom() float64 { return b.Y + b.H }

// Grow returns the box with every side moved outwards by d millimetres.
func (b Box) Grow(d float64) Box {
	return Box{b.X - d, b.Y - d, b.W + 2*d, b.H + 2*d}
}

// Overlaps reports whether the boxes share any area.
func (b Box) Overlaps(c Box) bool {
	return b.X < c.Right() && c.X < b.Right() && b.Y < c.Bottom() && c.Y < b.Bottom()
}

// Holds reports whether c lies wholly inside b.
func (b Box) Holds(c Box) bool {
	return c.X >= b.X && c.Y >= b.Y && c.Right() <= b.Right() && c.Bottom() <= b.Bottom()
}

// around returns the upright box that holds points.
func around(corners [4]Point) Box {
	lo, hi := corners[0], corners[0]
	for _, p := range corners[1:] {
		lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
		hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
	}
	return Box{lo.X, lo.Y, hi.X - lo.X, hi.Y - lo.Y}
}

// Share returns which part of the chord from a to c lies in the box, as shares of its
// length: from the first to the last, which is not above the first where none does (Liang
// and Barsky, A New Concept and Method for Line Clipping, 1984).
func (b Box) Share(a, c Point) (first, last float64) {
	first, last = 0, 1
	dx, dy := c.X-a.X, c.Y-a.Y
	for _, side := range [4][2]float64{{-dx, a.X - b.X}, {dx, b.Right() - a.X}, {-dy, a.Y - b.Y}, {dy, b.Bottom() - a.Y}} {
		switch speed, room := side[0], side[1]; {
		case speed == 0 && room <= 0:
			return 0, 0
		case speed < 0:
			first = max(first, room/speed)
		case speed > 0:
			last = min(last, room/speed)
		}
	}
	return first, last
}

// Clash reports whether the areas of two texts share more than a strip that is deep
// millimetres wide. It is exact for turned texts: two convex shapes are apart if a line
// along a side of one of them parts them.
func Clash(a, b Text, deep float64) bool {
	if !a.Box().Overlaps(b.Box()) {
		return false
	}
	p, q := a.Corners(), b.Corners()
	return !parted(p, q, deep) && !parted(q, p, deep)
}

// Passed reports whether the chord from one point to another comes nearer to the text than
// clear millimetres. It is exact for turned texts: it looks in the frame of the level text.
func (t Text) Passed(from, to Point, clear float64) bool {
	a, b := t.Level(from), t.Level(to)
	t.Turn = 0
	first, last := t.Box().Grow(clear).Share(a, b)
	return first < last
}

// parted reports whether a line along a side of p leaves q on its other side, but for deep
// millimetres.
func parted(p, q [4]Point, deep float64) bool {
	for i := range p {
		from, to := p[i], p[(i+1)%4]
		nx, ny := to.Y-from.Y, from.X-to.X // outwards, as the corners go clockwise
		d := math.Hypot(nx, ny)
		if d == 0 {
			continue
		}
		least := math.Inf(1)
		for _, c := range q {
			least = min(least, ((c.X-from.X)*nx+(c.Y-from.Y)*ny)/d)
		}
		if least >= -deep {
			return true
		}
	}
	return false
}

// Bounds returns the upright box that holds everything in the group, in millimetres: texts
// as measured, lines without their width. ok is false for a group that holds nothing.
func (g *Group) Bounds() (b Box, ok bool) {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	take := func(x, y float64) {
		lo.X, lo.Y = min(lo.X, x), min(lo.Y, y)
		hi.X, hi.Y = max(hi.X, x), max(hi.Y, y)
	}
	box := func(b Box) {
		take(b.X, b.Y)
		take(b.Right(), b.Bottom())
	}
	for it := range g.All() {
		switch it := it.(type) {
		case Line:
			take(it.From.X, it.From.Y)
			take(it.To.X, it.To.Y)
		case Rect:
			box(it.Box)
		case Disc:
			box(Box{X: it.Centre.X, Y: it.Centre.Y}.Grow(it.Radius))
		case Text:
			box(it.Box())
		case Path:
			for _, run := range it.Runs {
				for _, p := range run {
					take(p.X, p.Y)
				}
			}
		}
	}
	if lo.X > hi.X {
		return Box{}, false
	}
	return Box{lo.X, lo.Y, hi.X - lo.X, hi.Y - lo.Y}, true
}
