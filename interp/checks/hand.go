// no-time-to-move, faster-than-a-hand, never-sure, hard-to-land: whether a hand
// gets there with a rack, which is told the first that applies. re-grip: one grip
// cannot turn that far.

package checks

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/checks/glass"
	"pullscore/interp/hand"
	"pullscore/interp/moments"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var landing = Check{Codes: []rule.Code{rule.NoTimeToMove, rule.FasterThanAHand, rule.NeverSure, rule.HardToLand}, Run: landsBadly}

func landsBadly(b *Shot) (found []Finding) {
	if b.Plan.RingUnknown() {
		return b.landsBadlyOnAny()
	}
	if b.Plan.Optics.Ring == nil {
		return nil
	}
	b.Racks(func(p *shot.Pull) {
		l := p.Landed
		switch {
		case !p.Plan.Chance.Known() || p.Rack.LandS < p.Rack.StartS:
		case !l.Possible:
			found = append(found, b.noTimeToMove(p))
		case l.Peak > b.Setup.Hand.Limit*(1+1e-9):
			found = append(found, b.fasterThanAHand(p))
		case p.Rack.Aim.Split != nil && p.Window[0] > p.Window[1]:
		case glass.LosesByPlay(&b.Shot, p): // told as play-loses
		case l.Ceiling < b.Setup.View.Wanted:
			found = append(found, b.neverSure(p))
		case l.Chance < b.Setup.View.Wanted-1e-9:
			found = append(found, b.hardToLand(p))
		}
	})
	return found
}

func (b *Shot) noTimeToMove(p *shot.Pull) Finding { return b.tooShort(p, p.Landed.Lost) }

// tooShort tells of a rack that is over before the hand moves, with the time that
// re-grips take, seconds.
func (b *Shot) tooShort(p *shot.Pull, lost float64) Finding {
	message := fmt.Sprintf("%s leaves no time to move: %s is over", b.Racked(p), b.Units.Time(p.Rack.LandS-p.Rack.StartS))
	if p.Rack.Reacts {
		message += fmt.Sprintf(" before the hand has reacted (%s)", b.Units.Time(hand.Reaction))
	}
	if lost > 0 {
		message += fmt.Sprintf(", and re-grips take %s", b.Units.Time(lost))
	}
	return b.About(p, Finding{Diagnostic: lang.Diagnostic{
		Code: "no-time-to-move", Severity: lang.Error, Message: message,
		Figures: []lang.Figure{check.Figure("time_s", p.Rack.LandS-p.Rack.StartS), check.Figure("lost_s", lost), check.Figure("hand_deg", float64(p.Plan.HandDeg))},
	}, Tries: func() []change.Change { return append(b.longer(p), b.gearTry(p)...) }})
}

func (b *Shot) fasterThanAHand(p *shot.Pull) Finding { return b.tooFast(p, float64(p.Plan.Peak)) }

// tooFast tells of a pull that turns faster at its fastest than the hand can, in
// degrees a second.
func (b *Shot) tooFast(p *shot.Pull, peak float64) Finding {
	limit := b.Setup.Hand.Limit
	f := Finding{Diagnostic: lang.Diagnostic{
		Code: "faster-than-a-hand", Severity: lang.Error,
		Message: fmt.Sprintf("the hand would turn at %s at its fastest, and can do %s", b.Units.Speed(peak), b.Units.Speed(limit)),
		Figures: []lang.Figure{check.Figure("peak_deg_s", peak), check.Figure("limit_deg_s", limit), check.Figure("hand_deg", float64(p.Plan.HandDeg))},
	}}
	if !p.Rack.Follow {
		f.Tries = func() []change.Change { return append(b.longer(p), b.gearTry(p)...) }
	}
	return b.About(p, f)
}

// longer offers the time that the rack needs: to land as wanted, or where that
// never comes, to be moved at all.
func (b *Shot) longer(p *shot.Pull) []change.Change {
	t := float64(p.Plan.Needed)
	if !p.Plan.Needed.Known() {
		lost := p.Rack.LandS - p.Rack.StartS - p.Landed.Moving
		fastest := hand.PeakSpeed
		if p.Plan.Asks.Even {
			fastest = 1
		}
		t = lost + fastest*p.Plan.Asks.Travel/b.Setup.Hand.Limit + 0.1
	}
	return b.OverTry(p, units.Up(t, 10))
}

