// The plots of the stops drawing: a curve a rack, those that are alike as one,
// each with its number on it.

package stops

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/stops"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A rackCurve is the figures of a rack, or of several that have the same, over
// the stops.
type rackCurve struct {
	racks        []stops.Rack
	number       []float64
	chance, blur []float64
	seen         []float64 // from which blur it shows
	worst, faint float64   // the least chance and the least blur
	stroke       draw.Stroke
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
	for i, c := range list {
		c.stroke = rackStroke(i)
	}
	return list, hidden
}

// rackStroke returns the line of a curve: dash and weight tell them apart, the
// ink only helps.
func rackStroke(i int) draw.Stroke {
	dashes := [][]float64{nil, {2.4, 0.9}, {0.7, 0.7}, {3, 0.8, 0.6, 0.8}}
	inks := []draw.Ink{draw.Black, draw.Blue, draw.Vermilion, draw.Green}
	width := sheet.Heavy
	if i >= len(dashes) {
		width = sheet.Medium
	}
	return draw.Stroke{Ink: inks[i%len(inks)], Width: width, Dash: dashes[i%len(dashes)]}
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

// numbers names the racks of a curve.
func (c *rackCurve) numbers() string {
	var list []string
	for _, r := range c.racks {
		list = append(list, strconv.Itoa(r.Pull))
	}
	if len(list) > 4 {
		list = append(list[:3], "…")
	}
	return strings.Join(list, ", ")
}

// A plot is one of the two, with its scale upwards.
type plot struct {
	*stopsPage
	group *draw.Group
	top   float64
	scale func(v float64) float64 // to 0 below and 1 above
	taken []draw.Box
}

func (p *plot) y(v float64) float64 {
	return p.top + (1-min(max(p.scale(v), 0), 1))*p.plotHeight
}

// A level is a line across a plot with a name: at one value, or along the stops.
type level struct {
	value float64
	text  string
	along []draw.Point // on the page; nil: level
}

// at returns how high a level is at a place of the page.
func (l level) at(p *plot, x float64) float64 {
	for i := 1; i < len(l.along); i++ {
		if a, b := l.along[i-1], l.along[i]; x <= b.X {
			return a.Y + (b.Y-a.Y)*min(max((x-a.X)/(b.X-a.X), 0), 1)
		}
	}
	if n := len(l.along); n > 0 {
		return l.along[n-1].Y
	}
	return p.y(l.value)
}

// drawLevel draws a level under the curves, and its name where no curve is: at
// one end of it, above or below.
func (p *plot) drawLevel(l level, lines [][]draw.Point) {
	label := draw.NewText(0, 0, l.text, sheet.FontSmall, draw.Black)
	left, right := p.left+1.5, p.right-1.5-label.Room().W
	under := func(x float64) float64 { return max(l.at(p, x), l.at(p, x+label.Room().W)) + 3 }
	over := func(x float64) float64 { return min(l.at(p, x), l.at(p, x+label.Room().W)) - 1.2 }
	places := []draw.Point{{X: right, Y: under(right)}, {X: left, Y: under(left)}, {X: right, Y: over(right)}, {X: left, Y: over(left)}}
	label.At = places[0]
	for _, at := range places {
		label.At = at
		if b := label.Room().Grow(1); b.Y > p.top && b.Bottom() < p.top+p.plotHeight && clearOf(b, lines) {
			break
		}
	}
	p.group.Add(draw.Rect{Box: label.Box().Grow(0.3), Fill: draw.Paper}, label)
	p.taken = append(p.taken, label.Room().Grow(0.5))
}

// clearOf tells whether a box is clear of lines.
func clearOf(b draw.Box, lines [][]draw.Point) bool {
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			for u := 0.0; u <= 1; u += 0.125 { // chords are a few millimetres
				at := draw.Box{X: line[i-1].X + u*(line[i].X-line[i-1].X), Y: line[i-1].Y + u*(line[i].Y-line[i-1].Y)}
				if b.Holds(at) {
					return false
				}
			}
		}
	}
	return true
}

