// The band of distances of a difference: the subjects and the focus as they
// were and as they are, and every landing joined to what it was.

package difference

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/gutter"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A diffDistance is the band on a sheet, with that of each state; nil: the
// shot does not show on the sheet in that state.
type diffDistance struct {
	*differ
	main  *bands.DistanceBand
	sides [2]*bands.DistanceBand
}

// distanceBand returns the band.
func (df *differ) distanceBand(i int) bands.Section {
	n := 0
	for _, sc := range df.sides {
		if sc != nil {
			n = max(n, len(sc.Shot.Subjects))
		}
	}
	above, below := df.edgeRoom(i, true), df.edgeRoom(i, false)
	room := bands.LaneHeight + above + below + bands.BandGap
	least := min(max(34, float64(n)*gutter.LabelOne+4), 140) + room
	return bands.Section{Name: "distance", Least: least, Most: max(least, 86), OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Heading(g, top, "Distance")
			df.drawNumbers(sh, g.Group("numbers"), top, i)
			d := diffDistance{differ: df}
			for side, sc := range df.sides {
				if sc == nil {
					continue
				}
				band := &bands.DistanceBand{Leaf: asOf(sh, sc, i), Top: top + bands.LaneHeight + above, Height: height - room}
				if d.main = band; len(band.Window.Curves.T) > 0 {
					d.sides[side] = band
				}
			}
			d.draw(g)
		}}
}

// edgeRoom returns the room that signs of a zone take which goes on beyond the band.
func (df *differ) edgeRoom(i int, above bool) (room float64) {
	for side := range df.sides {
		if w := df.window(side, i); w != nil {
			room = max(room, w.EdgeRoom(above))
		}
	}
	return room
}

// drawNumbers draws the numbers of the moves where they start, and those of
// moves that are gone where they started.
func (df *differ) drawNumbers(sh *bands.Leaf, g *draw.Group, top float64, i int) {
	var list []bands.Sign
	if df.After != nil {
		list = sh.Badges(top)
	}
	for _, c := range df.Pulls {
		p, w := c.Before, df.main.Windows[i]
		if c.After != nil || !w.Holds(float64(p.Start)) {
			continue
		}
		list = append(list, bands.Sign{At: w.X(float64(p.Start)), Width: 2*signs.DiscRadius(p.Number) + 0.8, Rank: 2,
			Draw: func(g *draw.Group, x float64) {
				y := top + bands.LaneAir + bands.FlagLane/2
				bg := g.Group("gone")
				bg.Title = "before " + bands.PullTitle(df.Before, p)
				sh.Pole(bg, x, y, w.X(float64(p.Start)), top)
				hollowBadge(bg, x, y, p.Number)
			}})
	}
	sh.DrawSigns(g, append(list, df.endSign(sh, top)...))
}

// asOf returns the sheet as one of another score on the same times.
func asOf(sh *bands.Leaf, sc *bands.Chart, i int) *bands.Leaf {
	return &bands.Leaf{Chart: sc, Window: sc.Windows[i], PlumbX: sh.PlumbX}
}

func (d *diffDistance) draw(g *draw.Group) {
	d.main.DrawScale(g.Group("scale"))
	var focus, edges [2][][]draw.Point
	for side, b := range d.sides {
		if b == nil {
			continue
		}
		c := &b.Window.Curves
		focus[side] = b.Run(func(i int) float64 { return c.Focus[i] })
		edges[side] = b.Limits()
		if side == after || d.After == nil {
			b.DrawZone(g)
		}
	}
	d.drawWas(g.Group(signs.Before), edges, focus)
	if b := d.sides[after]; b != nil {
		fg := g.Group(signs.Focus)
		fg.Title = "focus"
		fg.Add(draw.Path{Runs: bands.Simplified(focus[after]), Stroke: b.FocusPen()})
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
		for k, u := range b.Shot.Subjects {
			for _, off := range []float64{-bands.Deep(u) / 2, bands.Deep(u) / 2} {
				strokeApart(g, d.subject(before, u.Name, k, off), d.subject(after, u.Name, -1, off), was)
			}
		}
		strokeApart(g, edges[before], edges[after], was)
	}
	strokeApart(g, focus[before], focus[after], was)
}

