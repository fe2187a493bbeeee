package plan

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/hand"
)

// anyRack returns a rack as the hand model lands it: with or without a reaction,
// re-grips, and time enough.
func anyRack(t *rapid.T) (p *Pull, l hand.Landing) {
	h := hand.Default()
	asks := hand.Pull{
		Travel: rapid.Float64Range(1, 900).Draw(t, "travel"), Time: rapid.Float64Range(0.05, 8).Draw(t, "time"),
		Reacts: rapid.Bool().Draw(t, "reacts"), Even: rapid.Bool().Draw(t, "even"), Lo: -1, Hi: 1,
	}
	l = h.Land(asks)
	start := Number(rapid.Float64Range(0, 20).Draw(t, "start"))
	p = &Pull{Kind: "rack", Profile: "smooth", Start: start, Land: start + Number(asks.Time), Asks: asks, Regrips: l.Regrips}
	if asks.Even {
		p.Profile = "even"
	}
	if l.Regrips > 0 {
		p.LostEach = l.Lost / float64(l.Regrips)
	}
	return p, l
}

// The ring goes all the way and never back, it stands during the reaction and while the
// hand takes hold anew, and nowhere is it faster than the speed that is printed.
func TestTurned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, l := anyRack(t)
		if p.Turned(float64(p.Start)) != 0 || p.Turned(float64(p.Land)+1e-9) != 1 {
			t.Fatalf("from %v to %v", p.Turned(float64(p.Start)), p.Turned(float64(p.Land)+1e-9))
		}
		const steps = 6000
		dt := float64(p.Land-p.Start) / steps
		fastest, last := 0.0, 0.0
		for i := 1; i <= steps; i++ {
			now := p.Turned(float64(p.Start) + float64(i)*dt)
			if now < last-1e-12 {
				t.Fatalf("it goes back at step %d", i)
			}
			fastest, last = max(fastest, (now-last)/dt), now
		}
		if !l.Possible {
			return
		}
		if strokes := float64(p.Land-p.Start) / p.strokes().each; strokes < 60 && math.Abs(fastest*p.Asks.Travel/l.Peak-1) > 0.01 {
			t.Fatalf("the steepest slope is %v deg/s, and %v is printed", fastest*p.Asks.Travel, l.Peak)
		}
		stands := func(from, to float64) {
			if a, b := p.Turned(from+1e-7), p.Turned(to-1e-7); math.Abs(a-b) > 1e-9 {
				t.Fatalf("it turns from %v to %v between %v and %v", a, b, from, to)
			}
		}
		if p.Asks.Reacts {
			stands(float64(p.Start), float64(p.Start)+hand.Reaction)
		}
		lets := p.LetsGo()
		if len(lets) != l.Regrips {
			t.Fatalf("it lets go %d times, and %d are counted", len(lets), l.Regrips)
		}
		for i, at := range lets {
			if p.LostEach > 1e-5 {
				stands(at, at+p.LostEach)
			}
			if want := float64(i+1) / float64(len(lets)+1); math.Abs(p.Turned(at+p.LostEach/2)-want) > 1e-9 {
				t.Fatalf("after stroke %d it has gone %v of its way", i+1, p.Turned(at+p.LostEach/2))
			}
		}
		if keys := p.Keys(); keys[0] != float64(p.Start) || keys[len(keys)-1] != float64(p.Land) || !slices.IsSorted(keys) {
			t.Fatalf("keys %v", keys)
		}
	})
}

// Where the hand has no time, or nothing is known of it, the ring takes all of the time.
func TestTurnedWithoutHand(t *testing.T) {
	for _, p := range []*Pull{
		{Kind: "rack", Profile: "even", Start: 1, Land: 3, Asks: hand.Pull{Travel: math.NaN(), Reacts: true}},
		{Kind: "rack", Profile: "even", Start: 1, Land: 3, Regrips: 5, LostEach: 0.39, Asks: hand.Pull{Travel: 700, Reacts: true}},
	} {
		for _, at := range []float64{1.02, 2, 2.9} {
			if got := p.Turned(at); math.Abs(got-(at-1)/2) > 1e-12 {
				t.Errorf("%+v: %v at %v s", p, got, at)
			}
		}
	}
}
