// What the cut shows of the pulls of a shot.

package shot

import "slices"

// fillInCut says of every pull what the cut shows of it, if a list has the shot, and
// which takes the cut uses.
func (b *Built) fillInCut() {
	sh := b.Plan
	if len(sh.Pieces) == 0 {
		return
	}
	for _, p := range b.Pulls {
		p.Plan.InCut = sh.InCut(p.Rack.StartS, p.Rack.LandS, b.Clock.PullCutOut(p.Rack))
	}
	for i := range sh.Pieces {
		if take := sh.Pieces[i].Take; take != "" && !slices.Contains(sh.TakesUsed, take) {
			sh.TakesUsed = append(sh.TakesUsed, take)
		}
	}
}
