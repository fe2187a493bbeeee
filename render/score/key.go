// The key at the foot of a score: every sign that the shot uses, in one line.

package score

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// keyLeast is the gap between entries under which texts are shortened.
const keyLeast = 2.5

// drawKey draws the key of a score.
func (sh *leaf) drawKey(g *draw.Group) { sh.drawKeyOf(g, sh.key(), sh.hasChance()) }

// drawKeyOf draws a key of these entries, with a word on chances where there
// are any; the entries move together where the page is narrow.
func (sh *leaf) drawKeyOf(g *draw.Group, entries []sheet.KeyEntry, chances bool) {
	base := sh.paper.H - sheet.Edge - 1.2
	g.Line(sheet.Margin, base-4.6, sh.paper.W-sheet.Margin, base-4.6, sheet.Solid(draw.Pale, sheet.Hair))
	gap := sh.keyGaps(entries)
	if chances {
		entries = append(entries, sheet.KeyEntry{Text: sheet.ModelNote, Draw: sheet.NoSign})
		if gap = sh.keyGaps(entries); gap < keyLeast {
			entries[len(entries)-1].Text = sheet.ModelNoteShort
			gap = sh.keyGaps(entries)
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
func (sh *leaf) keyGaps(entries []sheet.KeyEntry) float64 {
	free := sh.paper.W - 2*sheet.Margin
	for _, e := range entries {
		free -= e.Width + sheet.KeyText + sheet.FontSmall.Width(e.Text)
	}
	return min(sheet.KeyGap, free/float64(len(entries)-1))
}

// hasChance tells whether the sheet shows a chance of landing.
func (sh *leaf) hasChance() bool {
	return slices.ContainsFunc(sh.shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() || p.ChanceBand[0].Known() })
}

// key returns the entries for the shot.
func (sh *leaf) key() []sheet.KeyEntry {
	s := sh.shot
	entries := []sheet.KeyEntry{
		sheet.Entry("move of the focus", 2*badgeSize, func(g *draw.Group, x, y float64) { badge(g, x+badgeSize, y, 1) }),
		sheet.Entry("focus, sharp zone", 7, sheet.KeyZone),
		sheet.Entry("subject, as deep as it is", 7, keySubject),
		sheet.Entry("sharp, then softer", 9, keyBar),
	}
	if s.Optics.Ring != nil {
		entries = append(entries, sheet.Entry("window to land in", 1.6, func(g *draw.Group, x, y float64) { bracket(g, x+1.3, y-1.3, y+1.3, true, true) }))
	}
	if slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return len(p.Grips) > 0 }) {
		entries = append(entries, sheet.Entry("re-grip", 6, keyGrip))
	}
	for _, severity := range []string{"error", "warning", "note"} {
		if slices.ContainsFunc(s.Flags, func(f plan.Flag) bool { return f.Severity == severity }) {
			entries = append(entries, sheet.Entry(severity, flagWidth(1), func(g *draw.Group, x, y float64) { pennant(g, x, y-flagHeight/2, severity, "1") }))
		}
	}
	return append(entries, sheet.Entry("cue of a move", 4.5, func(g *draw.Group, x, y float64) { g.Line(x, y, x+4.5, y, plumbStroke) }))
}

func keySubject(g *draw.Group, x, y float64) {
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 0.8, W: 7, H: 1.6}, Fill: draw.Pale})
	g.Line(x, y, x+7, y, sheet.Solid(draw.Mid, sheet.Hair))
}

// keyBar is a bar that goes soft.
func keyBar(g *draw.Group, x, y float64) {
	const half = 1.2
	g.Line(x, y, x+9, y, sheet.Solid(draw.Mid, sheet.Hair))
	taper := func(from, to, a, b float64) [][]draw.Point {
		return [][]draw.Point{{{X: x + from, Y: y - a}, {X: x + to, Y: y - b}, {X: x + to, Y: y + b}, {X: x + from, Y: y + a}}}
	}
	g.Add(draw.Path{Runs: taper(5.5, 9, half/1.5, 0.1), Closed: true, Fill: draw.Pale},
		draw.Path{Runs: taper(4, 5.5, half, half/1.5), Closed: true, Fill: draw.Mid},
		draw.Path{Runs: taper(0, 4, half, half), Closed: true, Fill: draw.Black})
}

func keyGrip(g *draw.Group, x, y float64) {
	g.Line(x, y, x+2, y, sheet.Solid(draw.Black, sheet.Heavy))
	g.Line(x+4, y, x+6, y, sheet.Solid(draw.Black, sheet.Heavy))
	gripEnds(g, draw.Point{X: x + 2, Y: y}, draw.Point{X: x + 4, Y: y})
}
