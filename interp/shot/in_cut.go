// What the cut shows of a shot: of its pulls, lines and cues.

package shot

import (
	"slices"

	"pullscore/interp/plan"
)

// fillInCut says of every pull, line and cue what the cut shows of it, if a list has
// the shot.
func (b *Built) fillInCut() {
	sh := b.Plan
	if len(sh.Pieces) == 0 {
		return
	}
	shows := func(start, end plan.Number) *plan.InCut { return sh.InCut(float64(start), float64(end), false) }
	for _, p := range sh.Pulls {
		p.InCut = shows(p.Start, p.Land)
	}
	for i := range sh.Lines {
		sh.Lines[i].InCut = shows(sh.Lines[i].Start, sh.Lines[i].End)
	}
	for i := range sh.Cues {
		sh.Cues[i].InCut = shows(sh.Cues[i].T, sh.Cues[i].T)
	}
	for i := range sh.Pieces {
		if take := sh.Pieces[i].Take; take != "" && !slices.Contains(sh.TakesUsed, take) {
			sh.TakesUsed = append(sh.TakesUsed, take)
		}
	}
}
