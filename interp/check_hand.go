// no-time-to-move, faster-than-a-hand, never-sure, hard-to-land: whether the hand gets there. A rack gets the first that applies.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
)

func checkHand(b run) {
	if b.shot.Optics.Ring == nil {
		return
	}
	b.racks(func(p *pull) {
		l := p.landed
		switch {
		case !p.Chance.Known() || p.land < p.start:
		case !l.Possible:
			b.noTimeToMove(p)
		case l.Peak > b.set.hand.Limit*(1+1e-9):
			b.fasterThanAHand(p)
		case p.goal.split != nil && p.window[0] > p.window[1]:
		case l.Ceiling < b.set.view.wanted:
			b.neverSure(p)
		case l.Chance < b.set.view.wanted-1e-9:
			b.hardToLand(p)
		}
	})
	for _, p := range b.pulls {
		if p.follow && float64(p.Peak) > b.set.hand.Limit {
			b.fasterThanAHand(p)
		}
	}
}

func (b run) noTimeToMove(p *pull) {
	lost := p.landed.Lost
	message := fmt.Sprintf("%s leaves no time to move: %s is over", racked(b, p), seconds(p.land-p.start))
	if p.Asks.Reacts {
		message += fmt.Sprintf(" before the hand has reacted (%s)", seconds(hand.Reaction))
	}
	if lost > 0 {
		message += fmt.Sprintf(", and re-grips take %s", seconds(lost))
	}
	b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
		Code: "no-time-to-move", Severity: lang.Error, Message: message,
		Figures: []lang.Figure{figure("time_s", p.land-p.start), figure("lost_s", lost), figure("hand_deg", float64(p.HandDeg))},
	}, tries: func() []try { return append(b.longer(p), b.gearTry(p)...) }})
}

func (b run) fasterThanAHand(p *pull) {
	limit := b.set.hand.Limit
	f := finding{Diagnostic: lang.Diagnostic{
		Code: "faster-than-a-hand", Severity: lang.Error,
		Message: fmt.Sprintf("the hand would turn at %s deg/s at its fastest, and can do %s", plan.Decimal(float64(p.Peak), 0), plan.Decimal(limit, 0)),
		Figures: []lang.Figure{figure("peak_deg_s", float64(p.Peak)), figure("limit_deg_s", limit), figure("hand_deg", float64(p.HandDeg))},
	}}
	if !p.follow {
		f.tries = func() []try { return append(b.longer(p), b.gearTry(p)...) }
	}
	b.tellPull(p, f)
}

// longer offers the time that the rack needs: to land as wanted, or where that
// never comes, to be moved at all.
func (b run) longer(p *pull) []try {
	t := float64(p.Needed)
	if !p.Needed.Known() {
		lost := p.land - p.start - p.landed.Moving
		fastest := hand.PeakSpeed
		if p.Asks.Even {
			fastest = 1
		}
		t = lost + fastest*p.Asks.Travel/b.set.hand.Limit + 0.1
	}
	return b.overTry(p, ceilTo(t, 10))
}

func (b run) neverSure(p *pull) {
	b.tellPull(p, finding{Diagnostic: b.landing(p, "never-sure", fmt.Sprintf(
		"%s lands %s of the time however slowly it is pulled, and %s is wanted", racked(b, p), plan.PercentOf(p.landed.Ceiling, b.set.view.wanted), plan.Percent(b.set.view.wanted))),
		tries: func() []try { return append(b.landStop(p), b.gearTry(p)...) },
	})
}

func (b run) hardToLand(p *pull) {
	message := fmt.Sprintf("%s lands %s of the time, and %s is wanted", racked(b, p), plan.PercentOf(p.landed.Chance, b.set.view.wanted), plan.Percent(b.set.view.wanted))
	if p.Needed.Known() {
		message += fmt.Sprintf(": it needs %s", plan.Decimal(ceilTo(float64(p.Needed), 10), 1)+" s")
	}
	b.tellPull(p, finding{Diagnostic: b.landing(p, "hard-to-land", message), tries: func() []try {
		return append(append(b.longer(p), b.landStop(p)...), b.gearTry(p)...)
	}})
}

// landing is the diagnostic of a rack that may miss, with its figures.
func (b run) landing(p *pull, code, message string) lang.Diagnostic {
	width := p.Asks.Hi - p.Asks.Lo
	detail := fmt.Sprintf("Window %s, spread %s at the hand.", degrees(width), degrees(p.landed.Spread))
	if math.IsInf(width, 0) {
		detail = fmt.Sprintf("The ring's end holds one side of the window, spread %s at the hand.", degrees(p.landed.Spread))
	}
	d := lang.Diagnostic{
		Code: code, Severity: lang.Warning, Message: message, Detail: detail,
		Figures: []lang.Figure{
			figure("probability", p.landed.Chance), figure("ceiling", p.landed.Ceiling), figure("wanted", b.set.view.wanted),
			figure("spread_deg", p.landed.Spread), figure("hand_deg", float64(p.HandDeg)), figure("time_s", p.land-p.start),
		},
	}
	if !math.IsInf(width, 0) {
		d.Figures = append(d.Figures, figure("window_deg", width))
	}
	if p.Needed.Known() {
		d.Figures = append(d.Figures, figure("needed_s", float64(p.Needed)))
	}
	return d
}

// landStop offers the nearest smaller stop at which the rack lands as wanted.
func (b run) landStop(p *pull) []try {
	return b.stopTry(true, func() bool {
		needs, ok := b.handPull(p, p.start, p.land)
		return ok && b.enough(p, b.set.hand.Land(needs))
	})
}

// enough tells whether a landing is what is wanted of a rack: that it lands, or
// where no time would do, that some time does.
func (b run) enough(p *pull, l hand.Landing) bool {
	if p.landed.Ceiling < b.set.view.wanted {
		return l.Ceiling >= b.set.view.wanted
	}
	return l.Possible && l.Chance >= b.set.view.wanted && l.Peak <= b.set.hand.Limit
}

// gearTry offers another gear, nearest first, or with a gear a larger wheel.
func (b run) gearTry(p *pull) []try {
	var tries []try
	for _, g := range stops.GearsFrom(b.set.gear) {
		if b.landsWith(p, g, b.set.wheel) {
			tries = append(tries, try{lang.Cure{Text: "gear " + plan.Decimal(g, 2), Value: g, Unit: "gear"}, change{Gear: g}})
			break
		}
	}
	if !b.set.geared {
		return tries
	}
	for _, w := range []float64{0.10, 0.12, 0.14, 0.16, 0.20} {
		if w > b.set.wheel && b.landsWith(p, b.set.gear, w) {
			return append(tries, try{lang.Cure{Text: "wheel " + plan.Decimal(w*1000, 0) + " mm", Value: w * 1000, Unit: "mm"}, change{Wheel: w}})
		}
	}
	return tries
}

func (b run) landsWith(p *pull, gear, wheel float64) bool {
	needs := p.Asks
	k := gear / b.set.gear
	needs.Travel, needs.Lo, needs.Hi, needs.SigmaX, needs.Rim = needs.Travel*k, needs.Lo*k, needs.Hi*k, needs.SigmaX*k, wheel
	return b.enough(p, b.set.hand.Land(needs))
}
