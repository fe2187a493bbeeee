package shot

import (
	"pullscore/interp/kit"
	"pullscore/interp/plan"
)

// RingOf returns what is known of a lens's ring; nil for a lens that has none, or one by
// wire.
func RingOf(l *kit.Lens) *plan.Ring { return ringOf(l) }
