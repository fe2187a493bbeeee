// falls-behind: the hand that follows lags by more than the window.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
)

func checkFallsBehind(b Run) {
	for _, p := range b.Pulls {
		if !p.Follow {
			continue
		}
		if t, ok := b.fallsBehind(p); ok {
			b.tellFallsBehind(p, t)
		}
	}
}

// fallsBehind finds the first moment at which a follow lags by more than what
// is sharp on that side.
func (b Run) fallsBehind(p *clock.Pull) (t float64, ok bool) {
	for _, t := range p.Changes() {
		if p.LagAt(t) > b.room(p, t) {
			return t, true
		}
	}
	return 0, false
}

func (b Run) tellFallsBehind(p *clock.Pull, t float64) {
	lag, room := p.LagAt(t), b.room(p, t)
	b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "falls-behind", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("at %s the focus falls %s behind %s, and only %s is sharp on that side", inwords.Seconds(t), inwords.Metres(lag), p.ToText(), inwords.Metres(room)),
		Figures: []lang.Figure{shot.Figure("lag_m", lag), shot.Figure("room_m", room)},
	}, Tries: func() []change.Change {
		return b.stopTry(true, func() bool {
			_, behind := b.fallsBehind(p)
			return !behind
		})
	}})
}

// room is how far the focus may be off at t, metres.
func (b Run) room(p *clock.Pull, t float64) float64 {
	x := b.LensDistance(&p.Aim, t)
	lo, hi := b.Shot.Setting(t).Window(x)
	return min(x-lo, hi-x)
}
