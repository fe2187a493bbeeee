// The band of the hand of a difference: its path and the windows that it lands
// in, as they were and as they are.

package score

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// A diffHand is the band on a sheet, with that of each state; nil: there is
// nothing of it on the sheet.
type diffHand struct {
	*differ
	main  *handBand
	sides [2]*handBand
}

// handBand returns the band, or a line that says why there is none.
func (df *differ) handBand(i int) section {
	marks := -1 // there is no ring
	for side, sc := range df.sides {
		if sc != nil && sc.shot.Optics.Ring != nil {
			marks = max(marks, 0)
			if w := df.window(side, i); len(w.curves.t) > 0 {
				marks = max(marks, len(w.marks()))
			}
		}
	}
	if marks < 0 {
		return section{name: "hand", least: laneHeight + 2, most: laneHeight + 2, overTime: true,
			draw: func(sh *leaf, g *draw.Group, top, _ float64) {
				sh.heading(g, top, "Hand")
				g.Add(draw.NewText(sh.left, top+laneHeight+1, ringless, sheet.FontNote, draw.Grey))
			}}
	}
	least := min(max(20, float64(marks)*labelOne+1), 100) + laneHeight + bandGap
	return section{name: "hand", least: least, most: max(least, 52), overTime: true,
		draw: func(sh *leaf, g *draw.Group, top, height float64) {
			sh.heading(g, top, "Hand")
			df.handOn(sh, i, top+laneHeight, height-laneHeight-bandGap).draw(g)
		}}
}

// handOn returns the band on a sheet.
func (df *differ) handOn(sh *leaf, i int, top, height float64) *diffHand {
	d := &diffHand{differ: df}
	for side, sc := range df.sides {
		if sc == nil || sc.shot.Optics.Ring == nil {
			continue
		}
		band := &handBand{leaf: sh.of(sc, i), top: top, height: height}
		if d.main = band; len(band.window.curves.t) > 0 {
			d.sides[side] = band
		}
	}
	return d
}

func (d *diffHand) draw(g *draw.Group) {
	d.drawMarks(g.Group("marks"))
	var paths [2][][]draw.Point
	c := sheet.Clearing{Bounds: draw.Box{X: d.main.left, Y: d.main.top - 1, W: d.main.right - d.main.left + apron, H: d.main.height + 2}}
	d.main.blockPlumbs(&c)
	d.blockEnd(&c, d.main.window)
	for side, b := range d.sides {
		if b == nil {
			continue
		}
		paths[side] = b.path()
		for _, run := range simplified(paths[side]) {
			c.Block(run, sheet.Heavy+0.4)
		}
		for _, m := range b.window.marks() {
			c.Avoid([]draw.Point{{X: b.left, Y: b.y(m.deg)}, {X: b.right, Y: b.y(m.deg)}})
		}
	}
	strokeApart(g, paths[before], paths[after], beforeHand)
	if d.sides[after] != nil {
		pg := g.Group("path")
		pg.Title = "degrees at the hand"
		pg.Add(draw.Path{Runs: simplified(paths[after]), Stroke: afterHand})
		if d.both() {
			strokeApart(pg, paths[after], paths[before], sheet.Solid(draw.Black, accent))
		}
		gripsBetween(pg, paths[after])
	}
	d.drawLandings(g.Group("landings"), &c)
}

// drawMarks draws a line for every mark and names it, with the angle that it
// had if that is another.
func (d *diffHand) drawMarks(g *draw.Group) {
	var was []mark
	if b := d.sides[before]; b != nil {
		was = b.window.marks()
	}
	var labels []gutterLabel
	if b := d.sides[after]; b != nil {
		var olds []*mark
		now := b.window.marks()
		olds, was = counterparts(now, was)
		for i, m := range now {
			l := gutterLabel{name: m.name, first: sheet.Figures.Angle(m.deg), y: b.y(m.deg)}
			g.Line(b.left, l.y, b.right, l.y, sheet.Dashed(draw.Mid, sheet.Hair, 1.2, 1.2))
			if old := olds[i]; old != nil && !old.alike(m) {
				l.first = tenths(old.deg) + " → " + tenths(m.deg)
				d.drawOldMark(g, *old)
			}
			labels = append(labels, l)
		}
	}
	for _, m := range was {
		d.drawOldMark(g, m)
		l := gutterLabel{name: m.name, first: sheet.Figures.Angle(m.deg), y: d.sides[before].y(m.deg)}
		if d.After != nil {
			l.first += ", before"
		}
		labels = append(labels, l)
	}
	d.main.gutterLabels(g, labels, d.main.top-0.5, d.main.top+d.main.height+bandGap)
}

