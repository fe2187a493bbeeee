// The band of the hand of a difference: its path and the windows that it lands
// in, as they were and as they are.

package difference

import (
	"math"
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/gutter"
	"pullscore/render/score/hand"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A diffHand is the band on a sheet, with that of each state; nil: there is
// nothing of it on the sheet.
type diffHand struct {
	*differ
	main  *hand.Band
	sides [2]*hand.Band
}

// handBand returns the band, or a line that says why there is none.
func (df *differ) handBand(i int) bands.Section {
	marks := -1 // there is no ring
	for side, sc := range df.sides {
		if sc != nil && sc.Shot.Optics.Ring != nil {
			marks = max(marks, 0)
			if w := df.window(side, i); len(w.Curves.T) > 0 {
				marks = max(marks, len(hand.Marks(w)))
			}
		}
	}
	if marks < 0 {
		return bands.Section{Name: "hand", Least: bands.LaneHeight + 2, Most: bands.LaneHeight + 2, OverTime: true,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
				sh.Heading(g, top, "Hand")
				g.Add(draw.NewText(sh.Left, top+bands.LaneHeight+1, hand.Ringless, sheet.FontNote, draw.Grey))
			}}
	}
	least := min(max(20, float64(marks)*gutter.LabelOne+1), 100) + bands.LaneHeight + bands.BandGap
	return bands.Section{Name: "hand", Least: least, Most: max(least, 52), OverTime: true,
		Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
			sh.Heading(g, top, "Hand")
			df.handOn(sh, i, top+bands.LaneHeight, height-bands.LaneHeight-bands.BandGap).draw(g)
		}}
}

// handOn returns the band on a sheet.
func (df *differ) handOn(sh *bands.Leaf, i int, top, height float64) *diffHand {
	d := &diffHand{differ: df}
	for side, sc := range df.sides {
		if sc == nil || sc.Shot.Optics.Ring == nil {
			continue
		}
		band := &hand.Band{Leaf: asOf(sh, sc, i), Top: top, Height: height}
		if d.main = band; len(band.Window.Curves.T) > 0 {
			d.sides[side] = band
		}
	}
	return d
}

func (d *diffHand) draw(g *draw.Group) {
	d.drawMarks(g.Group("marks"))
	ends := g.Group("ends")
	var paths [2][][]draw.Point
	c := sheet.Clearing{Bounds: draw.Box{X: d.main.Left, Y: d.main.Top - 1, W: d.main.Window.Right - d.main.Left + bands.Apron, H: d.main.Height + 2}}
	d.main.BlockPlumbs(&c)
	d.main.DrawEnds(ends, &c)
	d.blockEnd(&c, d.main.Window)
	for side, b := range d.sides {
		if b == nil {
			continue
		}
		paths[side] = b.Path()
		for _, run := range bands.Simplified(paths[side]) {
			c.Block(run, draw.HandWidth+0.4)
		}
		for _, m := range hand.Marks(b.Window) {
			c.Avoid([]draw.Point{{X: b.Left, Y: b.Y(m.Deg)}, {X: b.Window.Right, Y: b.Y(m.Deg)}})
		}
	}
	strokeApart(g.Group(signs.Before), paths[before], paths[after], was)
	if d.sides[after] != nil {
		pg := g.Group("path")
		pg.Title = "degrees at the hand"
		pg.Add(draw.Path{Runs: bands.Simplified(paths[after]), Stroke: draw.Solid(draw.Black, draw.HandWidth)})
		for _, box := range hand.Grips(pg, paths[after]) {
			c.Taken = append(c.Taken, box.Grow(0.6))
		}
	}
	d.drawLandings(g.Group("landings"), &c)
}

