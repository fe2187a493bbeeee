// falls-behind, hard-to-follow, and never-sure and hard-to-land where a follow comes
// to rest: whether the hand stays with somebody. A follow gets the first that
// applies.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/moments"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var following = Check{Codes: []rule.Code{rule.FasterThanAHand, rule.FallsBehind, rule.HardToFollow, rule.NeverSure, rule.HardToLand}, Run: followsBadly}

func followsBadly(b *Shot) (found []Finding) {
	for _, p := range b.Pulls {
		if !p.Rack.Follow {
			continue
		}
		if p.Guesses != nil {
			found = append(found, b.followsBadlyOnAny(p)...)
			continue
		}
		wanted := b.Setup.View.Wanted
		if float64(p.Plan.Peak) > b.Setup.Hand.Limit {
			found = append(found, b.fasterThanAHand(p))
			continue
		}
		if t, lag, room, ok := b.Behind(p); ok {
			found = append(found, b.behind(p, t, lag, room))
			continue
		}
		switch {
		case !p.Plan.Chance.Known():
		case float64(p.Plan.WorstShare) < wanted-1e-9:
			found = append(found, b.hardToFollow(p))
		case p.Landed.Ceiling < wanted:
			found = append(found, b.restsBadly(p, "never-sure", b.atBest(float64(p.Plan.Chance), p.Landed.Ceiling, "however slowly you pull")))
		case float64(p.Plan.Chance) < wanted-1e-9:
			found = append(found, b.restsBadly(p, "hard-to-land", b.Units.Chance(float64(p.Plan.Chance), wanted)+" of the time where it comes to rest"))
		}
	}
	return found
}

func (b *Shot) behind(p *shot.Pull, t, lag, room float64) Finding {
	message := fmt.Sprintf("at %s the focus falls %s behind %s, and only %s is sharp on that side", b.Units.Time(t), b.Units.Gap(lag), p.Rack.ToText(), b.Units.Gap(room))
	if b.Units.Gap(lag) == b.Units.Gap(room) {
		message = fmt.Sprintf("at %s the focus falls just over %s behind %s, which is what is sharp on that side", b.Units.Time(t), b.Units.Gap(lag), p.Rack.ToText())
	}
	return b.About(p, Finding{Diagnostic: lang.Diagnostic{
		Code: "falls-behind", Severity: lang.Warning, Time: t, Message: message,
		Figures: []lang.Figure{check.Figure("lag_m", lag), check.Figure("room_m", room)},
	}, Tries: func() []change.Change {
		return append(b.StopTry(true, func(at *shot.Built) bool {
			_, _, _, behind := at.Behind(p)
			return !behind
		}), b.slowerTry(p)...)
	}})
}

func (b *Shot) hardToFollow(p *shot.Pull) Finding {
	wanted, share, at := b.Setup.View.Wanted, float64(p.Plan.WorstShare), float64(p.Plan.WorstAt)
	end := float64(p.Plan.WorstUntil())
	worst := p.Moments[0]
	for _, m := range p.Moments {
		if m.T >= at && m.T <= end && (worst.T < at || m.Sharp < worst.Sharp) {
			worst = m
		}
	}
	return b.About(p, Finding{Diagnostic: lang.Diagnostic{
		Code: "hard-to-follow", Severity: lang.Warning, Time: at,
		Message: fmt.Sprintf("the focus is on %s %s of the time at its worst, %s to %s, and %s is wanted", p.Rack.ToText(),
			b.Units.Chance(share, wanted), b.Units.Time(at), b.Units.Time(end), b.Units.Wanted(wanted)),
		Detail: fmt.Sprintf("The hand turns at up to %s, is behind by %s and spreads by %s there.",
			b.Units.Speed(float64(p.Plan.Peak)), b.Units.Angle(math.Abs(worst.Lag)), b.Units.Angle(worst.Spread)),
		Figures: []lang.Figure{
			check.Figure("worst_share", share), check.Figure("worst_s", at), check.Figure("sharp_share", float64(p.Plan.SharpShare)), check.Figure("wanted", wanted),
			check.Figure("lag_deg", math.Abs(worst.Lag)), check.Figure("spread_deg", worst.Spread), check.Figure("peak_deg_s", float64(p.Plan.Peak)),
		},
	}, Tries: func() []change.Change { return b.followTries(p) }})
}

// restsBadly tells of a follow that comes to rest where it may miss.
func (b *Shot) restsBadly(p *shot.Pull, code, often string) Finding {
	wanted := b.Setup.View.Wanted
	return b.About(p, Finding{Diagnostic: lang.Diagnostic{
		Code: code, Severity: lang.Warning, Time: p.Rack.LandS,
		Message: fmt.Sprintf("a follow of %s ends sharp %s; you asked for %s", p.Rack.ToText(), often, b.Units.Wanted(wanted)),
		Detail: fmt.Sprintf("It comes to rest at %s, with a spread of %s at the hand.", b.Units.Time(p.Rack.LandS), b.Units.Angle(float64(p.Plan.Spread))) +
			moments.Unsure(b.Plan, p.Plan, code == "never-sure", b.Units),
		Figures: []lang.Figure{
			check.Figure("probability", float64(p.Plan.Chance)), check.Figure("ceiling", p.Landed.Ceiling), check.Figure("wanted", wanted),
			check.Figure("spread_deg", float64(p.Plan.Spread)),
		},
	}, Tries: func() []change.Change { return b.followTries(p) }})
}

// followTries offers the nearest smaller stop at which a follow holds, other gears
// and a slower move.
func (b *Shot) followTries(p *shot.Pull) []change.Change {
	tries := b.StopTry(true, func(at *shot.Built) bool { return at.FollowHolds(p) })
	if gears := stops.GearsFrom(b.Setup.Gear); len(gears) > 0 {
		tries = append(tries, change.Change{Gear: gears[0]})
	}
	return append(tries, b.slowerTry(p)...)
}

// slowerTry offers more time for the move that is followed, where one alone falls
// into the follow.
func (b *Shot) slowerTry(p *shot.Pull) []change.Change {
	only, others := b.MoveFollowed(p)
	if only == nil || only.Speed > 0 {
		return nil
	}
	who, what, long := "", only.Kind, only.End-only.Start
	if only.Who != nil {
		who, what = only.Who.Name, ""
	}
	which := ""
	if others {
		which = fmt.Sprintf(" (line %d)", only.Stmt.Range().Start.Line)
	}
	var tries []change.Change
	for _, factor := range []float64{1.5, 2, 3} {
		tries = append(tries, check.Edited(change.Edit{Kind: change.MoveOver, Item: only.Item + 1, Who: who, What: what, Seconds: units.Up(long*factor, 10), Text: which}))
	}
	return tries
}
