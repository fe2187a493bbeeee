// A row of words, with a bar below it for each set-up.

package coverage

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/coverage"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// The heights of a row, in millimetres.
const (
	wordHeight = 5.2
	setupPitch = 3.7
	barBase    = 3.2 // of a bar, from the top of its row
	blockAir   = 3.4 // below the bars
)

// manySetups is up to how many set-ups a scene shows all of them at each line; else a line
// shows those that have it.
const manySetups = 5

// most is how many set-ups stand below one row of words; the others follow below the same
// words once more.
const most = 18

// barsFully is the chance from which a bar has its full height.
const barsFully = 0.985

// line draws a line of the scene.
func (f *flow) line(sc *coverage.Scene, l *coverage.Line) {
	setups := setupsOf(sc, l)
	for i, row := range rows(l, wordsFrom, f.right()) {
		shown := setups
		if len(setups) > manySetups {
			shown = having(setups, row)
		}
		if len(shown) == 0 { // words that only sound
			shown = setups[:min(1, len(setups))]
		}
		if len(shown) == 0 { // a staged scene that nobody shoots
			f.block(sc, l, row, nil, i == 0)
		}
		for part := range slices.Chunk(shown, most) {
			f.block(sc, l, row, part, i == 0)
		}
	}
}

// setupsOf returns the set-ups that a line shows.
func setupsOf(sc *coverage.Scene, l *coverage.Line) (list []int) {
	for i := range sc.Setups {
		if len(sc.Setups) <= manySetups || l.Has(i) {
			list = append(list, i)
		}
	}
	return list
}

// having returns the set-ups that have any word of a row.
func having(setups []int, row []placed) (list []int) {
	for _, k := range setups {
		if slices.ContainsFunc(row, func(p placed) bool { _, ok := p.word.Cell(k); return ok }) {
			list = append(list, k)
		}
	}
	return list
}

// block draws a row of words and the bars of some set-ups.
func (f *flow) block(sc *coverage.Scene, l *coverage.Line, row []placed, setups []int, first bool) {
	flags := flagsOf(sc, row)
	high := wordHeight + setupPitch*float64(len(setups))
	if len(flags) > 0 {
		high += flagStrip
	}
	g, y := f.Take(high+blockAir, "line")
	g.Number = l.Number
	base := y + wordHeight - 1.4
	number := draw.NewText(sheet.Margin, base, strconv.Itoa(l.Number), fontNumber, draw.Grey)
	name := l.Who
	if l.Off {
		name += " (off)"
	}
	who := draw.NewText(headsEnd, base, name, sheet.FontMark, draw.Black).Aligned(draw.End).Shortened((headsEnd - number.Room().Right() - 1.6))
	if !first {
		who = draw.NewText(headsEnd, base, "…", sheet.FontMark, draw.Grey).Aligned(draw.End)
	}
	g.Add(number, who)
	words := g.Group("words")
	for _, p := range row {
		words.Add(draw.NewText(p.x1, base, p.text, fontWord, draw.Black))
	}
	for i, k := range setups {
		bars := g.Group("set-up")
		bars.Title = sc.Setups[k].Shot
		foot := y + wordHeight + setupPitch*float64(i) + barBase
		id := draw.NewText(headsEnd, foot-signs.BarHeight/2+fontSetup.Middle(), sc.Setups[k].Shot, fontSetup, draw.Grey)
		bars.Add(id.Aligned(draw.End).Shortened((headsEnd - sheet.Margin)))
		drawSetup(bars, sc, l, row, k, foot)
	}
	drawFlags(g, flags, y+wordHeight+setupPitch*float64(len(setups))+flagAir)
}

// drawSetup draws the bars of a set-up below a row of words, and the racks that land in
// it.
func drawSetup(g *draw.Group, sc *coverage.Scene, l *coverage.Line, row []placed, setup int, foot float64) {
	names := sheet.Names(sc.Shots[setup])
	discs := discsOf(row, setup)
	for i := 0; i < len(row); {
		c, has := row[i].word.Cell(setup)
		end := i + 1
		for end < len(row) && goesOn(c, has, row[end].word, setup) {
			end++
		}
		x1, x2 := row[i].x1, row[end-1].x2
		if has {
			drawBar(g, l, c, names, bar{x1, x2, foot, behind(discs, x1, x2)})
			if c.Shown() {
				signs.DrawShown(g, before(discs, x1)-shownAir, foot)
			}
		} else if sc.Staged == nil {
			signs.DrawWithout(g, x1, x2, foot)
		}
		i = end
	}
	for _, d := range discs { // over the bars
		signs.DrawRack(g, d.x, foot-signs.BarHeight/2, d.number)
	}
}