func (b *Shot) neverSure(p *shot.Pull) Finding {
	message := fmt.Sprintf("%s lands %s; you asked for %s", b.Racked(p), b.atBest(p.Landed.Chance, p.Landed.Ceiling, "however slowly you pull"), b.Units.Wanted(b.Setup.View.Wanted))
	return b.About(p, Finding{Diagnostic: b.landing(p, "never-sure", message), Needs: b.needs(p), Tries: func() []change.Change {
		tries := b.withoutPlayTry(p)
		if p.Plan.Needed.Known() { // with another time it lands where nobody moves any more
			tries = append(tries, b.longer(p)...)
		}
		tries = append(tries, b.onceStandingTry(p)...)
		return append(append(tries, b.landStop(p)...), b.gearTry(p)...)
	}})
}

// onceStandingTry offers a moment at which a rack lands on one who stands, where it
// lands on one who moves.
func (b *Shot) onceStandingTry(p *shot.Pull) []change.Change {
	if !p.Plan.SubjectSpeed.Known() {
		return nil
	}
	stands := p.Rack.LandS
	for _, m := range b.Stage.MovesIn(p.Rack.LandS, p.Rack.LandS) {
		stands = max(stands, m.End)
	}
	return b.LaterTry(p, stands+stage.PickUp/2-p.Rack.LandS)
}

// atBest says how often something is sharp as it is written, and how often at most.
func (b *Shot) atBest(chance, ceiling float64, most string) string {
	now, best := b.Units.Chance(chance, b.Setup.View.Wanted), b.Units.Chance(ceiling, b.Setup.View.Wanted)
	if now == best {
		return fmt.Sprintf("%s of the time %s", now, most)
	}
	return fmt.Sprintf("%s of the time, and %s %s", now, best, most)
}

// needs is the time that a rack needs, seconds; 0 where none is known.
func (b *Shot) needs(p *shot.Pull) float64 {
	if !p.Plan.Needed.Known() {
		return 0
	}
	return float64(p.Plan.Needed)
}

// Needing returns a finding of a rack with the time in which it lands as wanted.
func (b *Shot) Needing(f Finding, seconds float64) Finding {
	f.Message += ": it needs " + b.Units.Time(seconds)
	f.Figures = append(slices.Clone(f.Figures), check.Figure("needed_s", seconds))
	return f
}

func (b *Shot) hardToLand(p *shot.Pull) Finding {
	message := fmt.Sprintf("%s lands %s of the time; you asked for %s", b.Racked(p), b.Units.Chance(p.Landed.Chance, b.Setup.View.Wanted), b.Units.Wanted(b.Setup.View.Wanted))
	return b.About(p, Finding{Diagnostic: b.landing(p, "hard-to-land", message), Needs: b.needs(p), Tries: func() []change.Change {
		return append(append(append(b.withoutPlayTry(p), b.longer(p)...), b.landStop(p)...), b.gearTry(p)...)
	}})
}

// withoutPlayTry offers marks that are read both ways, where the play of the ring takes
// a part of what a rack is off by.
func (b *Shot) withoutPlayTry(p *shot.Pull) []change.Change {
	if _, loses := b.WithoutPlay(p); !loses {
		return nil
	}
	return []change.Change{{BothWays: true}}
}

