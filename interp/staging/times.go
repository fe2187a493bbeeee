// The times of shots and of their scene.

package staging

import "pullscore/interp/plan"

// OfScene returns the time of the scene at a time of a shot that has its action, seconds.
func OfScene(s *plan.Shot, t float64) float64 { return t + float64(s.Staging.Covers[0]) }

// OfShot returns the time of a shot at a time of the scene; ok is false where the shot
// does not have the action of then.
func OfShot(s *plan.Shot, scene float64) (t float64, ok bool) {
	if s.Staging == nil || !s.Staging.Action {
		return 0, false
	}
	from, to := float64(s.Staging.Covers[0]), float64(s.Staging.Covers[1])
	return scene - from, scene >= from-slack && scene <= to+slack
}

// slack is how near to the end of what a shot covers a time may lie to be in it, seconds:
// times come from sums.
const slack = 1e-6

// Together reports whether two shots run at the same time: one with the other, or both
// with a third.
func Together(all []*plan.Shot, a, b *plan.Shot) bool { return a != b && lead(all, a) == lead(all, b) }

// lead returns the shot that one runs with in the end, itself where it runs with none.
func lead(all []*plan.Shot, s *plan.Shot) *plan.Shot {
	for range all { // a circle of them is told elsewhere
		if s.Staging == nil || s.Staging.RunsWith == "" {
			return s
		}
		next := byID(all, s.Staging.RunsWith)
		if next == nil {
			return s
		}
		s = next
	}
	return s
}

// byID returns the first shot of that ID; nil where there is none.
func byID(all []*plan.Shot, id string) *plan.Shot {
	for _, s := range all {
		if s.ID == id {
			return s
		}
	}
	return nil
}