// A bar is where a bar is: from x1 to x2, standing on foot. The name in it has to stand
// so far behind its start.
type bar struct{ x1, x2, foot, after float64 }

// A disc is that of a rack where it lands.
type disc struct {
	x      float64
	number int
}

const (
	discAir   = 0.3 // between discs
	nameAfter = 0.7 // of a name behind a disc
	shownAir  = 0.8 // of the middle of a heavy bar before what the cut shows
	aside     = 9.0 // how far a disc stands aside of its word at most
)

// discsOf returns the discs of the racks that land in a row, in order. Where several land
// close by, each stands beside the one before it; one that finds no place so near its word
// is left out.
func discsOf(row []placed, setup int) (discs []disc) {
	free := math.Inf(-1)
	for i := range row {
		c, ok := row[i].word.Cell(setup)
		if !ok {
			continue
		}
		for _, number := range c.Lands {
			radius := signs.DiscRadius(number)
			x := max(row[i].x1, free+radius)
			if x-row[i].x1 > aside || x > row[len(row)-1].x2 {
				continue
			}
			discs = append(discs, disc{x, number})
			free = x + radius + discAir
		}
	}
	return discs
}

// behind returns how far behind the start of a bar its name stands clear of all discs.
func behind(discs []disc, x1, x2 float64) float64 {
	after := 0.0
	for _, d := range discs {
		radius := signs.DiscRadius(d.number)
		if d.x+radius > x1 && d.x-radius < x2 {
			after = max(after, d.x+radius+nameAfter-x1)
		}
	}
	return after
}

// before returns where a bar that starts at x begins with the disc that may stand there.
func before(discs []disc, x float64) float64 {
	left := x
	for _, d := range discs {
		if radius := signs.DiscRadius(d.number); d.x-radius < x && d.x+radius > x {
			left = min(left, d.x-radius)
		}
	}
	return left
}

// goesOn reports whether a bar goes on with the next word: no rack lands there, and it
// looks the same.
func goesOn(c *coverage.Cell, has bool, next *coverage.Word, setup int) bool {
	n, ok := next.Cell(setup)
	if !has || !ok {
		return has == ok
	}
	return len(n.Lands) == 0 && c.Shown() == n.Shown() && lookOf(c) == lookOf(n)
}

// A look is all that a bar shows of a cell.
type look struct {
	kind    string // the name of its sign
	others  string
	percent float64 // of the chance, whole
}

// lookOf returns how a cell looks.
func lookOf(c *coverage.Cell) look {
	others := strings.Join(c.Others, ", ")
	switch {
	case c.Focus == coverage.Voice:
		return look{kind: signs.Other, others: others}
	case c.Frame == coverage.Out:
		return look{kind: signs.Out, others: others}
	case c.Frame == coverage.Blocked:
		return look{kind: signs.Blocked, others: others}
	case c.Focus == coverage.Faint, c.Held && c.Frame == coverage.Edge:
		return look{kind: signs.Hardly}
	case c.Focus == coverage.Sharp && !c.Chance.Known():
		return look{kind: signs.NoChance}
	case c.Focus == coverage.Sharp && c.Chance < barsFully:
		return look{kind: signs.Chance, percent: math.Round(100 * float64(c.Chance))}
	case c.Focus == coverage.Sharp:
		return look{kind: signs.Speaker}
	}
	return look{kind: signs.Other, others: others}
}

// drawBar draws one bar.
func drawBar(g *draw.Group, l *coverage.Line, c *coverage.Cell, order []string, b bar) {
	name := signs.Name{Text: strings.Join(sorted(c.Others, order), ", "), After: b.after}
	switch lookOf(c).kind {
	case signs.Speaker:
		name.Text = l.Who
		signs.DrawSpeaker(g, b.x1, b.x2, b.foot, name)
	case signs.Chance:
		name.Text = chances.Chance(float64(c.Chance), 1)
		signs.DrawLikely(g, b.x1, b.x2, b.foot, float64(c.Chance), name)
	case signs.NoChance:
		signs.DrawNoChance(g, b.x1, b.x2, b.foot)
	case signs.Hardly:
		signs.DrawHardly(g, b.x1, b.x2, b.foot)
	case signs.Blocked:
		signs.DrawBlocked(g, b.x1, b.x2, b.foot, name)
	case signs.Out:
		signs.DrawOutside(g, b.x1, b.x2, b.foot, name)
	default:
		signs.DrawOther(g, b.x1, b.x2, b.foot, name)
	}
}

// chances is the style of chances.
var chances = units.ForTable(false)

// sorted returns names in the order of all papers.
func sorted(names, order []string) []string {
	list := slices.Clone(names)
	slices.SortStableFunc(list, func(a, b string) int { return slices.Index(order, a) - slices.Index(order, b) })
	return list
}
