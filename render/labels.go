// Keeping labels apart: along a line, and free in a plot.

package render

import (
	"sort"

	"pullscore/render/draw"
)

// spread returns where to put the middles of things of these sizes so that
// they stand apart within lo to hi, in the order of where they want to be, each
// as near to that as the others let it (least squares, by pooling adjacent
// violators). Things that together are longer than lo to hi run over hi; see
// capacity.
func spread(want, size []float64, lo, hi float64) []float64 {
	n := len(want)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return want[order[a]] < want[order[b]] })

	// With what stands before a thing taken away, apart means never falling.
	type pool struct {
		sum   float64
		count int
	}
	var pools []pool
	before := make([]float64, n)
	total := 0.0
	for k, i := range order {
		before[k] = total
		pools = append(pools, pool{want[i] - size[i]/2 - total, 1})
		total += size[i]
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/float64(a.count) <= b.sum/float64(b.count) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.count + b.count})
		}
	}
	at := make([]float64, n)
	k := 0
	for _, p := range pools {
		start := max(min(p.sum/float64(p.count), hi-total), lo)
		for range p.count {
			i := order[k]
			at[i] = start + before[k] + size[i]/2
			k++
		}
	}
	return at
}

// capacity returns how many of the sizes, from the first, go into room.
func capacity(size []float64, room float64) int {
	for i, s := range size {
		if room -= s; room < -1e-9 {
			return i
		}
	}
	return len(size)
}

// A clearing is a plot in which texts look for a free place.
type clearing struct {
	bounds draw.Box
	taken  []draw.Box
}

// block keeps texts off a line's run of points.
func (c *clearing) block(run []draw.Point, width float64) {
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		c.taken = append(c.taken, draw.Box{
			X: min(a.X, b.X), Y: min(a.Y, b.Y),
			W: max(a.X, b.X) - min(a.X, b.X), H: max(a.Y, b.Y) - min(a.Y, b.Y),
		}.Grow(width/2))
	}
}

// free reports whether b is inside and on nothing.
func (c *clearing) free(b draw.Box) bool {
	if !c.bounds.Holds(b) {
		return false
	}
	for _, t := range c.taken {
		if t.Overlaps(b) {
			return false
		}
	}
	return true
}

// near finds a free place for a box of w by h beside p: first right and left
// of it, then in ever wider rings. It takes the place.
func (c *clearing) near(p draw.Point, w, h float64) (b draw.Box, ok bool) {
	for ring := range 9 {
		d := 1 + 1.7*float64(ring)
		for _, at := range []draw.Point{
			{X: p.X + d, Y: p.Y - h/2}, {X: p.X - d - w, Y: p.Y - h/2},
			{X: p.X + d, Y: p.Y - d - h}, {X: p.X + d, Y: p.Y + d},
			{X: p.X - d - w, Y: p.Y - d - h}, {X: p.X - d - w, Y: p.Y + d},
			{X: p.X - w/2, Y: p.Y - d - h}, {X: p.X - w/2, Y: p.Y + d},
		} {
			if b = (draw.Box{X: at.X, Y: at.Y, W: w, H: h}); c.free(b.Grow(0.3)) {
				c.taken = append(c.taken, b)
				return b, true
			}
		}
	}
	return draw.Box{}, false
}
