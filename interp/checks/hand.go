// no-time-to-move, faster-than-a-hand, never-sure, hard-to-land: whether the hand gets there. A rack gets the first that applies.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/hand"
	"pullscore/interp/inwords"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/lang"
)

func checkHand(b Run) {
	if b.Shot.Optics.Ring == nil {
		return
	}
	b.Racks(func(p *clock.Pull) {
		l := p.Landed
		switch {
		case !p.Chance.Known() || p.LandS < p.StartS:
		case !l.Possible:
			b.noTimeToMove(p)
		case l.Peak > b.Set.Hand.Limit*(1+1e-9):
			b.fasterThanAHand(p)
		case p.Aim.Split != nil && p.Window[0] > p.Window[1]:
		case l.Ceiling < b.Set.View.Wanted:
			b.neverSure(p)
		case l.Chance < b.Set.View.Wanted-1e-9:
			b.hardToLand(p)
		}
	})
	for _, p := range b.Pulls {
		if p.Follow && float64(p.Peak) > b.Set.Hand.Limit {
			b.fasterThanAHand(p)
		}
	}
}

func (b Run) noTimeToMove(p *clock.Pull) {
	lost := p.Landed.Lost
	message := fmt.Sprintf("%s leaves no time to move: %s is over", racked(b, p), inwords.Seconds(p.LandS-p.StartS))
	if p.Asks.Reacts {
		message += fmt.Sprintf(" before the hand has reacted (%s)", inwords.Seconds(hand.Reaction))
	}
	if lost > 0 {
		message += fmt.Sprintf(", and re-grips take %s", inwords.Seconds(lost))
	}
	b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "no-time-to-move", Severity: lang.Error, Message: message,
		Figures: []lang.Figure{shot.Figure("time_s", p.LandS-p.StartS), shot.Figure("lost_s", lost), shot.Figure("hand_deg", float64(p.HandDeg))},
	}, Tries: func() []change.Change { return append(b.longer(p), b.gearTry(p)...) }})
}

func (b Run) fasterThanAHand(p *clock.Pull) {
	limit := b.Set.Hand.Limit
	f := shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "faster-than-a-hand", Severity: lang.Error,
		Message: fmt.Sprintf("the hand would turn at %s deg/s at its fastest, and can do %s", plan.Decimal(float64(p.Peak), 0), plan.Decimal(limit, 0)),
		Figures: []lang.Figure{shot.Figure("peak_deg_s", float64(p.Peak)), shot.Figure("limit_deg_s", limit), shot.Figure("hand_deg", float64(p.HandDeg))},
	}}
	if !p.Follow {
		f.Tries = func() []change.Change { return append(b.longer(p), b.gearTry(p)...) }
	}
	b.tellPull(p, f)
}

// longer offers the time that the rack needs: to land as wanted, or where that
// never comes, to be moved at all.
func (b Run) longer(p *clock.Pull) []change.Change {
	t := float64(p.Needed)
	if !p.Needed.Known() {
		lost := p.LandS - p.StartS - p.Landed.Moving
		fastest := hand.PeakSpeed
		if p.Asks.Even {
			fastest = 1
		}
		t = lost + fastest*p.Asks.Travel/b.Set.Hand.Limit + 0.1
	}
	return b.overTry(p, inwords.CeilTo(t, 10))
}

func (b Run) neverSure(p *clock.Pull) {
	b.tellPull(p, shot.Finding{Diagnostic: b.landing(p, "never-sure", fmt.Sprintf(
		"%s lands %s of the time however slowly it is pulled, and %s is wanted", racked(b, p), plan.PercentOf(p.Landed.Ceiling, b.Set.View.Wanted), plan.Percent(b.Set.View.Wanted))),
		Tries: func() []change.Change { return append(b.landStop(p), b.gearTry(p)...) },
	})
}

