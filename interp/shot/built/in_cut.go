// What the cut shows of the pulls of a shot.

package built

import (
	"pullscore/interp/away"
	"pullscore/interp/cut"
)

// fillInCut says of every pull what the cut shows of it, if a list has the shot, and
// which takes the cut uses.
func (b *Shot) fillInCut() {
	sh := b.Plan
	if len(sh.Pieces) == 0 {
		return
	}
	for _, p := range b.Pulls {
		p.Plan.InCut = sh.InCut(p.Rack.StartS, p.Rack.LandS, away.CutOut(b.Clock, p.Rack))
	}
	sh.TakesUsed = cut.Takes(sh.Pieces)
}
