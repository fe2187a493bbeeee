// The legend at the foot of a difference.

package difference

import (
	"slices"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// hasChance reports whether a chance of landing may be written on a sheet.
func (df *differ) hasChance() bool {
	for _, sc := range df.sides {
		if sc != nil && slices.ContainsFunc(sc.Shot.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() || p.ChanceBand[0].Known() }) {
			return true
		}
	}
	return false
}

// drawLegend draws the legend of a sheet that is otherwise finished.
func (df *differ) drawLegend(sh *bands.Sheet, root *draw.Group) {
	var notes []string
	if df.hasChance() {
		notes = append(notes, sheet.ModelNoteShort)
	}
	sheet.DrawLegend(root, sh.Paper, notes...)
}
