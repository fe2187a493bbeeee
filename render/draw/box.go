// Boxes: the area that a thing takes on the page.

package draw

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
