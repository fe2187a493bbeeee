// The key at the foot of a difference.

package difference

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
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
		sheet.Entry("subject", 7, bands.KeySubject))
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
		entries = append(entries, sheet.Entry("re-grip", 6, bands.KeyGrip))
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
	bands.Badge(g, x+bands.BadgeSize, y, 1)
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
			drawBracket(g, side, x+2.4, y-1.3, y+1.3, true, true)
		}
	}
}
