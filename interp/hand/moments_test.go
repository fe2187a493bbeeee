// Properties of moments: what must hold of rests, of moving landings and of the ends
// of the ring, whatever the numbers.

package hand

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// anyZone draws a zone with its middle inside, metres.
func anyZone(t *rapid.T) (lo, hi float64) {
	edge := rapid.OneOf(rapid.Float64Range(1e-4, 0.5), rapid.Just(inf))
	return -edge.Draw(t, "near"), edge.Draw(t, "far")
}

func TestRestsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo, hi := anyZone(t)
		sway, long := rapid.Float64Range(0, 0.2).Draw(t, "sway"), rapid.Float64Range(0, 60).Draw(t, "seconds")
		share, stays := Within(lo, hi, sway, 0), Stays(lo, hi, sway, long)
		if !(stays >= 0 && stays <= share && share <= 1) {
			t.Fatalf("stays %v, share %v", stays, share)
		}
		more := sway + rapid.Float64Range(0, 0.2).Draw(t, "more sway")
		if Within(lo, hi, more, 0) > share+1e-12 || Stays(lo, hi, more, long) > stays+1e-9 {
			t.Fatalf("with a sway of %v more often than with %v", more, sway)
		}
		if later := Stays(lo, hi, sway, long+rapid.Float64Range(0, 60).Draw(t, "more time")); later > stays {
			t.Fatalf("for longer more often: %v, %v", later, stays)
		}
		wider := hi + rapid.Float64Range(0, 0.2).Draw(t, "wider")
		if Within(lo, wider, sway, 0) < share || Stays(lo, wider, sway, long) < stays-1e-9 {
			t.Fatal("a wider zone is worse")
		}
		if left := SwayLeft(sway); left > sway {
			t.Fatalf("following leaves %v of %v", left, sway)
		}
	})
}

// A hard stop never costs, no chance is over its ceiling, and a walker is no easier
// than one who stands: but for the 0.14 % of hands that fall short of a stop though they
// aim three spreads past it, which a smaller spread may have besides.
func TestStopsOfTheRingHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, p := anyHand(t), anyPull(t)
		h.Bias, p.Stopped = 0, true
		p.Hi = rapid.Float64Range(0, 20).Draw(t, "hi")
		p.ToStop = rapid.Float64Range(0, p.Hi).Draw(t, "to the stop")
		if rapid.Bool().Draw(t, "open behind the stop") {
			p.Hi = inf
		}
		free := p
		free.Stopped = false
		l, without := h.Land(p), h.Land(free)
		if l.Chance < without.Chance || l.Ceiling < without.Ceiling {
			t.Fatalf("with the stop %+v, without %+v", l, without)
		}
		if l.Chance > l.Ceiling+1e-12 || l.Ceiling > 1 {
			t.Fatalf("chance %v, ceiling %v", l.Chance, l.Ceiling)
		}
		walks := p
		walks.SigmaX = math.Hypot(p.SigmaX, rapid.Float64Range(0, 5).Draw(t, "of one who walks"))
		if m := h.Land(walks); m.Chance > l.Chance+2e-3 {
			t.Fatalf("a walker %v, one who stands %v", m.Chance, l.Chance)
		}
		wanted := rapid.Float64Range(0.01, 0.99).Draw(t, "wanted")
		if need, ok := h.Needed(p, wanted); ok {
			p.Time = need
			if m := h.Land(p); p.Travel > 0 && (!m.Possible || m.Chance < wanted || m.Peak > h.Limit) {
				t.Fatalf("in the needed %v s: %+v", need, m)
			}
		}
	})
}
