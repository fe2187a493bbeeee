// goes-soft: whom the focus rests on moves out of it, and nothing follows.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkGoesSoft(b Run) {
	for i := -1; i < len(b.Pulls); i++ {
		until := float64(b.Shot.Duration)
		if i+1 < len(b.Pulls) {
			until = b.Pulls[i+1].StartS
		}
		if i < 0 {
			if t, u := b.goesSoft(&b.Start, 0, until); u != nil {
				f := softFinding(u, t)
				f.Range = b.Start.At
				b.Tell(f)
			}
			continue
		}
		p := b.Pulls[i]
		if p.Follow {
			continue
		}
		if t, u := b.goesSoft(&p.Aim, p.LandS, until); u != nil {
			f := softFinding(u, t)
			if len(p.Aim.Members()) == 1 {
				f.Tries = func() []change.Change {
					return []change.Change{edited(change.Edit{Kind: change.Follow, Item: p.Item + 1, Who: u.Name})}
				}
			}
			b.tellPull(p, f)
		}
	}
}

func softFinding(u *stage.Subject, t float64) shot.Finding {
	return shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "goes-soft", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("%s moves out of focus by %s, and nothing follows", u.Name, inwords.Seconds(t)),
		Detail:  "Follow, or rack again once the move is over.",
		Figures: []lang.Figure{shot.Figure("time_s", t)},
	}}
}

// goesSoft finds the first moment between two times, at which a move starts or
// ends or the focus leaves, where one whom the focus rests on is not sharp any
// more, though the focus stands still.
func (b Run) goesSoft(g *stage.Goal, from, until float64) (t float64, who *stage.Subject) {
	if !g.Ok || g.Soft() || from >= until {
		return 0, nil
	}
	for _, u := range g.Members() {
		times := append(u.Along.Keys(), b.Shot.Optics.Camera.Keys()...)
		for _, t := range shot.SortedTimes(append(times, until)) {
			if t <= from || t > until {
				continue
			}
			d, set := b.Shot.LensDistanceAt(u.Subject, t), b.Shot.Setting(t)
			if b.Shot.DistanceAt(u.Subject, t) != b.Shot.DistanceAt(u.Subject, from) && set.Blur(d, b.restingAt(g, from, t)) > set.Criterion {
				return t, u
			}
		}
	}
	return 0, nil
}

// restingAt is the focus, from the lens at t, that was set on a goal earlier.
func (b Run) restingAt(g *stage.Goal, set, t float64) float64 {
	return b.Shot.Carried(b.LensDistance(g, set), set, t)
}
