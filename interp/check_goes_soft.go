// goes-soft: whom the focus rests on moves out of it, and nothing follows.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkGoesSoft(b run) {
	for i := -1; i < len(b.pulls); i++ {
		until := float64(b.shot.Duration)
		if i+1 < len(b.pulls) {
			until = b.pulls[i+1].start
		}
		if i < 0 {
			if t, u := b.goesSoft(&b.start, 0, until); u != nil {
				f := softFinding(u, t)
				f.Range = b.start.at
				b.tell(f)
			}
			continue
		}
		p := b.pulls[i]
		if p.follow {
			continue
		}
		if t, u := b.goesSoft(&p.goal, p.land, until); u != nil {
			f := softFinding(u, t)
			if len(p.goal.members()) == 1 {
				f.tries = func() []try {
					return []try{{lang.Cure{Text: "follow " + lang.WriteName(u.Name) + " after it"}, change{
						Item: p.item + 2, Insert: &lang.Follow{Who: &lang.Name{Text: u.Name}},
					}}}
				}
			}
			b.tellPull(p, f)
		}
	}
}

func softFinding(u *subject, t float64) finding {
	return finding{Diagnostic: lang.Diagnostic{
		Code: "goes-soft", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("%s moves out of focus by %s, and nothing follows", u.Name, seconds(t)),
		Detail:  "Follow, or rack again once the move is over.",
		Figures: []lang.Figure{figure("time_s", t)},
	}}
}

// goesSoft finds the first moment between two times, at which a move starts or
// ends or the focus leaves, where one whom the focus rests on is not sharp any
// more, though the focus stands still.
func (b run) goesSoft(g *goal, from, until float64) (t float64, who *subject) {
	if !g.ok || g.soft() || from >= until {
		return 0, nil
	}
	for _, u := range g.members() {
		times := append(u.Along.Keys(), b.shot.Optics.Camera.Keys()...)
		for _, t := range sortedTimes(append(times, until)) {
			if t <= from || t > until {
				continue
			}
			d, set := b.shot.LensDistanceAt(u.Subject, t), b.shot.Setting(t)
			if b.shot.DistanceAt(u.Subject, t) != b.shot.DistanceAt(u.Subject, from) && set.Blur(d, b.restingAt(g, from, t)) > set.Criterion {
				return t, u
			}
		}
	}
	return 0, nil
}

// restingAt is the focus, from the lens at t, that was set on a goal earlier.
func (b run) restingAt(g *goal, set, t float64) float64 {
	return b.shot.Carried(b.lensDistance(g, set), set, t)
}
