// falls-behind: the hand that follows lags by more than the window.

package interp

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/hand"
	"pullscore/lang"
)

func checkFallsBehind(b *builder) {
	for _, p := range b.pulls {
		if !p.follow {
			continue
		}
		for _, m := range b.stage.moves {
			if b.lagsOut(p, m) {
				break
			}
		}
	}
}

// lagsOut tells of the first move that leaves a follow behind.
func (b *builder) lagsOut(p *pull, m *move) bool {
	a := b.acceleration(p, m)
	if a == 0 {
		return false
	}
	lag := hand.Lag(a)
	room, at := b.room(p, m)
	if lag <= room {
		return false
	}
	b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
		Code: "falls-behind", Severity: lang.Warning, Time: at,
		Message: fmt.Sprintf("the focus falls %s behind %s, and only %s is sharp on that side", metres(lag), p.to(), metres(room)),
		Figures: []lang.Figure{figure("lag_m", lag), figure("room_m", room)},
		Related: []lang.Related{{Message: "with this move", Range: m.stmt.Range()}},
	}, tries: func() []try {
		return b.stopTry(true, func() bool {
			return !slices.ContainsFunc(b.stage.moves, func(m *move) bool {
				room, _ := b.room(p, m)
				a := b.acceleration(p, m)
				return a > 0 && hand.Lag(a) > room
			})
		})
	}})
	return true
}

// room is how far the focus may be off while the subject makes a move, metres,
// where it is tightest: at its start and end.
func (b *builder) room(p *pull, m *move) (room, at float64) {
	room = math.Inf(1)
	for _, t := range []float64{max(m.start, p.start), min(m.end, p.land)} {
		x := b.lensDistance(&p.goal, t)
		lo, hi := b.shot.Setting(t).Window(x)
		if r := min(x-lo, hi-x); r < room {
			room, at = r, t
		}
	}
	return room, at
}
