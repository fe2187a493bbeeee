// falls-behind: the hand that follows lags by more than the window.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var fallsBehind = Check{Codes: []rule.Code{rule.FallsBehind}, Run: lags}

func lags(b *Shot) (found []Finding) {
	for _, p := range b.Pulls {
		if !p.Rack.Follow {
			continue
		}
		if l, ok := firstBehind(&b.Built, p); ok {
			found = append(found, b.behind(p, l))
		}
	}
	return found
}

// firstBehind finds the first moment at which a follow lags by more than what
// is sharp on that side.
func firstBehind(b *shot.Built, p *shot.Pull) (l shot.Lag, ok bool) {
	for _, l := range p.Lags {
		if l.Metres > room(b, p, l.T) {
			return l, true
		}
	}
	return l, false
}

func (b *Shot) behind(p *shot.Pull, l shot.Lag) Finding {
	t, lag, room := l.T, l.Metres, room(&b.Built, p, l.T)
	return b.about(p, Finding{Diagnostic: lang.Diagnostic{
		Code: "falls-behind", Severity: lang.Warning, Time: t,
		Message: fmt.Sprintf("at %s the focus falls %s behind %s, and only %s is sharp on that side", b.units.Time(t), b.units.Gap(lag), p.Rack.ToText(), b.units.Gap(room)),
		Figures: []lang.Figure{figure("lag_m", lag), figure("room_m", room)},
	}, Tries: func() []change.Change {
		return b.stopTry(true, func(at *shot.Built) bool {
			_, behind := firstBehind(at, p)
			return !behind
		})
	}})
}

// room is how far the focus may be off at t, metres.
func room(b *shot.Built, p *shot.Pull, t float64) float64 {
	x := b.LensDistance(&p.Rack.Aim, t)
	lo, hi := b.Plan.Setting(t).Window(x)
	return min(x-lo, hi-x)
}
