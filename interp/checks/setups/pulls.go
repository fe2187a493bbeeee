// two-pulls: one puller has two pulls at once, with cameras that run together.

package setups

import (
	"fmt"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/lang"
)

func twoPulls(sc *scene) (told []lang.Diagnostic) {
	for j, s := range sc.shots {
		for _, earlier := range sc.shots[:j] {
			if s.Puller == "" || s.Puller != earlier.Puller || !staging.Together(sc.shots, s, earlier) {
				continue
			}
			if list := atOnce(s, earlier); len(list) > 0 {
				told = append(told, sc.pulling(s, earlier, list))
			}
		}
	}
	return told
}

// Both are two pulls that overlap, and from when to when: seconds of the first one's shot.
type both struct {
	mine, theirs *plan.Pull
	from, to     float64
}

// atOnce returns the pulls of two shots that overlap.
func atOnce(s, earlier *plan.Shot) (list []both) {
	ahead := 0.0
	if s.Staging.Action && earlier.Staging.Action {
		ahead = float64(s.Staging.Covers[0] - earlier.Staging.Covers[0])
	}
	for _, p := range s.Pulls {
		for _, q := range earlier.Pulls {
			from := max(float64(p.Start), float64(q.Start)-ahead)
			to := min(float64(p.Land), float64(q.Land)-ahead)
			if to-from > 1e-6 {
				list = append(list, both{p, q, from, to})
			}
		}
	}
	return list
}

// pulling tells of two pulls at once.
func (sc *scene) pulling(s, earlier *plan.Shot, list []both) lang.Diagnostic {
	first := list[0]
	detail := "Name a second puller, or let one of them wait."
	if n := len(list) - 1; n > 0 {
		detail = fmt.Sprintf("So it is %s. %s", times(n), detail)
	}
	at := sc.line(s, first.mine.Line)
	return lang.Diagnostic{
		Code: "two-pulls", Shot: s.ID, Pull: first.mine.Number, Range: at, Time: first.from,
		Message: fmt.Sprintf("%s pulls %s %d of %s and %s %d of %s at once", s.Puller,
			first.theirs.Kind, first.theirs.Number, earlier.ID, first.mine.Kind, first.mine.Number, s.ID),
		Detail:  detail,
		Figures: []lang.Figure{figure("overlap_s", first.to-first.from)},
		Related: []lang.Related{{Message: fmt.Sprintf("%s %d of %s", first.theirs.Kind, first.theirs.Number, earlier.ID), Range: sc.line(earlier, first.theirs.Line)}},
	}
}