// ticks writes the scale.
func (p *plot) ticks(format func(float64) string, values ...float64) {
	for _, v := range values {
		y := p.y(v)
		p.group.Line(p.left-1.2, y, p.left, y, sheet.Solid(draw.Mid, sheet.Hair))
		p.group.Add(draw.NewText(p.left-2, y+sheet.FontSmall.Middle(), format(v), sheet.FontSmall, draw.Grey).Aligned(draw.End))
	}
}

// curve draws one curve and returns its points. What lies under the scale is
// cut off.
func (p *plot) curve(c *rackCurve, values []float64) []draw.Point {
	var runs [][]draw.Point
	var run []draw.Point
	for i, v := range values {
		at := draw.Point{X: p.x(c.number[i]), Y: p.y(v)}
		switch {
		case sheet.Finite(v) && p.scale(v) >= 0:
			run = append(run, at)
			continue
		case sheet.Finite(v) && len(run) > 0: // down to where it leaves
			from, to := p.scale(values[i-1]), p.scale(v)
			last := run[len(run)-1]
			run = append(run, draw.Point{X: last.X + (at.X-last.X)*from/(from-to), Y: p.top + p.plotHeight})
		}
		runs, run = append(runs, run), nil
	}
	runs = slices.DeleteFunc(append(runs, run), func(r []draw.Point) bool { return len(r) < 2 })
	if len(runs) > 0 {
		p.group.Add(draw.Path{Runs: runs, Stroke: c.stroke})
	}
	return slices.Concat(runs...)
}

// draw draws all curves, then the name of the level and their numbers.
func (p *plot) draw(l level, values func(*rackCurve) []float64) {
	along := l.along
	if along == nil {
		along = []draw.Point{{X: p.left, Y: p.y(l.value)}, {X: p.right, Y: p.y(l.value)}}
	}
	p.group.Add(draw.Path{Runs: [][]draw.Point{along}, Stroke: sheet.Dashed(draw.Rust, sheet.Medium, 2, 1)})
	lines := make([][]draw.Point, len(p.curves))
	for i, c := range p.curves {
		lines[i] = p.curve(c, values(c))
	}
	p.drawLevel(l, lines)
	for i, c := range p.curves {
		if len(lines[i]) > 0 {
			p.number(c, lines[i], spreadOut(i, len(p.curves)))
		}
	}
}

// number puts the number of a curve on it: at home, a share of the way along,
// or the nearest place to it that is free.
func (p *plot) number(c *rackCurve, line []draw.Point, home float64) {
	text := draw.NewText(0, 0, c.numbers(), sheet.FontNumber, draw.Black).Aligned(draw.Middle)
	start := home * float64(len(line)-1)
	order := make([]int, len(line))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(math.Abs(float64(a)-start), math.Abs(float64(b)-start))
	})
	for _, i := range order {
		text.At = draw.Point{X: line[i].X, Y: line[i].Y + sheet.FontNumber.Middle()}
		box := text.Room().Grow(0.5)
		inside := draw.Box{X: p.left, Y: p.top, W: p.right - p.left, H: p.plotHeight}
		if !inside.Holds(box) || !free(p.taken, box.Grow(0.3)) {
			continue
		}
		p.taken = append(p.taken, box)
		p.group.Add(draw.Rect{Box: box, Fill: draw.Paper, Stroke: sheet.Solid(c.stroke.Ink, sheet.Thin)}, text)
		return
	}
}

// heading names a plot above its scale.
func (p *plot) heading(text string) {
	p.group.Add(draw.NewText(sheet.Margin, p.top-2, text, sheet.FontHeading, draw.Black))
}

// drawLanding draws the chance of landing.
func (st *stopsPage) drawLanding(g *draw.Group) {
	p := &plot{stopsPage: st, group: g, top: st.landTop, scale: probit}
	p.heading("Lands")
	p.ticks(func(v float64) string { return sheet.Figures.Share(v, 0) }, 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99)
	if why := st.noLanding(); why != "" {
		p.empty(why)
		return
	}
	wanted := level{value: float64(st.answer.Wanted), text: "wanted: " + sheet.Figures.Wanted(float64(st.answer.Wanted))}
	p.draw(wanted, func(c *rackCurve) []float64 { return c.chance })
}

