// The band of distances of a difference: the subjects and the focus as they
// were and as they are, and every landing joined to what it was.

package score

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A diffDistance is the band on a sheet, with that of each state; nil: the
// shot does not show on the sheet in that state.
type diffDistance struct {
	*differ
	main  *distanceBand
	sides [2]*distanceBand
}

// distanceBand returns the band.
func (df *differ) distanceBand(i int) section {
	n := 0
	for _, sc := range df.sides {
		if sc != nil {
			n = max(n, len(sc.shot.Subjects))
		}
	}
	least := min(max(34, float64(n)*labelOne+4), 140) + laneHeight + bandGap
	return section{name: "distance", least: least, most: max(least, 86), overTime: true,
		draw: func(sh *leaf, g *draw.Group, top, height float64) {
			sh.heading(g, top, "Distance")
			df.drawNumbers(sh, g.Group("numbers"), top, i)
			d := diffDistance{differ: df}
			for side, sc := range df.sides {
				if sc == nil {
					continue
				}
				band := &distanceBand{leaf: sh.of(sc, i), top: top + laneHeight, height: height - laneHeight - bandGap}
				if d.main = band; len(band.window.curves.t) > 0 {
					d.sides[side] = band
				}
			}
			d.draw(g)
		}}
}

// drawNumbers draws the numbers of the moves where they start, and those of
// moves that are gone where they started.
func (df *differ) drawNumbers(sh *leaf, g *draw.Group, top float64, i int) {
	var signs []sign
	if df.After != nil {
		signs = sh.badges(top)
	}
	for _, c := range df.Pulls {
		p, w := c.Before, df.main.windows[i]
		if c.After != nil || !w.holds(float64(p.Start)) {
			continue
		}
		signs = append(signs, sign{at: w.x(float64(p.Start)), width: 2*badgeRadius(p.Number) + 0.8, rank: 2,
			draw: func(g *draw.Group, x float64) {
				y := top + laneAir + flagLane/2
				bg := g.Group("gone")
				bg.Title = "before " + pullTitle(df.Before, p)
				sh.pole(bg, x, y, w.x(float64(p.Start)), top)
				hollowBadge(bg, x, y, p.Number)
			}})
	}
	sh.drawSigns(g, append(signs, df.endSign(sh, top)...))
}

// of returns the sheet as one of another score on the same times.
func (sh *leaf) of(sc *score, i int) *leaf {
	return &leaf{score: sc, window: sc.windows[i], plumbX: sh.plumbX}
}

func (d *diffDistance) draw(g *draw.Group) {
	d.main.drawScale(g.Group("scale"))
	var focus, edges [2][][]draw.Point
	for side, b := range d.sides {
		if b == nil {
			continue
		}
		c := &b.window.curves
		focus[side] = b.run(func(i int) float64 { return c.focus[i] })
		far := b.run(func(i int) float64 { return c.far[i] })
		near := b.run(func(i int) float64 { return c.near[i] })
		edges[side] = slices.Concat(far, near)
		if side == after || d.After == nil {
			b.drawZone(g, simplified(far), simplified(near))
		}
	}
	d.drawWas(g.Group("before"), edges, focus)
	if b := d.sides[after]; b != nil {
		fg := g.Group("focus")
		fg.Title = "focus"
		fg.Add(draw.Path{Runs: simplified(focus[after]), Stroke: afterFocus})
		if d.both() {
			strokeApart(fg, focus[after], focus[before], sheet.Solid(draw.Blue, accent))
		}
	}
	d.drawLabels(g.Group("names"))
	arcs := d.drawShifts(g.Group("landings"))
	d.writeArrivals(g.Group("arrivals"), slices.Concat(arcs, focus[before], focus[after], edges[before], edges[after]))
}

// drawWas draws what was where it was otherwise: subjects, the edges of the
// sharp zone, and the focus.
func (d *diffDistance) drawWas(g *draw.Group, edges, focus [2][][]draw.Point) {
	b := d.sides[before]
	if b == nil {
		return
	}
	if d.After != nil {
		for k, u := range b.shot.Subjects {
			for _, off := range []float64{-deep(u) / 2, deep(u) / 2} {
				strokeApart(g, d.subject(before, u.Name, k, off), d.subject(after, u.Name, -1, off), beforeThin)
			}
		}
		strokeApart(g, edges[before], edges[after], sheet.Dashed(draw.Mid, sheet.Hair, 0.4, 0.8))
	}
	strokeApart(g, focus[before], focus[after], beforeFocus)
}

// subject returns where a subject's front or back goes in a state; k is its
// index there, below 0 if it is not known.
func (d *diffDistance) subject(side int, name string, k int, off float64) [][]draw.Point {
	b := d.sides[side]
	if b == nil {
		return nil
	}
	if k < 0 {
		if k = indexOfSubject(b.shot, name); k < 0 {
			return nil
		}
	}
	return b.run(func(i int) float64 { return b.window.curves.distance[k][i] + off })
}