// drawMarks draws a line for every mark and names it, with the angle that it
// had if that is another.
func (d *diffHand) drawMarks(g *draw.Group) {
	var was []hand.Mark
	if b := d.sides[before]; b != nil {
		was = hand.Marks(b.Window)
	}
	var labels []gutter.Label
	if b := d.sides[after]; b != nil {
		var olds []*hand.Mark
		now := hand.Marks(b.Window)
		olds, was = counterparts(now, was)
		for i, m := range now {
			l := gutter.Label{Name: m.Name, First: sheet.Figures.Angle(m.Deg), Y: b.Y(m.Deg)}
			g.Line(b.Left, l.Y, b.Window.Right, l.Y, draw.Solid(draw.Guide, draw.GuideWidth))
			if old := olds[i]; old != nil && !alike(*old, m) {
				l.First = tenths(old.Deg) + " → " + tenths(m.Deg)
				d.drawOldMark(g, *old)
			}
			labels = append(labels, l)
		}
	}
	for _, m := range was {
		d.drawOldMark(g, m)
		l := gutter.Label{Name: m.Name, First: sheet.Figures.Angle(m.Deg), Y: d.sides[before].Y(m.Deg)}
		if d.After != nil {
			l.First += ", before"
		}
		labels = append(labels, l)
	}
	gutter.Draw(g, d.main.Left, labels, d.main.Top-0.5, d.main.Top+d.main.Height+bands.BandGap)
}

// alike reports whether two marks are written alike.
func alike(m, o hand.Mark) bool { return m.Name == o.Name && tenths(m.Deg) == tenths(o.Deg) }

// counterparts returns what each of the marks was: one that is alike, else the
// next of its name; nil for none. It returns also what is left of the old ones.
func counterparts(now, was []hand.Mark) (olds []*hand.Mark, left []hand.Mark) {
	olds, left = make([]*hand.Mark, len(now)), slices.Clone(was)
	for _, same := range []func(m, o hand.Mark) bool{alike, func(m, o hand.Mark) bool { return m.Name == o.Name }} {
		for i, m := range now {
			k := slices.IndexFunc(left, func(o hand.Mark) bool { return same(m, o) })
			if olds[i] == nil && k >= 0 {
				old := left[k]
				olds[i], left = &old, slices.Delete(left, k, k+1)
			}
		}
	}
	return olds, left
}

// drawOldMark draws the line of a mark that was.
func (d *diffHand) drawOldMark(g *draw.Group, m hand.Mark) {
	b := d.sides[before]
	y := b.Y(m.Deg)
	g.Line(b.Left, y, b.Window.Right, y, draw.Solid(draw.Guide, draw.GuideWidth))
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
	l, ok := b.Landing(p)
	if !ok {
		return at, false
	}
	land := b.Window.X(float64(p.Land))
	x := drawWindow(g, side, land, l)
	c.Taken = append(c.Taken, draw.Box{X: min(x-1.2, land), Y: l.Upper, W: max(x+0.7, land) - min(x-1.2, land), H: l.Lower - l.Upper}.Grow(0.4))
	if l.Lower-l.Upper < signs.WindowLeast { // the heads of its arrows
		c.Taken = append(c.Taken, draw.Box{X: x - 0.6, Y: l.Upper - 2, W: 1.2, H: l.Lower - l.Upper + 4})
	}
	return draw.Point{X: x, Y: (l.Upper + l.Lower) / 2}, true
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

// drawWindow draws the window of a landing at x, and returns where it stands: thin before
// the landing for what was, heavy behind it for what is.
func drawWindow(g *draw.Group, side int, x float64, l hand.Landing) float64 {
	if side == after {
		l.Draw(g, x+hand.BracketOff, -1)
		return x + hand.BracketOff
	}
	const arm = 1.1
	at := x - hand.BracketOff
	run := []draw.Point{{X: at, Y: l.Upper}, {X: at, Y: l.Lower}}
	if !l.Above && !l.Far {
		run = append([]draw.Point{{X: at + arm, Y: l.Upper}}, run...)
	}
	if !l.Below && !l.Near {
		run = append(run, draw.Point{X: at + arm, Y: l.Lower})
	}
	g.Group(signs.Before).Add(draw.Path{Runs: [][]draw.Point{run}, Stroke: was})
	return at
}
