// The line of signs at the foot.

package bands

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// keyLeast is the gap between entries under which texts are shortened.
const keyLeast = 2.5

// DrawKeyOf draws a key of these entries, with a word on chances where there
// are any; the entries move together where the page is narrow.
func (sh *Leaf) DrawKeyOf(g *draw.Group, entries []sheet.KeyEntry, chances bool) {
	base := sh.Paper.H - sheet.Edge - 1.2
	g.Line(sheet.Margin, base-4.6, sh.Paper.W-sheet.Margin, base-4.6, sheet.Solid(draw.Pale, sheet.Hair))
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
func (sh *Leaf) keyGaps(entries []sheet.KeyEntry) float64 {
	free := sh.Paper.W - 2*sheet.Margin
	for _, e := range entries {
		free -= e.Width + sheet.KeyText + sheet.FontSmall.Width(e.Text)
	}
	return min(sheet.KeyGap, free/float64(len(entries)-1))
}

// HasChance tells whether the sheet shows a chance of landing.
func (sh *Leaf) HasChance() bool {
	return slices.ContainsFunc(sh.Shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() || p.ChanceBand[0].Known() })
}

// KeySubject draws the sign of a subject at (x, y): as thick as it is deep.
func KeySubject(g *draw.Group, x, y float64) {
	g.Add(draw.Rect{Box: draw.Box{X: x, Y: y - 0.8, W: 7, H: 1.6}, Fill: draw.Pale})
	g.Line(x, y, x+7, y, sheet.Solid(draw.Mid, sheet.Hair))
}

// KeyGrip draws the sign of a re-grip at (x, y).
func KeyGrip(g *draw.Group, x, y float64) {
	g.Line(x, y, x+2, y, sheet.Solid(draw.Black, sheet.Heavy))
	g.Line(x+4, y, x+6, y, sheet.Solid(draw.Black, sheet.Heavy))
	GripEnds(g, draw.Point{X: x + 2, Y: y}, draw.Point{X: x + 4, Y: y})
}
