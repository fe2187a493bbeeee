// What a legend says besides its signs.

package score

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// drawLegend draws the legend of a sheet that is otherwise finished, with a word on
// chances where there are any.
func drawLegend(sh *bands.Sheet, root *draw.Group) {
	sheet.DrawLegend(root, sh.Paper, notesOf(sh)...)
}

// notesOf returns what the legend of a sheet says besides its signs.
func notesOf(sh *bands.Sheet) (notes []string) {
	if hasChance(sh.Shot) {
		notes = append(notes, sheet.ModelNoteShort)
	}
	return notes
}

// hasChance tells whether a shot has a chance of landing.
func hasChance(s *plan.Shot) bool {
	return slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() || p.ChanceBand[0].Known() })
}
