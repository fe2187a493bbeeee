// Labels that do not overlap: along a line, and anywhere in a plot.

package sheet

import (
	"iter"
	"math"
	"slices"
	"sort"

	"pullscore/render/draw"
)

// Spread returns places for the middles of things of the given sizes, so that they do
// not overlap and lie within lo to hi. They keep the order of the wanted places, and
// lie as near to them as possible (least squares, by pooling adjacent violators). If
// the things together are longer than lo to hi, they extend past hi; see Capacity. All
// lengths are in millimetres.
func Spread(want, size []float64, lo, hi float64) []float64 {
	n := len(want)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return want[order[a]] < want[order[b]] })

	// With what stands before a thing taken away, apart means never falling.
	type pool struct {
		Sum   float64
		Count int
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
			if a.Sum/float64(a.Count) <= b.Sum/float64(b.Count) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.Sum + b.Sum, a.Count + b.Count})
		}
	}
	at := make([]float64, n)
	k := 0
	for _, p := range pools {
		start := max(min(p.Sum/float64(p.Count), hi-total), lo)
		for range p.Count {
			i := order[k]
			at[i] = start + before[k] + size[i]/2
			k++
		}
	}
	return at
}

// Capacity returns how many of the sizes, from the first on, fit into room. All are in
// millimetres.
func Capacity(size []float64, room float64) int {
	for i, s := range size {
		if room -= s; room < -1e-9 {
			return i
		}
	}
	return len(size)
}

// A Clearing finds free places for texts in a plot.
type Clearing struct {
	Bounds draw.Box
	Taken  []draw.Box // areas that texts must not cover
	thin   []draw.Box // thin lines, which a text may cover if there is no other place
	Texts  []draw.Box // texts, and leader lines: what other leader lines must not cross either
}

// Block keeps texts off a line through a run of points, with a width in millimetres.
func (c *Clearing) Block(run []draw.Point, width float64) {
	c.Taken = append(c.Taken, chordBoxes(run, width)...)
}

// Avoid keeps texts off a thin line if there is another place for them.
func (c *Clearing) Avoid(run []draw.Point) {
	c.thin = append(c.thin, chordBoxes(run, Thin)...)
}

// chordBoxes returns the room that each chord of a run takes.
func chordBoxes(run []draw.Point, width float64) []draw.Box {
	var boxes []draw.Box
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		boxes = append(boxes, draw.Box{
			X: min(a.X, b.X), Y: min(a.Y, b.Y),
			W: max(a.X, b.X) - min(a.X, b.X), H: max(a.Y, b.Y) - min(a.Y, b.Y),
		}.Grow(width/2))
	}
	return boxes
}

// Free reports whether b lies inside the plot and overlaps none of the boxes.
func (c *Clearing) Free(b draw.Box, boxes []draw.Box) bool {
	return c.Bounds.Holds(b) && !slices.ContainsFunc(boxes, b.Overlaps)
}

// How many rings around a point are searched for a place: as long as thin lines
// are kept clear, and where they are not.
const (
	ringsClear = 4
	ringsAtAll = 9
)

// Near returns a free place for a box of w by h millimetres beside p, and takes it. It
// avoids thin lines if there is such a place not far away. ok is false if there is no
// place.
func (c *Clearing) Near(p draw.Point, w, h float64) (b draw.Box, ok bool) {
	if b, ok = c.around(p, w, h, ringsClear, c.Taken, c.thin); !ok {
		b, ok = c.around(p, w, h, ringsAtAll, c.Taken)
	}
	if ok {
		c.take(p, b)
	}
	return b, ok
}

// take takes a box, and the leader line to it from p.
func (c *Clearing) take(p draw.Point, b draw.Box) {
	c.Taken = slices.AppendSeq(append(c.Taken, b), leaderBoxes(p, b))
	c.Texts = append(slices.AppendSeq(c.Texts, leaderBoxes(p, b)), b)
}

// leaderMost is how long a leader line is at most, in millimetres.
const leaderMost = 12.0

// reaches reports whether a leader line from p to b is short enough, and crosses no other
// text.
func (c *Clearing) reaches(p draw.Point, b draw.Box) bool {
	if _, d := Nearest(p, b); d > leaderMost {
		return false
	}
	for l := range leaderBoxes(p, b) {
		for i := range c.Texts {
			if l.Overlaps(c.Texts[i]) {
				return false
			}
		}
	}
	return true
}

