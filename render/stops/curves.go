// The curves of the stops drawing: one for each rack, those that are alike as one.

package stops

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/stops"
	"pullscore/render/draw"
)

// A rackCurve is the figures of a rack, or of several that have the same, over
// the stops.
type rackCurve struct {
	racks        []stops.Rack
	number       []float64
	chance, blur []float64
	seen         []float64 // from which blur it shows
	worst, faint float64   // the least chance and the least blur
}

// mostCurves is how many a plot can hold and still be read.
const mostCurves = 8

// curvesOf returns the curves to draw, and how many racks are not among them:
// those that land more surely and show more than others.
func curvesOf(a *stops.Answer) (list []*rackCurve, hidden int) {
	for _, r := range a.Racks {
		c := newRackCurve(a, r)
		i := slices.IndexFunc(list, c.alike)
		if i < 0 {
			list = append(list, c)
		} else {
			list[i].racks = append(list[i].racks, r)
		}
	}
	if len(list) > mostCurves {
		first := func(key func(*rackCurve) float64) []*rackCurve {
			s := slices.Clone(list)
			slices.SortStableFunc(s, func(x, y *rackCurve) int { return cmp.Compare(key(x), key(y)) })
			return s[:mostCurves/2]
		}
		keep := append(first(func(c *rackCurve) float64 { return c.worst }), first(func(c *rackCurve) float64 { return c.faint })...)
		list = slices.DeleteFunc(list, func(c *rackCurve) bool {
			gone := !slices.Contains(keep, c)
			if gone {
				hidden += len(c.racks)
			}
			return gone
		})
	}
	return list, hidden
}

func newRackCurve(a *stops.Answer, r stops.Rack) *rackCurve {
	c := &rackCurve{racks: []stops.Rack{r}, worst: math.Inf(1), faint: math.Inf(1)}
	for _, v := range a.Curve {
		i := slices.IndexFunc(v.Racks, func(at stops.RackAt) bool { return at.Pull == r.Pull })
		if i < 0 {
			continue
		}
		c.number = append(c.number, float64(v.Number))
		c.chance = append(c.chance, float64(v.Racks[i].Probability))
		c.blur = append(c.blur, float64(v.Racks[i].LeftBlur))
		c.seen = append(c.seen, float64(v.Racks[i].SeenFrom))
		c.worst, c.faint = min(c.worst, float64(v.Racks[i].Probability)), min(c.faint, float64(v.Racks[i].LeftBlur))
	}
	return c
}

// alike tells whether two curves would be drawn over each other.
func (c *rackCurve) alike(o *rackCurve) bool {
	near := func(a, b float64) bool {
		return math.Abs(a-b) < 0.004*max(1, math.Abs(a)) || math.IsNaN(a) && math.IsNaN(b)
	}
	return slices.EqualFunc(c.chance, o.chance, near) && slices.EqualFunc(c.blur, o.blur, near) &&
		c.racks[0].Stays == o.racks[0].Stays
}

// nearest is how far apart curves may be throughout and still share one line, in
// millimetres.
const nearest = 1.2

// A line is the curve of one rack or of several in one plot.
type line struct {
	curves []*rackCurve
	runs   [][]draw.Point
}

// racks returns the numbers of the racks that share the line, in their order.
func (l *line) racks() []int {
	var list []int
	for _, c := range l.curves {
		for _, r := range c.racks {
			list = append(list, r.Pull)
		}
	}
	slices.Sort(list)
	return list
}

// shares reports whether another curve lies so near to the line throughout that both are
// drawn as one.
func (l *line) shares(runs [][]draw.Point) bool {
	return slices.EqualFunc(l.runs, runs, func(a, b []draw.Point) bool {
		return slices.EqualFunc(a, b, func(p, q draw.Point) bool {
			return math.Abs(p.X-q.X) < 0.01 && math.Abs(p.Y-q.Y) < nearest
		})
	})
}