func indexOfSubject(s *plan.Shot, name string) int {
	return slices.IndexFunc(s.Subjects, func(u *plan.Subject) bool { return u.Name == name })
}

// drawLabels names the subjects, each where it stands when the sheet starts,
// with the distance that it had if that is another.
func (d *diffDistance) drawLabels(g *draw.Group) {
	var labels []gutterLabel
	for side := after; side >= before; side-- {
		b := d.sides[side]
		if b == nil {
			continue
		}
		for k, u := range b.shot.Subjects {
			if side == before && d.sides[after] != nil && d.After.Subject(u.Name) != nil {
				continue
			}
			metres := b.window.curves.distance[k][0]
			l := gutterLabel{name: u.Name, y: b.y(metres)}
			l.first, l.second = sheet.Style(b.shot).Both(metres)
			d.compare(&l, side, u.Name)
			if !math.IsNaN(l.y) {
				labels = append(labels, l)
			}
		}
	}
	d.main.gutterLabels(g, labels, d.main.top-0.5, d.main.top+d.main.height+bandGap)
}

// compare says in a label what the other state has.
func (d *diffDistance) compare(l *gutterLabel, side int, name string) {
	if !d.both() || d.sides[1-side] == nil {
		return
	}
	if side == before {
		l.first, l.second = l.first+", gone", ""
		return
	}
	old := d.sides[before]
	k := indexOfSubject(old.shot, name)
	if k < 0 {
		l.first, l.second = l.first+", new", ""
		return
	}
	if was := sheet.Style(d.After).Tape(old.window.curves.distance[k][0]); was != l.first {
		l.first, l.second = was+" → "+l.first, ""
	}
}

// leastArc is how far apart, in millimetres, two landings are joined on the
// curve: nearer than that the arrow hides more than it shows.
const leastArc = 6.5

// drawShifts joins the old landing of every changed move to its new one, and
// returns the arrows' runs.
func (d *diffDistance) drawShifts(g *draw.Group) [][]draw.Point {
	var arcs [][]draw.Point
	for _, c := range d.changes() {
		var at [2]draw.Point
		var on [2]bool
		for side, p := range c.states() {
			if b := d.sides[side]; b != nil && p != nil {
				t := float64(p.Land)
				at[side] = draw.Point{X: b.window.x(t), Y: b.y(b.shot.ToTape(b.shot.FocusAt(t), t))}
				on[side] = b.window.holds(t) && !math.IsNaN(at[side].Y)
			}
		}
		if on[before] && on[after] && math.Hypot(at[after].X-at[before].X, at[after].Y-at[before].Y) > leastArc {
			arcs = append(arcs, shift(g, at[before], at[after], d.bulge(at[before], at[after])))
		}
		for side := range at {
			if on[side] {
				landing(g, at[side], side)
			}
		}
	}
	return arcs
}

// bulge returns how an arrow leaves the line of the focus, so that both are
// seen: into the band.
func (d *diffDistance) bulge(from, to draw.Point) float64 {
	by := min(max(1.2, 0.12*math.Hypot(to.X-from.X, to.Y-from.Y)), 4)
	if (from.Y+to.Y)/2 > d.main.top+d.main.height/2 {
		return -by
	}
	return by
}

// writeArrivals writes where walks end, and where they ended.
func (d *diffDistance) writeArrivals(g *draw.Group, lines [][]draw.Point) {
	c := d.main.clearing(simplified(lines))
	d.blockEnd(&c, d.main.window)
	if b := d.sides[before]; b != nil {
		for k, u := range b.shot.Subjects {
			for _, run := range d.subject(before, u.Name, k, 0) {
				c.Block(sheet.Simplify(run), deep(u)+1)
			}
		}
	}
	if b := d.sides[after]; b != nil {
		b.writeArrivals(g, &c, b.shot.Blocking, "")
	}
	if b := d.sides[before]; b != nil {
		moves, label := b.shot.Blocking, ""
		if d.After != nil {
			label = "before: "
			moves = slices.DeleteFunc(slices.Clone(moves), func(m plan.Blocking) bool { return d.endsAlike(m) })
		}
		b.writeArrivals(g, &c, moves, label)
	}
}

// endsAlike reports whether a move of before ends now as it did.
func (d *diffDistance) endsAlike(m plan.Blocking) bool {
	return slices.ContainsFunc(d.After.Blocking, func(o plan.Blocking) bool {
		u, was := d.After.Subject(o.Who), d.Before.Subject(m.Who)
		if o.Who != m.Who || u == nil || was == nil || math.Abs(float64(o.End-m.End)) > 0.005 {
			return false
		}
		return sheet.Style(d.After).Tape(d.After.DistanceAt(u, float64(o.End))) == sheet.Style(d.After).Tape(d.Before.DistanceAt(was, float64(m.End)))
	})
}