// probit is the scale of chances: even in standard deviations of a normal
// landing, which spreads what lies near certainty. It goes from 1 to 99.9 %, and
// holds what lies beyond at its ends.
func probit(chance float64) float64 {
	z := func(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }
	lo, hi := z(0.01), z(0.999)
	return (z(min(max(chance, 0.01), 0.999)) - lo) / (hi - lo)
}

func (st *stopsPage) noLanding() string {
	switch {
	case len(st.answer.Racks) == 0:
		return "The shot has no rack."
	case !st.answer.Landing:
		return st.answer.NoAngles() + "."
	case !slices.ContainsFunc(st.curves, func(c *rackCurve) bool { return slices.ContainsFunc(c.chance, sheet.Finite) }):
		return "No rack has a chance that could be computed."
	}
	return ""
}

// spreadOut gives each of n numbers a place of its own along its curve.
func spreadOut(i, n int) float64 { return (float64(i) + 0.5) / float64(n) * 0.6 }

// empty says in the middle of a plot why nothing is in it.
func (p *plot) empty(text string) {
	at := draw.NewText((p.left+p.right)/2, p.top+p.plotHeight/2, text, sheet.FontBody, draw.Grey).Aligned(draw.Middle)
	p.group.Add(draw.Rect{Box: at.Box().Grow(1), Fill: draw.Paper}, at)
}

// The blur that the plot has room for, arc minutes; its scale is a logarithm,
// on which blur falls evenly with the stop.
const leastBlur = 1.0

// drawSeeing draws the blur of what a rack leaves.
func (st *stopsPage) drawSeeing(g *draw.Group) {
	top := 50.0
	for _, c := range st.curves {
		for _, b := range c.blur {
			if sheet.Finite(b) {
				top = max(top, b*1.1)
			}
		}
	}
	top = min(top, 1e4)
	p := &plot{stopsPage: st, group: g, top: st.seenTop, scale: func(v float64) float64 {
		return math.Log(v/leastBlur) / math.Log(top/leastBlur)
	}}
	p.heading("Shows, in arcmin")
	var marks []float64
	for decade := 1.0; decade < top; decade *= 10 {
		for _, m := range []float64{1, 2, 5} {
			if decade*m < top {
				marks = append(marks, decade*m)
			}
		}
	}
	p.ticks(func(v float64) string { return sheet.Figures.Number(v, 0) }, marks...)
	if len(st.answer.Racks) == 0 {
		p.empty("The shot has no rack.")
		return
	}
	seen, ok := p.seenLevel()
	if !ok {
		p.empty("No rack has a blur that could be computed.")
		return
	}
	p.draw(seen, func(c *rackCurve) []float64 { return c.blur })
}

// seenLevel is the blur from which a rack shows, which diffraction raises as the lens
// is stopped down: of several racks the most. It is not ok where no rack has one.
func (p *plot) seenLevel() (l level, ok bool) {
	most := map[float64]float64{}
	for _, c := range p.curves {
		for i, n := range c.number {
			if sheet.Finite(c.seen[i]) {
				most[n] = max(most[n], c.seen[i])
			}
		}
	}
	numbers := slices.Sorted(maps.Keys(most))
	if len(numbers) == 0 {
		return level{}, false
	}
	l.value = most[numbers[0]]
	for _, n := range numbers {
		l.along = append(l.along, draw.Point{X: p.x(n), Y: p.y(most[n])})
	}
	l.text = "seen above " + sheet.Figures.Blur(l.value)
	if last := sheet.Figures.Blur(most[numbers[len(numbers)-1]]); last != sheet.Figures.Blur(l.value) {
		l.text += " to " + last
	}
	return l, true
}
