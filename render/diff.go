// The difference of a shot: its scores in two states of a plan, laid over one
// another. What was is thin, dashed and hollow, what is now is drawn as in a
// score, and what changed is heavier than what did not.

package render

import "pullscore/interp/plan"

// A Difference is a shot in two states of a plan, and what changed for the
// crew.
type Difference struct {
	Names         [2]string    // what to call the states: two paths, or a revision and a path
	Before, After *plan.Shot   // nil: the shot came, or it is gone; never both
	Pulls         []PullChange // the pulls of both in their order, those unchanged too
	Notes         []string     // what changed besides pulls, as phrases: "stop f/4 -> f/2.8"
}

// A PullChange is a pull in the two states.
type PullChange struct {
	Before, After *plan.Pull // nil: the pull came, or it is gone; never both
	Text          string     // what changed, as a phrase; empty: nothing
}