// subject returns where a subject's front or back goes in a state; k is its
// index there, below 0 if it is not known.
func (d *diffDistance) subject(side int, name string, k int, off float64) [][]draw.Point {
	b := d.sides[side]
	if b == nil {
		return nil
	}
	if k < 0 {
		if k = indexOfSubject(b.Shot, name); k < 0 {
			return nil
		}
	}
	return b.Run(func(i int) float64 { return b.Window.Curves.Distance[k][i] + off })
}

func indexOfSubject(s *plan.Shot, name string) int {
	return slices.IndexFunc(s.Subjects, func(u *plan.Subject) bool { return u.Name == name })
}

// drawLabels names the subjects, each where it stands when the sheet starts,
// with the distance that it had if that is another.
func (d *diffDistance) drawLabels(g *draw.Group) {
	var labels []gutter.Label
	for side := after; side >= before; side-- {
		b := d.sides[side]
		if b == nil {
			continue
		}
		for k, u := range b.Shot.Subjects {
			if side == before && d.sides[after] != nil && d.After.Subject(u.Name) != nil {
				continue
			}
			metres := b.Window.Curves.Distance[k][0]
			l := gutter.Label{Name: u.Name, Y: b.Y(metres)}
			l.First, l.Second = sheet.Style(b.Shot).Both(metres)
			d.compare(&l, side, u.Name)
			if !math.IsNaN(l.Y) {
				labels = append(labels, l)
			}
		}
	}
	gutter.Draw(g, d.main.Left, labels, d.main.Top-0.5, d.main.Top+d.main.Height+bands.BandGap)
}

// compare says in a label what the other state has.
func (d *diffDistance) compare(l *gutter.Label, side int, name string) {
	if !d.both() || d.sides[1-side] == nil {
		return
	}
	if side == before {
		l.First, l.Second = l.First+", gone", ""
		return
	}
	old := d.sides[before]
	k := indexOfSubject(old.Shot, name)
	if k < 0 {
		l.First, l.Second = l.First+", new", ""
		return
	}
	if was := sheet.Style(d.After).Tape(old.Window.Curves.Distance[k][0]); was != l.First {
		l.First, l.Second = was+" → "+l.First, ""
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
				at[side] = draw.Point{X: b.Window.X(t), Y: b.Y(b.Shot.ToTape(b.Shot.FocusAt(t), t))}
				on[side] = b.Window.Holds(t) && !math.IsNaN(at[side].Y)
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
	if (from.Y+to.Y)/2 > d.main.Top+d.main.Height/2 {
		return -by
	}
	return by
}

// writeArrivals writes where walks end, and where they ended.
func (d *diffDistance) writeArrivals(g *draw.Group, lines [][]draw.Point) {
	c := d.main.Clearing(bands.Simplified(lines))
	d.blockEnd(&c, d.main.Window)
	if b := d.sides[before]; b != nil {
		for k, u := range b.Shot.Subjects {
			for _, run := range d.subject(before, u.Name, k, 0) {
				c.Block(sheet.Simplify(run), bands.Deep(u)+1)
			}
		}
	}
	if b := d.sides[after]; b != nil {
		b.WriteArrivals(g, &c, b.Shot.Blocking, "")
	}
	if b := d.sides[before]; b != nil {
		moves, label := b.Shot.Blocking, ""
		if d.After != nil {
			label = "before: "
			moves = slices.DeleteFunc(slices.Clone(moves), func(m plan.Blocking) bool { return d.endsAlike(m) })
		}
		b.WriteArrivals(g, &c, moves, label)
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
