// falls-behind: the hand that follows lags by more than the window.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkFallsBehind(b run) {
	for _, p := range b.pulls {
		if !p.follow {
			continue
		}
		if t, ok := b.fallsBehind(p); ok {
			b.tellFallsBehind(p, t)
		}
	}
}

// fallsBehind finds the first moment at which a follow lags by more than what
// is sharp on that side.
func (b run) fallsBehind(p *pull) (t float64, ok bool) {
	for _, t := range p.changes() {
		if p.lagAt(t) > b.room(p, t) {
			return t, true
		}
	}
	return 0, false
}

func (b run) tellFallsBehind(p *pull, t float64) {
	lag, room := p.lagAt(t), b.room(p, t)
	b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
		Code: "falls-behind", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("at %s the focus falls %s behind %s, and only %s is sharp on that side", seconds(t), metres(lag), p.to(), metres(room)),
		Figures: []lang.Figure{figure("lag_m", lag), figure("room_m", room)},
	}, tries: func() []try {
		return b.stopTry(true, func() bool {
			_, behind := b.fallsBehind(p)
			return !behind
		})
	}})
}

// room is how far the focus may be off at t, metres.
func (b run) room(p *pull, t float64) float64 {
	x := b.lensDistance(&p.goal, t)
	lo, hi := b.shot.Setting(t).Window(x)
	return min(x-lo, hi-x)
}
