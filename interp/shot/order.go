// The racks and follows of a shot in the order of time.

package shot

import (
	"pullscore/interp/away"
	"pullscore/interp/clock"
)

// inOrder returns the racks and follows in the order of time. Those whose length
// is the shortest are timed anew where that is not the order written.
func (b *builder) inOrder(out *Built) []*clock.Pull {
	racks := away.InPlace(out.Clock, out.Clock.Ordered())
	for range 2 {
		changed := false
		var before *clock.Pull
		for _, r := range racks {
			if r.ByDefault && before != r.WrittenBefore() {
				old := r.StartS
				long := out.Shortest(r, before, r.StartS, r.LandS)
				if r.Landing != nil {
					r.StartS = r.LandS - long
				} else {
					r.LandS = r.StartS + long
				}
				changed = changed || r.StartS != old
			}
			before = r
		}
		if !changed {
			break
		}
		racks = away.InPlace(out.Clock, out.Clock.Ordered())
	}
	return racks
}

// endFollows ends every follow at its `until`, at the next rack or with the
// shot, whichever comes first.
func endFollows(racks []*clock.Pull, end float64) {
	for i, r := range racks {
		if !r.Follow {
			continue
		}
		until := end
		if i+1 < len(racks) {
			until = racks[i+1].StartS
		}
		r.LandS = max(r.StartS, min(r.LandS, until))
	}
}