func (b Run) hardToLand(p *clock.Pull) {
	message := fmt.Sprintf("%s lands %s of the time, and %s is wanted", racked(b, p), plan.PercentOf(p.Landed.Chance, b.Set.View.Wanted), plan.Percent(b.Set.View.Wanted))
	if p.Needed.Known() {
		message += fmt.Sprintf(": it needs %s", plan.Decimal(inwords.CeilTo(float64(p.Needed), 10), 1)+" s")
	}
	b.tellPull(p, shot.Finding{Diagnostic: b.landing(p, "hard-to-land", message), Tries: func() []change.Change {
		return append(append(b.longer(p), b.landStop(p)...), b.gearTry(p)...)
	}})
}

// landing is the diagnostic of a rack that may miss, with its figures.
func (b Run) landing(p *clock.Pull, code, message string) lang.Diagnostic {
	width := p.Asks.Hi - p.Asks.Lo
	detail := fmt.Sprintf("Window %s, spread %s at the hand.", inwords.Degrees(width), inwords.Degrees(p.Landed.Spread))
	if math.IsInf(width, 0) {
		detail = fmt.Sprintf("The ring's end holds one side of the window, spread %s at the hand.", inwords.Degrees(p.Landed.Spread))
	}
	d := lang.Diagnostic{
		Code: code, Severity: lang.Warning, Message: message, Detail: detail,
		Figures: []lang.Figure{
			shot.Figure("probability", p.Landed.Chance), shot.Figure("ceiling", p.Landed.Ceiling), shot.Figure("wanted", b.Set.View.Wanted),
			shot.Figure("spread_deg", p.Landed.Spread), shot.Figure("hand_deg", float64(p.HandDeg)), shot.Figure("time_s", p.LandS-p.StartS),
		},
	}
	if !math.IsInf(width, 0) {
		d.Figures = append(d.Figures, shot.Figure("window_deg", width))
	}
	if p.Needed.Known() {
		d.Figures = append(d.Figures, shot.Figure("needed_s", float64(p.Needed)))
	}
	return d
}

// landStop offers the nearest smaller stop at which the rack lands as wanted.
func (b Run) landStop(p *clock.Pull) []change.Change {
	return b.stopTry(true, func() bool {
		needs, ok := b.HandPull(p, p.StartS, p.LandS)
		return ok && b.enough(p, b.Set.Hand.Land(needs))
	})
}

// enough tells whether a landing is what is wanted of a rack: that it lands, or
// where no time would do, that some time does.
func (b Run) enough(p *clock.Pull, l hand.Landing) bool {
	if p.Landed.Ceiling < b.Set.View.Wanted {
		return l.Ceiling >= b.Set.View.Wanted
	}
	return l.Possible && l.Chance >= b.Set.View.Wanted && l.Peak <= b.Set.Hand.Limit
}

// gearTry offers another gear, nearest first, or with a gear a larger wheel.
func (b Run) gearTry(p *clock.Pull) []change.Change {
	var tries []change.Change
	for _, g := range stops.GearsFrom(b.Set.Gear) {
		if b.landsWith(p, g, b.Set.Wheel) {
			tries = append(tries, change.Change{Gear: g})
			break
		}
	}
	if !b.Set.Geared {
		return tries
	}
	for _, w := range []float64{0.10, 0.12, 0.14, 0.16, 0.20} {
		if w > b.Set.Wheel && b.landsWith(p, b.Set.Gear, w) {
			return append(tries, change.Change{Wheel: w})
		}
	}
	return tries
}

func (b Run) landsWith(p *clock.Pull, gear, wheel float64) bool {
	needs := p.Asks
	k := gear / b.Set.Gear
	needs.Travel, needs.Lo, needs.Hi, needs.SigmaX, needs.Rim = needs.Travel*k, needs.Lo*k, needs.Hi*k, needs.SigmaX*k, wheel
	return b.enough(p, b.Set.Hand.Land(needs))
}
