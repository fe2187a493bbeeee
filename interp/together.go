// Trying the cures of a shot together.

package interp

import "pullscore/interp/plan"

// TryTogether tries the cures that are printed of each shot together, and tells the shots
// what is left then. It builds a shot for every cure and step, so only what shows that
// asks for it.
func (r *Result) TryTogether(shots []*plan.Shot) {
	for _, s := range shots {
		if t := r.program.together[s]; t != nil {
			s.Together = t.Steps(s)
		}
	}
}
