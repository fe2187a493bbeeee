// The plots of the stops drawing: curves over the scale of stops, each with its numbers
// on it at both ends, and the line of what is wanted.

package stops

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A plot is one of the two, with its scale upwards.
type plot struct {
	*stopsPage
	group *draw.Group
	top   float64
	scale func(v float64) float64 // to 0 below and 1 above
	taken []draw.Box              // by texts
	keep  []draw.Box              // of lines that no text may lie on
}

func (p *plot) y(v float64) float64 {
	return p.top + (1-min(max(p.scale(v), 0), 1))*p.plotHeight
}

func (p *plot) inside() draw.Box {
	return draw.Box{X: p.left, Y: p.top, W: p.right - p.left, H: p.plotHeight}
}

// A level is a line across a plot with a name: at one value, or along the stops.
type level struct {
	text  string
	along []draw.Point // on the page
}

// levelAt returns a level at one value.
func (p *plot) levelAt(v float64, text string) level {
	return level{text, []draw.Point{{X: p.left, Y: p.y(v)}, {X: p.right, Y: p.y(v)}}}
}

// at returns how high a level is at a place of the page.
func (l level) at(x float64) float64 {
	for i := 1; i < len(l.along); i++ {
		if a, b := l.along[i-1], l.along[i]; x <= b.X {
			return a.Y + (b.Y-a.Y)*min(max((x-a.X)/(b.X-a.X), 0), 1)
		}
	}
	return l.along[len(l.along)-1].Y
}

// levelAir is between a level and its words.
const levelAir = 0.9

// drawLevel writes the words of a level along it, above or below, as far right as no
// curve is in their way.
func (p *plot) drawLevel(l level, lines []*line) {
	text := draw.NewText(0, 0, l.text, sheet.FontSmall, draw.Black)
	width := draw.Slack * text.Width
	for _, over := range []bool{true, false} {
		for x := p.right - 1.5 - width; x > p.left+1.5; x -= 2 {
			text.At = draw.Point{X: x, Y: l.base(x, width, over)}
			if b := text.Room(); p.inside().Holds(b) && free(p.keep, b.Grow(limitAir)) && clearOf(b.Grow(0.8), lines) {
				p.put(text)
				return
			}
		}
	}
	x := p.right - 1.5 - width
	text.At = draw.Point{X: x, Y: l.base(x, width, true)}
	p.group.Add(sheet.Halo(text.Room()))
	p.put(text)
}

// limitAir is between a text and a line that limits something.
const limitAir = 0.65

// base returns the baseline of words over or under a level from x on.
func (l level) base(x, width float64, over bool) float64 {
	f := sheet.FontSmall
	probe := draw.NewText(0, 0, "x", f, draw.Black).Box()
	high, low := l.at(x), l.at(x)
	for u := 0.0; u <= 1; u += 0.125 {
		y := l.at(x + u*width)
		high, low = min(high, y), max(low, y)
	}
	if over {
		return high - levelAir - probe.Bottom()
	}
	return low + levelAir - probe.Y
}

func (p *plot) put(t draw.Text) {
	p.group.Add(t)
	p.taken = append(p.taken, t.Room().Grow(0.5))
}

// clearOf reports whether a box is clear of lines.
func clearOf(b draw.Box, lines []*line) bool {
	for _, l := range lines {
		for _, run := range l.runs {
			for _, at := range along(run) {
				if b.Holds(draw.Box{X: at.X, Y: at.Y}) {
					return false
				}
			}
		}
	}
	return true
}

// along returns points of a run that are at most half a millimetre apart.
func along(run []draw.Point) []draw.Point {
	var list []draw.Point
	for i, q := range run {
		if i > 0 {
			last := run[i-1]
			n := int(math.Hypot(q.X-last.X, q.Y-last.Y)/0.5) + 1
			for k := 1; k < n; k++ {
				u := float64(k) / float64(n)
				list = append(list, draw.Point{X: last.X + u*(q.X-last.X), Y: last.Y + u*(q.Y-last.Y)})
			}
		}
		list = append(list, q)
	}
	return list
}

// ticks writes the scale.
func (p *plot) ticks(format func(float64) string, values ...float64) {
	for _, v := range values {
		y := p.y(v)
		p.group.Line(p.left-1.2, y, p.left, y, draw.Solid(draw.Black, draw.FineWidth))
		p.group.Add(draw.NewText(p.left-2, y+sheet.FontSmall.Middle(), format(v), sheet.FontSmall, draw.Grey).Aligned(draw.End))
	}
}

// runs returns the points of one curve. What lies under the scale is cut off.
func (p *plot) runs(c *rackCurve, values []float64) [][]draw.Point {
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
	return slices.DeleteFunc(append(runs, run), func(r []draw.Point) bool { return len(r) < 2 })
}

