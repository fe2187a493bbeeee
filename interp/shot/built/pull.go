// Pulls: the racks and follows of a shot, with the figures that only checks ask
// for.

package built

import (
	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// A Pull is a rack or a follow.
type Pull struct {
	Plan   *plan.Pull  // as drawings and lists have it
	Rack   *clock.Pull // where it goes, and when
	Before *clock.Pull // the one before it; nil is the shot's start
	Window [2]float64  // focus settings that keep the goal sharp, from the lens
	Landed hand.Landing
	LeftAt float64 // the one left at the landing, from the lens

	Moments []hand.Moment // of a follow
	Guesses []Guess       // where nothing is known of the ring
}

// pullsOf returns the pulls of racks and follows that are in the order of time.
func pullsOf(racks []*clock.Pull) []*Pull {
	pulls := make([]*Pull, len(racks))
	var before *clock.Pull
	for i, r := range racks {
		at, kind := r.Stmt.Range(), "rack"
		if r.Follow {
			kind = "follow"
		}
		pulls[i] = &Pull{Rack: r, Before: before, Plan: &plan.Pull{
			Number: i + 1, Kind: kind, File: at.File, Line: at.Start.Line, Column: at.Start.Column,
			Because: r.Because, Anchor: r.Anchor,
		}}
		before = r
	}
	return pulls
}