// alike reports whether two marks are written alike.
func (m mark) alike(o mark) bool { return m.name == o.name && tenths(m.deg) == tenths(o.deg) }

// counterparts returns what each of the marks was: one that is alike, else the
// next of its name; nil for none. It returns also what is left of the old ones.
func counterparts(now, was []mark) (olds []*mark, left []mark) {
	olds, left = make([]*mark, len(now)), slices.Clone(was)
	for _, same := range []func(m, o mark) bool{mark.alike, func(m, o mark) bool { return m.name == o.name }} {
		for i, m := range now {
			k := slices.IndexFunc(left, func(o mark) bool { return same(m, o) })
			if olds[i] == nil && k >= 0 {
				old := left[k]
				olds[i], left = &old, slices.Delete(left, k, k+1)
			}
		}
	}
	return olds, left
}

// drawOldMark draws the line of a mark that was.
func (d *diffHand) drawOldMark(g *draw.Group, m mark) {
	b := d.sides[before]
	y := b.y(m.deg)
	g.Line(b.left, y, b.right, y, sheet.Dashed(draw.Mid, sheet.Hair, 0.3, 0.9))
}

// tenths writes an angle to a tenth of a degree: marks that moved by less than
// a degree are told apart.
func tenths(deg float64) string { return sheet.Figures.AngleTo(deg, 1) }

// drawLandings draws the windows of all landings; of what was only where it is
// not so any more.
func (d *diffHand) drawLandings(g *draw.Group, c *sheet.Clearing) {
	var told [2][]func()
	for i := range d.Pulls {
		change := &d.Pulls[i]
		for side, p := range change.states() {
			if p == nil || d.sides[side] == nil || p.Kind == "follow" || side == before && d.After != nil && !d.windowMoved(change) {
				continue
			}
			at, ok := d.drawLanding(g, c, side, p)
			if !ok || side == before && change.After != nil && sheet.WindowWidth(p) == sheet.WindowWidth(change.After) {
				continue // the new one says how wide it is
			}
			text := draw.NewText(0, 0, sheet.WindowWidth(p), sheet.FontSmall, []draw.Ink{draw.Grey, draw.Black}[side])
			told[side] = append(told[side], func() {
				if c.Write(g, text, at) {
					c.Taken = append(c.Taken, c.Texts[len(c.Texts)-1].Grow(0.9)) // no figure runs into the next
				}
			})
		}
	}
	for _, write := range slices.Concat(told[after], told[before]) {
		write()
	}
}

// drawLanding draws the window of a landing and returns where it stands, if it
// is on the sheet.
func (d *diffHand) drawLanding(g *draw.Group, c *sheet.Clearing, side int, p *plan.Pull) (at draw.Point, ok bool) {
	b := d.sides[side]
	upper, lower, ok := b.landing(p)
	if !ok {
		return at, false
	}
	land := b.window.x(float64(p.Land))
	x := drawBracket(g, side, land, upper, lower, !p.OpenFar, !p.OpenNear)
	c.Taken = append(c.Taken, draw.Box{X: min(x, land), Y: upper, W: math.Abs(x - land), H: lower - upper}.Grow(0.2))
	return draw.Point{X: x, Y: (upper + lower) / 2}, true
}

// windowMoved reports whether the window of a landing is not where it was, in
// time or on the hand.
func (d *diffHand) windowMoved(c *PullChange) bool {
	if c.Before == nil || c.After == nil || d.sides[after] == nil {
		return true
	}
	a, b := c.Before, c.After
	return math.Abs(float64(a.Land-b.Land)) > 0.005 || tenths(float64(a.WindowHand[0])) != tenths(float64(b.WindowHand[0])) ||
		tenths(float64(a.WindowHand[1])) != tenths(float64(b.WindowHand[1]))
}

// drawBracket draws the window of a landing at x, and returns where the bracket
// stands: thin before the landing for what was, heavy behind it for what is.
func drawBracket(g *draw.Group, side int, x, upper, lower float64, top, bottom bool) float64 {
	if side == after {
		bracket(g, x+bracketOff, upper, lower, top, bottom)
		return x + bracketOff
	}
	g.Add(draw.Path{Runs: [][]draw.Point{bracketRun(x-bracketOff, upper, lower, bracketArm, top, bottom)}, Stroke: sheet.Solid(draw.Grey, sheet.Thin)})
	return x - bracketOff
}
