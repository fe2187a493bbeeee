// What stands round the bands of a difference: the title, what the two states
// are called, and the key.

package render

import (
	"math"
	"slices"
	"unicode"

	"pullscore/interp/plan"
	"pullscore/render/draw"
)

// How the two states are drawn: strokes of the focus, and of what else was.
var (
	beforeFocus = dashed(draw.Grey, medium, 1.5, 1)
	afterFocus  = solid(draw.Blue, heavy)
	beforeHand  = dashed(draw.Grey, medium, 1.5, 1)
	afterHand   = solid(draw.Black, heavy)
	beforeThin  = dashed(draw.Grey, thin, 0.9, 0.7)
)

// accent is how wide a line is where it is not what it was.
const accent = 1.0

// drawAround draws what stands round the bands of a sheet.
func (df *differ) drawAround(sh *sheet, root *draw.Group, number int) {
	df.drawHead(sh, root.Group("head"), number)
	if sh.window == nil {
		return
	}
	df.drawEnd(sh, root.Group("end"))
	sh.plumbs = root.Group("plumb-lines")
	sh.drawRuler(root.Group("ruler"))
	sh.drawKeyOf(root.Group("key"), df.key(), df.hasChance())
	sh.drawCaution(root.Group("caution"))
}

// drawHead writes what the shot is, and what its states are called.
func (df *differ) drawHead(sh *sheet, g *draw.Group, number int) {
	right := []string{"changes · " + df.running()}
	if len(sh.sheets) > 1 {
		right = append(right, sh.pageLine(number))
	}
	room := drawPageTitle(g, sh.shot, sh.paper, right...)
	names, x := g.Group("states"), margin
	for side, label := range []string{"before: ", "after: "} {
		if df.sides[side] == nil {
			label = []string{"was not in ", "is not in "}[side]
		} else {
			drawState(names, x, headBase+headPitch-fontBody.Middle(), side)
			x += stateSign
		}
		text := draw.NewText(x, headBase+headPitch, label, fontBody, draw.Grey)
		name := draw.NewText(text.Box().Right()+1, text.At.Y, df.Names[side], fontStrong, draw.Black)
		name = shortenedFront(name, margin+room*float64(side+1)/2-8-name.At.X)
		names.Add(text, name)
		x = name.Box().Right() + 8
	}
}

// stateSign is the room of the sign for a state before its name.
const stateSign = 12.0

// drawState draws how a state is drawn: its line and how it lands.
func drawState(g *draw.Group, x, y float64, side int) {
	stroke := beforeFocus
	if side == after {
		stroke = afterFocus
	}
	g.Line(x, y, x+8, y, stroke)
	landing(g, draw.Point{X: x + 8, Y: y}, side)
}

// landing draws the disc where a move lands: hollow before, full after.
func landing(g *draw.Group, at draw.Point, side int) {
	disc := draw.Disc{Centre: at, Radius: 0.95, Fill: draw.Black, Stroke: solid(draw.Paper, thin)}
	if side == before {
		disc.Fill, disc.Stroke = draw.Paper, solid(draw.Black, thin)
	}
	g.Add(disc)
}

// shortenedFront returns the text cut with an ellipsis in front: paths differ
// at their ends. Marks, which have no width, stay with their letter.
func shortenedFront(t draw.Text, w float64) draw.Text {
	if t.Width <= w {
		return t
	}
	runes := []rune(t.String)
	for len(runes) > 0 && (unicode.In(runes[0], unicode.M, unicode.Cf) || t.Font.Width("…"+string(runes)) > w) {
		runes = runes[1:]
	}
	t.Full, t.String = t.String, "…"+string(runes)
	t.Width = t.Font.Width(t.String)
	return t
}

// running says how fast and how long the shot runs, before and after.
func (df *differ) running() string {
	var rates, times []string
	for _, s := range df.shots() {
		if s != nil {
			rates = append(rates, s.Rate.String()+" fps")
			times = append(times, seconds(float64(s.Duration)))
		}
	}
	return turned(rates) + " · " + turned(times)
}

// turned writes what was and what is, once where they are the same.
func turned(figures []string) string {
	if figures = slices.Compact(figures); len(figures) == 1 {
		return figures[0]
	}
	return figures[0] + " → " + figures[1]
}

// earlyEnd returns the state in which the shot ends before the other does, and
// when; ok is false where none does.
func (df *differ) earlyEnd() (side int, t float64, ok bool) {
	if !df.both() {
		return 0, 0, false
	}
	was, now := lasting(df.Before), lasting(df.After)
	if side = before; now < was {
		side = after
	}
	return side, min(was, now), math.Abs(now-was) > 0.005
}

// drawEnd draws where the shorter shot ends.
func (df *differ) drawEnd(sh *sheet, g *draw.Group) {
	if side, t, ok := df.earlyEnd(); ok && sh.window.holds(t) {
		stroke := solid(draw.Black, thin)
		if side == before {
			stroke = beforeThin
		}
		x := sh.window.x(t)
		for _, p := range sh.strips {
			if p.name == "distance" || p.name == "hand" {
				g.Line(x, p.top+laneHeight, x, p.top+p.height, stroke)
			}
		}
	}
}

// blockEnd keeps texts off that line.
func (df *differ) blockEnd(c *clearing, w *window) {
	if _, t, ok := df.earlyEnd(); ok && w.holds(t) {
		c.blockAt(w.x(t))
	}
}