// landing is the diagnostic of a rack that may miss, with its figures.
func (b *Shot) landing(p *shot.Pull, code, message string) lang.Diagnostic {
	width := p.Plan.Asks.Hi - p.Plan.Asks.Lo
	detail := fmt.Sprintf("Window %s, spread %s at the hand.", b.Units.Angle(width), b.Units.Angle(p.Landed.Spread))
	if p.Landed.ByStop {
		detail += " The end of the ring holds the hand."
	} else if math.IsInf(width, 0) {
		detail = fmt.Sprintf("The ring's end holds one side of the window, spread %s at the hand.", b.Units.Angle(p.Landed.Spread))
	}
	if v := p.Plan.SubjectSpeed; v.Known() {
		detail += fmt.Sprintf(" %s moves at %s as it lands.", p.Rack.ToText(), b.Units.Walk(float64(v)))
	}
	if code == "hard-to-land" && b.Units.Chance(p.Landed.Ceiling, 0) != b.Units.Chance(p.Landed.Chance, 0) {
		detail += fmt.Sprintf(" However slowly you pull, it lands %s of the time.", b.Units.Chance(p.Landed.Ceiling, 0))
	}
	if _, loses := b.WithoutPlay(p); loses {
		detail += fmt.Sprintf(" The play of the ring leaves it %s short.", b.Units.Angle(float64(p.Plan.PlayShift)*b.Setup.Gear))
	}
	d := lang.Diagnostic{
		Code: code, Severity: lang.Warning, Message: message, Detail: detail + moments.Unsure(b.Plan, p.Plan, code == "never-sure", b.Units),
		Figures: []lang.Figure{
			check.Figure("probability", p.Landed.Chance), check.Figure("ceiling", p.Landed.Ceiling), check.Figure("wanted", b.Setup.View.Wanted),
			check.Figure("spread_deg", p.Landed.Spread), check.Figure("hand_deg", float64(p.Plan.HandDeg)), check.Figure("time_s", p.Rack.LandS-p.Rack.StartS),
		},
	}
	if !math.IsInf(width, 0) {
		d.Figures = append(d.Figures, check.Figure("window_deg", width))
	}
	return d
}

// landStop offers the nearest smaller stop at which the rack lands as wanted.
func (b *Shot) landStop(p *shot.Pull) []change.Change {
	return b.StopTry(true, func(at *shot.Built) bool {
		needs, ok := at.HandPull(p)
		return ok && b.enough(p, b.Setup.Hand.Land(needs))
	})
}

// enough tells whether a landing is what is wanted of a rack: that it lands, or
// where no time would do, that some time does.
func (b *Shot) enough(p *shot.Pull, l hand.Landing) bool {
	if p.Landed.Ceiling < b.Setup.View.Wanted {
		return l.Ceiling >= b.Setup.View.Wanted
	}
	return l.Possible && l.Chance >= b.Setup.View.Wanted && l.Peak <= b.Setup.Hand.Limit
}

// gearTry offers another gear, nearest first, or with a gear a larger wheel.
func (b *Shot) gearTry(p *shot.Pull) []change.Change {
	var tries []change.Change
	if b.Setup.Travel.Deg > 0 { // its ends say the gear
		return nil
	}
	for _, g := range stops.GearsFrom(b.Setup.Gear) {
		if b.landsWith(p, g, b.Setup.Wheel) {
			tries = append(tries, change.Change{Gear: g})
			break
		}
	}
	if !b.Setup.Geared {
		return tries
	}
	for _, w := range []float64{0.10, 0.12, 0.14, 0.16, 0.20} {
		if w > b.Setup.Wheel && b.landsWith(p, b.Setup.Gear, w) {
			return append(tries, change.Change{Wheel: w})
		}
	}
	return tries
}

func (b *Shot) landsWith(p *shot.Pull, gear, wheel float64) bool {
	needs := p.Plan.Asks
	k := gear / b.Setup.Gear
	needs.Travel, needs.Lo, needs.Hi, needs.SigmaX, needs.Rim = needs.Travel*k, needs.Lo*k, needs.Hi*k, needs.SigmaX*k, wheel
	return b.enough(p, b.Setup.Hand.Land(needs))
}

var reGrip = Check{Codes: []rule.Code{rule.ReGrip}, Run: gripsAgain}

func gripsAgain(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		if p.Landed.Regrips == 0 || b.OutOfReach(p) {
			return
		}
		needs := "one re-grip, which costs"
		if p.Landed.Regrips > 1 {
			needs = fmt.Sprintf("%d re-grips, which cost", p.Landed.Regrips)
		}
		found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "re-grip", Severity: lang.Note,
			Message: fmt.Sprintf("%s at the hand: that needs %s %s", b.Units.Angle(float64(p.Plan.HandDeg)), needs, b.Units.Time(math.Max(p.Landed.Lost, 0.01))),
			Figures: []lang.Figure{check.Figure("hand_deg", float64(p.Plan.HandDeg)), check.Figure("grip_deg", b.Setup.Hand.Grip), check.Figure("lost_s", p.Landed.Lost)},
		}, Tries: func() []change.Change {
			g := math.Floor(b.Setup.Gear*b.Setup.Hand.Grip/float64(p.Plan.HandDeg)*20) / 20
			if g < 0.05 {
				return nil
			}
			return []change.Change{{Gear: g}}
		}}))
	})
	return found
}
