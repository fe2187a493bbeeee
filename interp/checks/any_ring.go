// no-time-to-move, faster-than-a-hand, never-sure, hard-to-land and hard-to-follow where
// nothing is known of the ring: each only where it holds on whatever ring.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
)

// whatever ends a sentence about the best of all rings.
const whatever = "at best, however far the ring turns"

func (b *Shot) landsBadlyOnAny() (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		if p.Guesses == nil {
			return
		}
		quickest, slowest, possible := math.Inf(1), math.Inf(1), false
		for _, g := range p.Guesses {
			possible = possible || g.Landed.Possible
			quickest, slowest = min(quickest, g.Landed.Lost), min(slowest, g.Peak)
		}
		switch {
		case !possible:
			found = append(found, b.tooShort(p, quickest))
		case slowest > b.Setup.Hand.Limit*(1+1e-9):
			found = append(found, b.tooFast(p, slowest))
		case p.Rack.Aim.Split != nil && p.Window[0] > p.Window[1]:
		default:
			found = append(found, b.missesOnAny(p, "lands")...)
		}
	})
	return found
}

func (b *Shot) followsBadlyOnAny(p *shot.Pull) []Finding {
	worst, peak := 0.0, math.Inf(1)
	for _, g := range p.Guesses {
		worst, peak = max(worst, g.Worst), min(peak, g.Peak)
	}
	wanted := b.Setup.View.Wanted
	switch {
	case peak > b.Setup.Hand.Limit:
		return []Finding{b.tooFast(p, peak)}
	case worst < wanted-1e-9:
		return []Finding{b.About(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "hard-to-follow", Severity: lang.Warning,
			Message: fmt.Sprintf("the focus is on %s %s of the time in its worst half second, %s; you asked for %s", p.Rack.ToText(), b.Units.Chance(worst, wanted), whatever, b.Units.Wanted(wanted)),
			Figures: []lang.Figure{check.Figure("worst_share", worst), check.Figure("wanted", wanted)},
		}, Tries: func() []change.Change {
			return append(b.StopTry(true, func(at *shot.Built) bool { return at.BestWorst(p) >= wanted }), b.slowerTry(p)...)
		}})}
	}
	return b.missesOnAny(p, "ends sharp")
}

// missesOnAny tells of a pull that does not land as wanted on any ring.
func (b *Shot) missesOnAny(p *shot.Pull, lands string) []Finding {
	wanted := b.Setup.View.Wanted
	chance, ceiling := float64(p.Plan.ChanceBand[1]), float64(p.Plan.CeilingBand[1])
	code, best := "hard-to-land", chance
	switch {
	case ceiling < wanted:
		code = "never-sure"
	case chance >= wanted-1e-9:
		return nil
	}
	how := "of the time " + whatever
	if code == "never-sure" {
		best, how = ceiling, how+" and however slowly you pull"
	}
	what := b.Racked(p)
	if p.Rack.Follow {
		what = "a follow of " + p.Rack.ToText()
	}
	return []Finding{b.About(p, Finding{Diagnostic: lang.Diagnostic{
		Code: code, Severity: lang.Warning,
		Message: fmt.Sprintf("%s %s %s %s; you asked for %s", what, lands, b.Units.Chance(best, wanted), how, b.Units.Wanted(wanted)),
		Figures: []lang.Figure{
			check.Figure("probability", chance), check.Figure("ceiling", ceiling), check.Figure("wanted", wanted), check.Figure("time_s", p.Rack.LandS-p.Rack.StartS),
		},
	}, Tries: func() []change.Change { return b.anyRingTries(p, code == "never-sure") }})}
}

// anyRingTries offers the time in which a rack lands on the ring that suits it best, and
// the nearest smaller stop at which it does.
func (b *Shot) anyRingTries(p *shot.Pull, never bool) []change.Change {
	var tries []change.Change
	if t, ok := b.ShortestOnBest(p); ok && !never && !p.Rack.Follow {
		tries = b.OverTry(p, units.Up(t, 10))
	}
	wanted := b.Setup.View.Wanted
	return append(tries, b.StopTry(true, func(at *shot.Built) bool {
		chance, ceiling := at.Spans(p)
		if never {
			chance = ceiling
		}
		return float64(chance[1]) >= wanted
	})...)
}