// lines joins the curves that would be drawn over each other.
func (p *plot) lines(values func(*rackCurve) []float64) []*line {
	var list []*line
	for _, c := range p.curves {
		runs := p.runs(c, values(c))
		if len(runs) == 0 {
			continue
		}
		if i := slices.IndexFunc(list, func(l *line) bool { return l.shares(runs) }); i >= 0 {
			list[i].curves = append(list[i].curves, c)
			continue
		}
		list = append(list, &line{[]*rackCurve{c}, runs})
	}
	return list
}

// draw draws the level and all curves, then the words of the level and the numbers.
func (p *plot) draw(l level, values func(*rackCurve) []float64) {
	limit := p.group.Group(signs.Limit)
	limit.Add(draw.Path{Runs: [][]draw.Point{l.along}, Stroke: draw.Solid(draw.Black, draw.RulerWidth)})
	lines := p.lines(values)
	for _, c := range lines {
		p.group.Add(draw.Path{Runs: c.runs, Stroke: draw.Solid(draw.Black, draw.FocusWidth)})
	}
	p.keep = p.limits()
	p.drawLevel(l, lines)
	for _, at := range along(l.along) {
		p.keep = append(p.keep, draw.Box{X: at.X - 0.25, Y: at.Y, W: 0.5})
	}
	for _, right := range []bool{false, true} {
		for _, c := range lines {
			p.number(c, right)
		}
	}
}

// number puts the numbers of a line on it, as near to one of its ends as there is room.
func (p *plot) number(l *line, right bool) {
	b := newBadge(l.racks())
	var points []draw.Point
	for _, run := range l.runs {
		points = append(points, along(run)...)
	}
	order := slices.Clone(points)
	if right {
		slices.Reverse(order)
	}
	for _, keep := range [][]draw.Box{p.keep, nil} {
		for _, at := range order {
			on := func(x float64) float64 {
				return min(heightAt(points, x), p.top+p.plotHeight-discHigh/2-0.3)
			}
			box := b.box(at.X-b.width/2, on)
			if box.X < p.left+0.4 || box.Right() > p.right-0.4 || !free(p.taken, box.Grow(1)) || !free(keep, box.Grow(limitAir)) {
				continue
			}
			p.taken = append(p.taken, box)
			b.draw(p.group, box.X, on)
			return
		}
	}
}

// heightAt returns the y of points that go from left to right at x.
func heightAt(points []draw.Point, x float64) float64 {
	i, _ := slices.BinarySearchFunc(points, x, func(p draw.Point, x float64) int { return cmp.Compare(p.X, x) })
	return points[min(i, len(points)-1)].Y
}

// heading names a plot at its left, and the unit of its scale.
func (p *plot) heading(text, unit string) {
	y := p.top + 2.6
	p.group.Add(draw.NewText(sheet.Margin, y, text, sheet.FontHeading, draw.Black))
	if unit != "" {
		p.group.Add(draw.NewText(sheet.Margin, y+3.6, unit, sheet.FontSmall, draw.Grey))
	}
}

// drawLanding draws the chance of landing.
func (st *stopsPage) drawLanding(g *draw.Group) {
	p := &plot{stopsPage: st, group: g, top: st.landTop, scale: probit}
	p.heading("Lands", "chance")
	p.ticks(func(v float64) string { return sheet.Figures.Share(v, 0) }, 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99)
	if why := st.noLanding(); why != "" {
		p.empty(why)
		return
	}
	wanted := p.levelAt(float64(st.answer.Wanted), "wanted: "+sheet.Figures.Wanted(float64(st.answer.Wanted)))
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

// empty says in the middle of a plot why nothing is in it, beside the ends of windows.
func (p *plot) empty(text string) {
	at := draw.NewText((p.left+p.right)/2, p.top+p.plotHeight/2, text, sheet.FontBody, draw.Grey).Aligned(draw.Middle)
	home := at.At.X
	for off := 0.0; off < (p.right-p.left)/2; off += 2 {
		for _, x := range []float64{home + off, home - off} {
			at.At.X = x
			if b := at.Room().Grow(1); p.inside().Holds(b) && free(p.limits(), b) {
				p.group.Add(at)
				return
			}
		}
	}
	at.At.X = home
	p.group.Add(sheet.Halo(at.Room()), at)
}

// limits returns the ends of windows as boxes that no text may lie on.
func (p *plot) limits() []draw.Box {
	var list []draw.Box
	for _, x := range p.edges() {
		list = append(list, draw.Box{X: x, Y: p.top, H: p.plotHeight})
	}
	return list
}

// The blur that the plot has room for, arcmin; its scale is a logarithm,
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
	p.heading("Shows", "arcmin")
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
	for _, n := range numbers {
		l.along = append(l.along, draw.Point{X: p.x(n), Y: p.y(most[n])})
	}
	first, last := sheet.Figures.Blur(most[numbers[0]]), sheet.Figures.Blur(most[numbers[len(numbers)-1]])
	l.text = "seen above " + first
	if last != first {
		l.text += " to " + last
	}
	return l, true
}
