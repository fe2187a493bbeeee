// goes-soft: whom the focus stands on moves out of it, and nothing follows.
//
// The blur is looked at every 48th of a second while something moves, not only
// where a move ends: somebody may walk out of the focus and back into it. Where it
// passes what is sharp is then found to a millisecond.

package checks

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/checks/check"
	"pullscore/interp/checks/rig"

	"pullscore/interp/change"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

const (
	softSteps = 48    // a second
	softMost  = 4000  // between two ends of moves
	softExact = 0.001 // seconds
)

var goesSoft = Check{Codes: []rule.Code{rule.GoesSoft}, Run: movesOut}

// A soft is when somebody is out of what is sharp, while the focus stands on them.
type soft struct {
	who      *stage.Subject
	from, to float64
}

func movesOut(b *Shot) (found []Finding) {
	for i, s := range b.softTimes() {
		if s == nil {
			continue
		}
		landed := 0.0
		if i > 0 {
			landed = b.Pulls[i-1].Rack.LandS
		}
		f := b.softFinding(s, landed)
		if i == 0 {
			f.Range = b.Start.At
			found = append(found, f)
			continue
		}
		p := b.Pulls[i-1]
		if len(p.Rack.Aim.Members()) == 1 {
			f.Tries = func() []change.Change {
				return []change.Change{check.Edited(change.Edit{Kind: change.Follow, Item: p.Rack.Item + 1, Who: s.who.Name})}
			}
		}
		found = append(found, b.About(p, f))
	}
	return found
}

// softFinding tells of somebody soft who was sharp when the focus landed, and what took
// the plane of focus off them where it was a turn of the camera.
func (b *Shot) softFinding(s *soft, landed float64) Finding {
	figures := []lang.Figure{check.Figure("time_s", s.from), check.Figure("until_s", s.to)}
	why := "the distance changes, and nothing follows"
	if takes, by := rig.TakesOff(&b.Shot, s.who, landed, s.from, s.to); takes != "" {
		why = fmt.Sprintf("%s the plane of focus %s off, and nothing follows", takes, b.Units.Gap(math.Abs(by)))
		figures = append(figures, check.Figure("turned_off_m", by))
	}
	return Finding{Who: s.who.Name, Diagnostic: lang.Diagnostic{
		Code: "goes-soft", Severity: lang.Warning, Time: s.from,
		Message: fmt.Sprintf("%s is soft from %s to %s: %s", s.who.Name, b.Units.Time(s.from), b.Units.Time(s.to), why),
		Detail:  "Follow from before the move until it is over, or rack again once it is.",
		Figures: figures,
	}}
}

// softTimes returns for the start and for every pull when somebody first goes soft
// while the focus stands where that has left it; nil where nobody does.
func (b *Shot) softTimes() []*soft {
	list := make([]*soft, len(b.Pulls)+1)
	keys := shot.Keys{}
	for i := range list {
		goal, from, until := &b.Start, 0.0, float64(b.Plan.Duration)
		if i > 0 {
			p := b.Pulls[i-1]
			goal, from = &p.Rack.Aim, p.Rack.LandS
		}
		if i < len(b.Pulls) {
			until = b.Pulls[i].Rack.StartS
		}
		if s := b.firstSoft(goal, from, until, keys); s != nil {
			if s.to >= until && i < len(b.Pulls) {
				s.to = b.backOn(s.who, i, s.to)
			}
			list[i] = s
		}
	}
	return list
}

// backOn returns when the pull at i has the focus back on somebody who is soft until
// it begins.
func (b *Shot) backOn(u *stage.Subject, i int, until float64) float64 {
	next := b.Pulls[i].Rack
	if !next.Follow && slices.Contains(next.Aim.Members(), u) && next.LandS > until {
		return next.LandS
	}
	return until
}

// firstSoft finds when one whom the focus rests on between two times is not sharp
// any more, though the focus stands still.
func (b *Shot) firstSoft(g *stage.Goal, from, until float64, keys shot.Keys) *soft {
	if !g.Ok || g.Soft() || !(from < until) {
		return nil
	}
	for _, u := range g.Members() {
		if s := b.softIn(g, u, from, b.Turns(u, from, until, keys)[1:]); s != nil {
			return s
		}
	}
	return nil
}

// softIn looks for the first time at which one is soft, and when that is over, by
// the times between which they move.
func (b *Shot) softIn(g *stage.Goal, u *stage.Subject, from float64, ends []float64) *soft {
	at := b.Plan.DistanceAt(u.Subject, from)
	isSoft := func(t float64) bool {
		if b.Plan.DistanceAt(u.Subject, t) == at {
			return false
		}
		x, d := b.RestingAt(g, from, t), b.Plan.LensDistanceAt(u.Subject, t)
		set := b.Plan.Judged(x, t)
		return set.Blur(d, x) > set.Criterion && (b.Plan.Optics.Rig == nil || b.Plan.FrameAt(u.Subject, t) != plan.OutOfFrame)
	}
	if isSoft(from + softExact) {
		return nil // it was never sharp here, which the landing has been told of
	}
	var s *soft
	t := from
	for _, end := range ends {
		if end <= t {
			continue
		}
		steps := b.Steps(u, t, end, softSteps, softMost)
		for k := 1; k <= steps; k++ {
			next := t + (end-t)*float64(k)/float64(steps)
			switch now := isSoft(next); {
			case s == nil && now:
				s = &soft{who: u, from: passes(t+(end-t)*float64(k-1)/float64(steps), next, isSoft)}
			case s != nil && !now:
				s.to = passes(t+(end-t)*float64(k-1)/float64(steps), next, func(t float64) bool { return !isSoft(t) })
				return s
			}
		}
		t = end
	}
	if s != nil {
		s.to = t
	}
	return s
}

// passes returns the time between two at which something comes to hold that holds
// at the second.
func passes(from, to float64, holds func(float64) bool) float64 {
	for to-from > softExact {
		mid := from + (to-from)/2
		if holds(mid) {
			to = mid
		} else {
			from = mid
		}
	}
	return to
}
