// Texts without a place beside the thing that they name, and texts that lie on lines.

package sheet

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// Anywhere returns the free place nearest to p in the whole plot for a box of w by h
// millimetres, and takes it. It considers only places that within allows. ok is false
// if there is none.
func (c *Clearing) Anywhere(p draw.Point, w, h float64, within func(draw.Box) bool) (best draw.Box, ok bool) {
	const step = 1.5
	least := math.Inf(1)
	r := newRaster(c.Bounds, c.Taken)
	for y := c.Bounds.Y; y+h <= c.Bounds.Bottom(); y += step {
		for x := c.Bounds.X; x+w <= c.Bounds.Right(); x += step {
			b := draw.Box{X: x, Y: y, W: w, H: h}
			if _, d := Nearest(p, b); d >= 1 && d < least && r.empty(b.Grow(0.3)) && within(b) && c.reaches(p, b) {
				best, least, ok = b, d, true
			}
		}
	}
	if ok {
		c.take(p, best)
	}
	return best, ok
}

// WriteAnywhere places a text as Write does, and if there is no place near p, at the
// nearest free place in the whole plot.
func (c *Clearing) WriteAnywhere(g *draw.Group, text draw.Text, p draw.Point) bool {
	if c.Write(g, text, p) {
		return true
	}
	box, ok := c.Anywhere(p, text.Room().W, text.Font.Height(), func(draw.Box) bool { return true })
	if ok {
		text.At = draw.Point{X: box.X, Y: box.Y + text.At.Y - text.Box().Y}
		g.Add(text)
		LeadTo(g, p, box)
	}
	return ok
}

// A raster answers quickly whether a box is free: for every cell it holds how
// many taken cells lie above and left of it (a summed-area table, Crow 1984).
type raster struct {
	bounds      draw.Box
	cols, lines int
	sums        []int32
}

const rasterCell = 0.5 // millimetres

func newRaster(bounds draw.Box, taken []draw.Box) *raster {
	r := &raster{bounds: bounds, cols: int(bounds.W/rasterCell) + 2, lines: int(bounds.H/rasterCell) + 2}
	r.sums = make([]int32, (r.cols+1)*(r.lines+1))
	for _, b := range taken {
		x1, y1, x2, y2 := r.cells(b)
		for y := y1; y < y2; y++ {
			for x := x1; x < x2; x++ {
				r.sums[(y+1)*(r.cols+1)+x+1] = 1
			}
		}
	}
	for y := 1; y <= r.lines; y++ {
		for x := 1; x <= r.cols; x++ {
			at := y*(r.cols+1) + x
			r.sums[at] += r.sums[at-1] + r.sums[at-r.cols-1] - r.sums[at-r.cols-2]
		}
	}
	return r
}

// cells returns the cells that a box touches, the second pair past the last.
func (r *raster) cells(b draw.Box) (x1, y1, x2, y2 int) {
	cell := func(v, from float64, most int) int {
		return int(min(max(math.Floor((v-from)/rasterCell), -1), float64(most)))
	}
	x1, y1 = max(cell(b.X, r.bounds.X, r.cols), 0), max(cell(b.Y, r.bounds.Y, r.lines), 0)
	x2, y2 = min(cell(b.Right(), r.bounds.X, r.cols)+1, r.cols), min(cell(b.Bottom(), r.bounds.Y, r.lines)+1, r.lines)
	return x1, y1, x2, y2
}

// empty reports whether no cell that the box touches is taken.
func (r *raster) empty(b draw.Box) bool {
	x1, y1, x2, y2 := r.cells(b)
	if x2 <= x1 || y2 <= y1 {
		return true
	}
	n := r.cols + 1
	return r.sums[y2*n+x2]-r.sums[y1*n+x2]-r.sums[y2*n+x1]+r.sums[y1*n+x1] == 0
}

// LeadTo draws the leader line from p to a box at some distance.
func LeadTo(g *draw.Group, p draw.Point, box draw.Box) {
	if near, d := Nearest(p, box); d > leaderFrom {
		share := (d - 0.7) / d
		g.Group(signs.Leader).Line(p.X, p.Y, p.X+share*(near.X-p.X), p.Y+share*(near.Y-p.Y), Solid(draw.Mid, Hair))
	}
}

// Halo returns a box in the colour of the page to lie under a text, so that no line
// crosses the text.
func Halo(box draw.Box) draw.Rect {
	return draw.Rect{Box: box.Grow(0.15), Fill: draw.Paper}
}
