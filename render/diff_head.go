// What stands round the bands of a difference: the title, what the two states
// are called, and the key.

package render

import (
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
	df.drawEnds(sh, root.Group("ends"))
	sh.plumbs = root.Group("plumb-lines")
	sh.drawRuler(root.Group("ruler"))
	sh.drawKeyOf(root.Group("key"), df.key(sh), df.hasChance())
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
		}
		text := draw.NewText(x+stateSign, headBase+headPitch, label, fontBody, draw.Grey)
		name := draw.NewText(text.Box().Right()+1, text.At.Y, df.Names[side], fontStrong, draw.Black)
		name = shortenedFront(name, x+room/2-8-name.At.X)
		if df.sides[side] != nil {
			drawState(names, x, text.At.Y-fontBody.Middle(), side)
		}
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

// drawEnds draws where the shorter shot ends, through all bands.
func (df *differ) drawEnds(sh *sheet, g *draw.Group) {
	top, bottom := sh.span()
	for side, s := range df.shots() {
		if s == nil || !df.both() {
			continue
		}
		if t := lasting(s); sh.window.holds(t) && t < sh.windows[len(sh.windows)-1].to {
			stroke := solid(draw.Black, thin)
			if side == before {
				stroke = beforeThin
			}
			g.Line(sh.window.x(t), top, sh.window.x(t), bottom, stroke)
		}
	}
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
func (df *differ) key(sh *sheet) []keyEntry {
	entries := []keyEntry{
		{"move of the focus", 2 * badgeSize, func(g *draw.Group, x, y float64) { badge(g, x+badgeSize, y, 1) }},
	}
	if df.both() {
		entries = append(entries, keyEntry{"landing, before and after", 9, func(g *draw.Group, x, y float64) {
			shift(g, draw.Point{X: x + 1, Y: y}, draw.Point{X: x + 8, Y: y})
			landing(g, draw.Point{X: x + 1, Y: y}, before)
			landing(g, draw.Point{X: x + 8, Y: y}, after)
		}})
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
		keyEntry{"subject, as deep as it is", 7, keySubject})
	if sh.shot.Optics.Ring != nil {
		entries = append(entries, keyEntry{"window to land in", 5, func(g *draw.Group, x, y float64) {
			if df.sides[before] != nil {
				drawBracket(g, before, x+1.6, y-1.3, y+1.3, true, true)
			}
			if df.sides[after] != nil {
				drawBracket(g, after, x+1.6, y-1.3, y+1.3, true, true)
			}
		}})
	}
	return entries
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

// shift joins an old landing to its new one by an arrow.
func shift(g *draw.Group, from, to draw.Point) {
	const disc, head, wide = 1.3, 1.5, 0.6
	_, d := nearest(from, draw.Box{X: to.X, Y: to.Y})
	if d < 2*disc+head {
		return
	}
	ux, uy := (to.X-from.X)/d, (to.Y-from.Y)/d
	tip := draw.Point{X: to.X - disc*ux, Y: to.Y - disc*uy}
	foot := draw.Point{X: tip.X - head*ux, Y: tip.Y - head*uy}
	g.Line(from.X+disc*ux, from.Y+disc*uy, foot.X, foot.Y, solid(draw.Black, thin))
	g.Add(draw.Path{Runs: [][]draw.Point{{tip, {X: foot.X - wide*uy, Y: foot.Y + wide*ux}, {X: foot.X + wide*uy, Y: foot.Y - wide*ux}}}, Closed: true, Fill: draw.Black})
}
