// The key at the foot of a difference.

package difference

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// hasChance tells whether a chance of landing may be written on a sheet.
func (df *differ) hasChance() bool {
	for _, sc := range df.sides {
		if sc != nil && slices.ContainsFunc(sc.Shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() || p.ChanceBand[0].Known() }) {
			return true
		}
	}
	return false
}

// key returns the signs of a difference.
func (df *differ) key() []sheet.KeyEntry {
	entries := []sheet.KeyEntry{sheet.Entry("move of the focus", 2*bands.BadgeSize, df.keyNumber)}
	if slices.ContainsFunc(df.changes(), func(c *PullChange) bool { return c.Before != nil && c.After != nil }) {
		entries = append(entries, sheet.Entry("landing, before and after", 9, keyShift))
	}
	if df.verdict() == "" {
		entries = append(entries, sheet.Entry("heavier: changed", 8, keyHeavier))
	}
	entries = append(entries, df.keyFates()...)
	entries = append(entries,
		sheet.Entry("focus, sharp zone", 7, sheet.KeyZone),
		sheet.Entry("subject", 7, keySubject))
	if df.verdict() == "" {
		entries = append(entries, sheet.Entry("where it was", 7, func(g *draw.Group, x, y float64) {
			g.Line(x, y-0.8, x+7, y-0.8, beforeThin)
			g.Line(x, y+0.8, x+7, y+0.8, beforeThin)
		}))
	}
	if slices.ContainsFunc(df.sides[:], func(sc *bands.Chart) bool { return sc != nil && sc.Shot.Optics.Ring != nil }) {
		entries = append(entries, sheet.Entry("window to land in", 5, df.keyWindow))
	}
	if df.After != nil && slices.ContainsFunc(df.After.Pulls, func(p *plan.Pull) bool { return len(p.Grips) > 0 }) {
		entries = append(entries, sheet.Entry("re-grip", 6, keyGrip))
	}
	return entries
}

// keyFates returns the signs of pulls that are gone or new, where there are any.
func (df *differ) keyFates() []sheet.KeyEntry {
	var entries []sheet.KeyEntry
	for side, text := range []string{"gone", "new"} {
		if df.both() && slices.ContainsFunc(df.Pulls, func(c PullChange) bool { return c.states()[1-side] == nil }) {
			entries = append(entries, sheet.Entry(text, 2.2, func(g *draw.Group, x, y float64) { fate(g, x+1.1, y, side) }))
		}
	}
	return entries
}

func (df *differ) keyNumber(g *draw.Group, x, y float64) {
	if df.After == nil {
		hollowBadge(g, x+bands.BadgeSize, y, 1)
		return
	}
	signs.DrawRack(g, x+bands.BadgeSize, y, 1)
}

func keyShift(g *draw.Group, x, y float64) {
	from, to := draw.Point{X: x + 1, Y: y}, draw.Point{X: x + 8, Y: y}
	shift(g, from, to, 0)
	landing(g, from, before)
	landing(g, to, after)
}

func keyHeavier(g *draw.Group, x, y float64) {
	g.Line(x, y, x+4, y, afterHand)
	g.Line(x+4, y, x+8, y, sheet.Solid(draw.Black, accent))
}

func (df *differ) keyWindow(g *draw.Group, x, y float64) {
	for side, sc := range df.sides {
		if sc != nil {
			drawWindow(g, side, x+2.4, bands.Landing{Upper: y - 1.3, Lower: y + 1.3})
		}
	}
}

// keyLeast is the gap between entries under which texts are shortened.
const keyLeast = 2.5

// drawKeyOf draws a key of these entries, with a word on chances where there
// are any; the entries move together where the page is narrow.
func drawKeyOf(sh *bands.Sheet, g *draw.Group, entries []sheet.KeyEntry, chances bool) {
	base := sh.Paper.H - sheet.Edge - 1.2
	g.Line(sheet.Margin, base-4.6, sh.Paper.W-sheet.Margin, base-4.6, sheet.Solid(draw.Pale, sheet.Hair))
	gap := keyGaps(sh, entries)
	if chances {
		entries = append(entries, sheet.KeyEntry{Text: sheet.ModelNote, Draw: sheet.NoSign})
		if gap = keyGaps(sh, entries); gap < keyLeast {
			entries[len(entries)-1].Text = sheet.ModelNoteShort
			gap = keyGaps(sh, entries)
		}
	}
	x := sheet.Margin
	for _, e := range entries {
		e.Draw(g, x, base-sheet.FontSmall.Middle())
		text := draw.NewText(x+e.Width+sheet.KeyText, base, e.Text, sheet.FontSmall, draw.Grey)
		g.Add(text)
		x = text.Box().Right() + gap
	}
}

// keyGaps returns the space between entries that fill the line.
func keyGaps(sh *bands.Sheet, entries []sheet.KeyEntry) float64 {
	free := sh.Paper.W - 2*sheet.Margin
	for _, e := range entries {
		free -= e.Width + sheet.KeyText + sheet.FontSmall.Width(e.Text)
	}
	return min(sheet.KeyGap, free/float64(len(entries)-1))
}

// keySubject draws the sign of a subject at (x, y): as thick as it is deep.
func keySubject(g *draw.Group, x, y float64) {
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 0.8, W: 7, H: 1.6}, Fill: draw.Pale})
	g.Line(x, y, x+7, y, sheet.Solid(draw.Mid, sheet.Hair))
}

// keyGrip draws the sign of a re-grip at (x, y).
func keyGrip(g *draw.Group, x, y float64) {
	g.Line(x, y, x+1.6, y, draw.Solid(draw.Black, draw.HandWidth))
	g.Line(x+4.4, y, x+6, y, draw.Solid(draw.Black, draw.HandWidth))
	signs.DrawRegrip(g, draw.Point{X: x + 1.6, Y: y}, draw.Point{X: x + 4.4, Y: y})
}