// Nearest returns the point of b that is nearest to p, and its distance in millimetres.
func Nearest(p draw.Point, b draw.Box) (q draw.Point, d float64) {
	q = draw.Point{X: min(max(p.X, b.X), b.Right()), Y: min(max(p.Y, b.Y), b.Bottom())}
	return q, math.Hypot(q.X-p.X, q.Y-p.Y)
}

// leaderFrom is how far from what it names a text may stand without a leader
// line.
const leaderFrom = 3.5

// leaderBoxes yields small boxes along the leader line from p to b, none where
// none is needed.
func leaderBoxes(p draw.Point, b draw.Box) iter.Seq[draw.Box] {
	return func(yield func(draw.Box) bool) {
		q, d := Nearest(p, b)
		if d <= leaderFrom {
			return
		}
		for at := 0.4; at < d-0.8; at += 0.4 {
			share := at / d
			if !yield(draw.Box{X: p.X + share*(q.X-p.X) - 0.2, Y: p.Y + share*(q.Y-p.Y) - 0.2, W: 0.4, H: 0.4}) {
				return
			}
		}
	}
}

// apart is how far a text keeps from what is taken.
const apart = 0.3

// ringOff returns how far off p a ring of places is.
func ringOff(ring int) float64 { return 1 + 1.7*float64(ring) }

// around looks for a place clear of the boxes, right and left of p and then
// above and below it, in ever wider rings.
func (c *Clearing) around(p draw.Point, w, h float64, rings int, lists ...[]draw.Box) (b draw.Box, ok bool) {
	var room [128]draw.Box // as a rule enough
	boxes := appendInReach(room[:0], p, w, h, rings, lists)
	for ring := range rings {
		d := ringOff(ring)
		for _, at := range [...]draw.Point{
			{X: p.X + d, Y: p.Y - h/2}, {X: p.X - d - w, Y: p.Y - h/2},
			{X: p.X + d, Y: p.Y - d - h}, {X: p.X + d, Y: p.Y + d},
			{X: p.X - d - w, Y: p.Y - d - h}, {X: p.X - d - w, Y: p.Y + d},
			{X: p.X - w/2, Y: p.Y - d - h}, {X: p.X - w/2, Y: p.Y + d},
		} {
			if b = (draw.Box{X: at.X, Y: at.Y, W: w, H: h}); c.Free(b.Grow(apart), boxes) && c.reaches(p, b) {
				return b, true
			}
		}
	}
	return draw.Box{}, false
}

// appendInReach appends the boxes that a place in one of the rings around p can
// touch. A plot has thousands, and every place tried would look at all of them.
func appendInReach(near []draw.Box, p draw.Point, w, h float64, rings int, lists [][]draw.Box) []draw.Box {
	// As far as the ring beyond the last, so that no rounding counts.
	reach := draw.Box{X: p.X - w, Y: p.Y - h, W: 2 * w, H: 2 * h}.Grow(ringOff(rings) + apart)
	for _, boxes := range lists {
		for i := range boxes {
			if boxes[i].Overlaps(reach) {
				near = append(near, boxes[i])
			}
		}
	}
	return near
}

// Write places a text at a free place near p, and reports whether it found one. If the
// place is not right beside p, it draws a leader line. A thin line that would cross the
// text is interrupted there.
func (c *Clearing) Write(g *draw.Group, text draw.Text, p draw.Point) bool {
	box, ok := c.Near(p, text.Room().W, text.Font.Height())
	if !ok {
		return false
	}
	text.At = draw.Point{X: box.X, Y: box.Y + text.Box().H - (text.Box().Bottom() - text.At.Y)}
	if !c.Free(box, c.thin) {
		g.Add(Halo(box))
	}
	g.Add(text)
	LeadTo(g, p, box)
	return true
}

// BlockAt keeps texts off a vertical line at x through the plot. It ignores a line
// outside the plot.
func (c *Clearing) BlockAt(x float64) {
	if line := (draw.Box{X: x - 0.2, Y: c.Bounds.Y, W: 0.4, H: c.Bounds.H}); line.Overlaps(c.Bounds) {
		c.Taken = append(c.Taken, line)
	}
}
