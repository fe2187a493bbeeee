// goes-soft: whom the focus rests on moves out of it, and nothing follows.

package checks

import (
	"fmt"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var goesSoft = Check{Codes: []rule.Code{rule.GoesSoft}, Run: movesOut}

func movesOut(b *Shot) (found []Finding) {
	changes := map[*stage.Subject][]float64{}
	for i := -1; i < len(b.Pulls); i++ {
		until := float64(b.Plan.Duration)
		if i+1 < len(b.Pulls) {
			until = b.Pulls[i+1].Rack.StartS
		}
		if i < 0 {
			if t, u := b.firstSoft(&b.Start, 0, until, changes); u != nil {
				f := b.softFinding(u, t)
				f.Range = b.Start.At
				found = append(found, f)
			}
			continue
		}
		p := b.Pulls[i]
		if p.Rack.Follow {
			continue
		}
		if t, u := b.firstSoft(&p.Rack.Aim, p.Rack.LandS, until, changes); u != nil {
			f := b.softFinding(u, t)
			if len(p.Rack.Aim.Members()) == 1 {
				f.Tries = func() []change.Change {
					return []change.Change{edited(change.Edit{Kind: change.Follow, Item: p.Rack.Item + 1, Who: u.Name})}
				}
			}
			found = append(found, b.about(p, f))
		}
	}
	return found
}

func (b *Shot) softFinding(u *stage.Subject, t float64) Finding {
	return Finding{Diagnostic: lang.Diagnostic{
		Code: "goes-soft", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("%s moves out of focus by %s, and nothing follows", u.Name, b.units.Time(t)),
		Detail:  "Follow, or rack again once the move is over.",
		Figures: []lang.Figure{figure("time_s", t)},
	}}
}

// firstSoft finds the first moment between two times, at which a move starts or
// ends or the focus leaves, where one whom the focus rests on is not sharp any
// more, though the focus stands still. changes holds when a subject or the camera
// starts or stops, for those that have been asked for.
func (b *Shot) firstSoft(g *stage.Goal, from, until float64, changes map[*stage.Subject][]float64) (t float64, who *stage.Subject) {
	if !g.Ok || g.Soft() || from >= until {
		return 0, nil
	}
	for _, u := range g.Members() {
		times, ok := changes[u]
		if !ok {
			times = shot.SortedTimes(append(u.Along.Keys(), b.Plan.Optics.Camera.Keys()...))
			changes[u] = times
		}
		first, _ := slices.BinarySearch(times, from)
		last, _ := slices.BinarySearch(times, until)
		for _, t := range append(slices.Clone(times[first:last]), until) {
			if t <= from {
				continue
			}
			d, set := b.Plan.LensDistanceAt(u.Subject, t), b.Plan.Setting(t)
			if b.Plan.DistanceAt(u.Subject, t) != b.Plan.DistanceAt(u.Subject, from) && set.Blur(d, b.restingAt(g, from, t)) > set.Criterion {
				return t, u
			}
		}
	}
	return 0, nil
}

// restingAt is the focus, from the lens at t, that was set on a goal earlier.
func (b *Shot) restingAt(g *stage.Goal, set, t float64) float64 {
	return b.Plan.Carried(b.LensDistance(g, set), set, t)
}