// endSign returns the word over that line.
func (df *differ) endSign(sh *sheet, top float64) []sign {
	side, t, ok := df.earlyEnd()
	if !ok || !sh.window.holds(t) {
		return nil
	}
	text := draw.NewText(0, 0, []string{"ended", "ends"}[side], fontSmall, []draw.Ink{draw.Grey, draw.Black}[side]).Aligned(draw.Middle)
	return []sign{{at: sh.window.x(t), width: text.Width + 1.2, rank: 4, draw: func(g *draw.Group, x float64) {
		y := top + laneAir + flagLane/2
		sh.pole(g, x, y+text.Box().H/2, sh.window.x(t), top)
		text.At = draw.Point{X: x, Y: y + fontSmall.Middle()}
		g.Add(text)
	}}}
}

// hasChance tells whether a chance of landing may be written on a sheet.
func (df *differ) hasChance() bool {
	for _, sc := range df.sides {
		if sc != nil && slices.ContainsFunc(sc.shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() }) {
			return true
		}
	}
	return false
}

// key returns the signs of a difference.
func (df *differ) key() []keyEntry {
	entries := []keyEntry{{"move of the focus", 2 * badgeSize, df.keyNumber}}
	if slices.ContainsFunc(df.changes(), func(c *PullChange) bool { return c.Before != nil && c.After != nil }) {
		entries = append(entries, keyEntry{"landing, before and after", 9, keyShift})
	}
	if df.verdict() == "" {
		entries = append(entries, keyEntry{"heavier: changed", 8, keyHeavier})
	}
	for _, sign := range []struct {
		text string
		side int
	}{{"gone", before}, {"new", after}} {
		if df.both() && slices.ContainsFunc(df.Pulls, func(c PullChange) bool { return c.states()[1-sign.side] == nil }) {
			entries = append(entries, keyEntry{sign.text, 2.2, func(g *draw.Group, x, y float64) { fate(g, x+1.1, y, sign.side) }})
		}
	}
	entries = append(entries,
		keyEntry{"focus, sharp zone", 7, keyZone},
		keyEntry{"subject", 7, keySubject})
	if df.verdict() == "" {
		entries = append(entries, keyEntry{"where it was", 7, func(g *draw.Group, x, y float64) {
			g.Line(x, y-0.8, x+7, y-0.8, beforeThin)
			g.Line(x, y+0.8, x+7, y+0.8, beforeThin)
		}})
	}
	if slices.ContainsFunc(df.sides[:], func(sc *score) bool { return sc != nil && sc.shot.Optics.Ring != nil }) {
		entries = append(entries, keyEntry{"window to land in", 5, df.keyWindow})
	}
	if df.After != nil && slices.ContainsFunc(df.After.Pulls, func(p *plan.Pull) bool { return len(p.Grips) > 0 }) {
		entries = append(entries, keyEntry{"hand lets go", 6, keyGrip})
	}
	return entries
}

func (df *differ) keyNumber(g *draw.Group, x, y float64) {
	if df.After == nil {
		hollowBadge(g, x+badgeSize, y, 1)
		return
	}
	badge(g, x+badgeSize, y, 1)
}

func keyShift(g *draw.Group, x, y float64) {
	from, to := draw.Point{X: x + 1, Y: y}, draw.Point{X: x + 8, Y: y}
	shift(g, from, to, 0)
	landing(g, from, before)
	landing(g, to, after)
}

func keyHeavier(g *draw.Group, x, y float64) {
	g.Line(x, y, x+4, y, afterHand)
	g.Line(x+4, y, x+8, y, solid(draw.Black, accent))
}

func (df *differ) keyWindow(g *draw.Group, x, y float64) {
	for side, sc := range df.sides {
		if sc != nil {
			drawBracket(g, side, x+2.4, y-1.3, y+1.3, true, true)
		}
	}
}

// fate draws the sign of a pull that is gone, a cross, or that is new, a plus.
func fate(g *draw.Group, x, y float64, side int) {
	const arm = 1.0
	stroke := solid(draw.Black, 0.4)
	if side == after {
		g.Line(x-arm, y, x+arm, y, stroke)
		g.Line(x, y-arm, x, y+arm, stroke)
		return
	}
	g.Line(x-arm*0.8, y-arm*0.8, x+arm*0.8, y+arm*0.8, stroke)
	g.Line(x-arm*0.8, y+arm*0.8, x+arm*0.8, y-arm*0.8, stroke)
}

// shift joins an old landing to its new one by an arrow, which bulges by so
// much in the middle: downwards, or upwards below 0. It returns its run.
func shift(g *draw.Group, from, to draw.Point, bulge float64) []draw.Point {
	const disc, head, wide, steps = 1.2, 1.3, 0.55, 48
	if math.Hypot(to.X-from.X, to.Y-from.Y) < 2*disc+head {
		return nil
	}
	var run []draw.Point // of the arc, between the discs
	for i := range steps + 1 {
		u := float64(i) / steps
		p := draw.Point{X: from.X + u*(to.X-from.X), Y: from.Y + u*(to.Y-from.Y) + 4*bulge*u*(1-u)}
		if math.Hypot(p.X-from.X, p.Y-from.Y) >= disc && math.Hypot(p.X-to.X, p.Y-to.Y) >= disc+head {
			run = append(run, p)
		}
	}
	if len(run) == 0 {
		return nil
	}
	foot := run[len(run)-1]
	d := math.Hypot(to.X-foot.X, to.Y-foot.Y)
	ux, uy := (to.X-foot.X)/d, (to.Y-foot.Y)/d
	tip := draw.Point{X: to.X - disc*ux, Y: to.Y - disc*uy}
	g.Add(draw.Path{Runs: [][]draw.Point{simplify(run)}, Stroke: solid(draw.Black, thin)},
		draw.Path{Runs: [][]draw.Point{{tip, {X: foot.X - wide*uy, Y: foot.Y + wide*ux}, {X: foot.X + wide*uy, Y: foot.Y - wide*ux}}}, Closed: true, Fill: draw.Black})
	return append(run, tip)
}
