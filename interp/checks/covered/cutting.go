// Which set-up the cut shows when.

package covered

import (
	"cmp"
	"math"
	"slices"

	"pullscore/interp/coverage"
	"pullscore/interp/plan"
)

// A cut is a cut of a scene, with what it shows until the next one.
type cut struct {
	plan.SceneCut
	until float64
	setup int // the index of the set-up; -1: it is none of the scene
}

// cutsOf returns the cuts of a scene in the order of time.
func cutsOf(sc *coverage.Scene) []cut {
	list := make([]cut, len(sc.Staged.Cuts))
	for i, c := range sc.Staged.Cuts {
		list[i] = cut{c, math.Inf(1), slices.IndexFunc(sc.Shots, func(s *plan.Shot) bool { return s.ID == c.To })}
	}
	slices.SortStableFunc(list, func(a, b cut) int { return cmp.Compare(a.T, b.T) })
	for i := range list[:max(0, len(list)-1)] {
		list[i].until = float64(list[i+1].T)
	}
	return list
}

// shownAt returns the cut whose set-up is on the screen at a time of the scene; nil before
// the first, as nobody says what it shows then.
func shownAt(cuts []cut, t float64) *cut {
	for i := len(cuts) - 1; i >= 0; i-- {
		if float64(cuts[i].T) <= t+noTime {
			return &cuts[i]
		}
	}
	return nil
}

// noTime is a time of which only the error of the computation is left, seconds.
const noTime = 1e-9

// inShot returns a time of the scene in the time of a shot; ok is false where the shot
// does not cover it.
func inShot(s *plan.Shot, t float64) (at float64, ok bool) {
	at = t - float64(s.Covers[0])
	end := min(float64(s.Duration), float64(s.Covers[1]-s.Covers[0]))
	return min(max(at, 0), end), at >= -noTime && at <= end+noTime
}
