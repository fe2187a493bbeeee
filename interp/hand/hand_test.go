package hand

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var inf = math.Inf(1)

// anyHand draws a hand, anyPull a pull that a ring could ask for.
func anyHand(t *rapid.T) Hand {
	return Hand{
		Throughput: rapid.Float64Range(1, 10).Draw(t, "throughput"),
		RimSpread:  rapid.Float64Range(0, 0.002).Draw(t, "rim spread"),
		Bias:       rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(-6, 6)).Draw(t, "bias"),
		Grip:       rapid.Float64Range(30, 200).Draw(t, "grip"),
		Limit:      rapid.Float64Range(100, 3000).Draw(t, "limit"),
	}
}

func anyPull(t *rapid.T) Pull {
	edge := rapid.OneOf(rapid.Float64Range(0, 20), rapid.Just(inf))
	return Pull{
		Travel: rapid.OneOf(rapid.Float64Range(0, 600), rapid.Just(0.0)).Draw(t, "travel"),
		Time:   rapid.Float64Range(0, 8).Draw(t, "time"),
		Reacts: rapid.Bool().Draw(t, "reacts"),
		Even:   rapid.Bool().Draw(t, "even"),
		Lo:     -edge.Draw(t, "lo"),
		Hi:     edge.Draw(t, "hi"),
		Rim:    rapid.Float64Range(0.04, 0.15).Draw(t, "rim"),
		SigmaX: rapid.Float64Range(0, 3).Draw(t, "sigma x"),
	}
}

// More time never hurts a hand whose mean landing lies in the window, nor does
// a shorter way; the chance never passes its ceiling.
func TestChanceRisesWithTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, p := anyHand(t), anyPull(t)
		if h.Bias < p.Lo || h.Bias > p.Hi {
			h.Bias = 0
		}
		l := h.Land(p)
		later := p
		later.Time += rapid.Float64Range(0, 4).Draw(t, "more time")
		if m := h.Land(later); m.Chance < l.Chance-1e-12 || m.Spread > l.Spread || m.Peak > l.Peak {
			t.Fatalf("%+v at %v s, %+v at %v s", l, p.Time, m, later.Time)
		}
		nearer := p
		nearer.Travel *= rapid.Float64Range(0, 1).Draw(t, "share of the way")
		if m := h.Land(nearer); m.Chance < l.Chance-1e-12 {
			t.Fatalf("%v over %v deg, %v over %v deg", l.Chance, p.Travel, m.Chance, nearer.Travel)
		}
		if l.Chance > l.Ceiling+1e-12 || l.Ceiling > 1 {
			t.Fatalf("chance %v, ceiling %v", l.Chance, l.Ceiling)
		}
		if p.Travel == 0 && (l.Chance != l.Ceiling || !l.Possible) {
			t.Fatalf("a pull of no travel: %+v", l)
		}
	})
}

// Needed is the inverse of Land: in the time that it gives the pull lands as
// wanted, and in any less it does not.
func TestNeededIsInverseOfLand(t *testing.T) {
	found, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		h, p := anyHand(t), anyPull(t)
		wanted := rapid.Float64Range(0.01, 0.999).Draw(t, "wanted")
		lands := func(seconds float64) bool {
			p.Time = seconds
			l := h.Land(p)
			return l.Possible && l.Chance >= wanted && l.Peak <= h.Limit
		}
		need, ok := h.Needed(p, wanted)
		if !ok {
			refused++
			// No time on a grid does it either, up to one that is for ever.
			for i := range 400 {
				if s := 0.02 * math.Pow(1.025, float64(i)); lands(s) {
					t.Fatalf("it lands in %v s, but no time is said to do", s)
				}
			}
			return
		}
		found++
		if !lands(need) {
			t.Fatalf("in the needed %v s it does not land: %+v", need, h.Land(p))
		}
		sooner := need - 2*timeTolerance - rapid.Float64Range(0, 1).Draw(t, "how much sooner")*need
		if lands(sooner) && p.Travel > 0 {
			t.Fatalf("%v s is said to be needed, but %v s does", need, sooner)
		}
	})
	if found == 0 || refused == 0 {
		t.Errorf("%d found, %d refused: a side is not tested", found, refused)
	}
}

func TestNeeded(t *testing.T) {
	h := Default()
	window := Pull{Travel: 60, Lo: -1.5, Hi: 1.5}
	tests := []struct {
		name   string
		change func(*Hand, *Pull)
		wanted float64
		ok     bool
	}{
		{"an ordinary rack", func(*Hand, *Pull) {}, 0.9, true},
		{"a window too narrow for any hand", func(_ *Hand, p *Pull) { p.Lo, p.Hi = -0.5, 0.5 }, 0.9, false},
		{"a mean landing outside the window", func(h *Hand, _ *Pull) { h.Bias = 3 }, 0.6, false},
		{"hit by luck from outside", func(h *Hand, _ *Pull) { h.Bias = 3 }, 0.2, true},
		{"outside, with the stop behind", func(h *Hand, p *Pull) { h.Bias, p.Hi, p.Lo = -1, inf, 1 }, 0.3, true},
		{"outside, with the stop before", func(h *Hand, p *Pull) { h.Bias, p.Hi, p.Lo = 3, 1, -inf }, 0.3, true},
		{"a stop on both sides", func(_ *Hand, p *Pull) { p.Lo, p.Hi = -inf, inf }, 1, true},
		{"nothing to turn", func(_ *Hand, p *Pull) { p.Travel = 0 }, 0.9, true},
		{"an empty window", func(_ *Hand, p *Pull) { p.Lo, p.Hi = 2, -2 }, 0.9, false},
		{"infinite travel", func(_ *Hand, p *Pull) { p.Travel = inf }, 0.9, false},
		{"travel that is no number", func(_ *Hand, p *Pull) { p.Travel = math.NaN() }, 0.9, false},
		{"a hand without throughput", func(h *Hand, _ *Pull) { h.Throughput = 0 }, 0.9, false},
		{"a chance that is no number", func(*Hand, *Pull) {}, math.NaN(), false},
		{"more than certain", func(*Hand, *Pull) {}, 1.1, false},
	}
	for _, tt := range tests {
		h, p := h, window
		tt.change(&h, &p)
		if s, ok := h.Needed(p, tt.wanted); ok != tt.ok || s < 0 || math.IsNaN(s) {
			t.Errorf("%s: %v, %t, want %t", tt.name, s, ok, tt.ok)
		}
	}
	// Between two stops only the limit of the hand and its re-grips take time.
	p := Pull{Travel: 100, Lo: -inf, Hi: inf, Reacts: true}
	if s, _ := h.Needed(p, 1); math.Abs(s-(Reaction+0.1875)) > 1e-8 {
		t.Errorf("100 deg at 1000 deg/s at most take %v s, want 0.3475", s)
	}
}

// Whatever stands in a pull or hand, chances are from 0 to 1 and nothing
// panics.
func TestLandAnything(t *testing.T) {
	odd := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{
		0, -1, 1, 60, 1e-320, 1e18, 1e308, inf, -inf, math.NaN(),
	}))
	rapid.Check(t, func(t *rapid.T) {
		h := Default()
		if rapid.Bool().Draw(t, "odd hand") {
			h = Hand{
				Throughput: odd.Draw(t, "throughput"), RimSpread: odd.Draw(t, "spread"), Bias: odd.Draw(t, "bias"),
				Grip: odd.Draw(t, "grip"), Limit: odd.Draw(t, "limit"), Slips: odd.Draw(t, "slips"),
			}
		}
		p := Pull{
			Travel: odd.Draw(t, "travel"), Time: odd.Draw(t, "time"), Reacts: rapid.Bool().Draw(t, "reacts"),
			Lo: odd.Draw(t, "lo"), Hi: odd.Draw(t, "hi"), Rim: odd.Draw(t, "rim"), SigmaX: odd.Draw(t, "sigma"),
		}
		l := h.Land(p)
		if !(l.Chance >= 0 && l.Chance <= 1 && l.Ceiling >= 0 && l.Ceiling <= 1) || l.Regrips < 0 {
			t.Fatalf("%+v", l)
		}
		h.Needed(p, 0.9)
	})
}

// A re-grip costs nothing at the end of a grip, all of its time 40 degrees on,
// and the cost never jumps.
func TestRegrips(t *testing.T) {
	h := Default()
	tests := []struct {
		travel float64
		n      int
		lost   float64
	}{
		{0, 0, 0}, {120, 0, 0}, {120.0001, 1, 0}, {140, 1, Regrip / 2}, {160, 1, Regrip},
		{240, 1, Regrip}, {260, 2, 1.5 * Regrip}, {360, 2, 2 * Regrip}, {600, 4, 4 * Regrip},
	}
	for _, tt := range tests {
		l := h.Land(Pull{Travel: tt.travel, Time: 10})
		if l.Regrips != tt.n || math.Abs(l.Lost-tt.lost) > 1e-5 || math.Abs(l.Moving-(10-tt.lost)) > 1e-5 {
			t.Errorf("%v deg: %d re-grips lose %v s of 10 and leave %v, want %d and %v",
				tt.travel, l.Regrips, l.Lost, l.Moving, tt.n, tt.lost)
		}
	}
	if l := h.Land(Pull{Travel: 60, Time: Reaction, Reacts: true}); l.Possible || l.Chance != 0 {
		t.Errorf("no time is left after the reaction: %+v", l)
	}
}

func TestMinJerk(t *testing.T) {
	if MinJerk(0) != 0 || MinJerk(1) != 1 || MinJerk(-1) != 0 || MinJerk(2) != 1 {
		t.Error("the ends are not 0 and 1")
	}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.Float64Range(0, 1).Draw(t, "u")
		v := rapid.Float64Range(0, 1).Draw(t, "v")
		if (u-v)*(MinJerk(u)-MinJerk(v)) < 0 {
			t.Fatalf("not monotone between %v and %v", u, v)
		}
		if sum := MinJerk(u) + MinJerk(1-u); math.Abs(sum-1) > 1e-12 {
			t.Fatalf("not symmetric at %v: %v", u, sum)
		}
		const h = 1e-5
		m := h + u*(1-2*h)
		if d := (MinJerk(m+h) - MinJerk(m-h)) / (2 * h); math.Abs(d-MinJerkSpeed(m)) > 1e-8 {
			t.Fatalf("speed at %v is %v, by differences %v", m, MinJerkSpeed(m), d)
		}
		if d := (MinJerkSpeed(m+h) - MinJerkSpeed(m-h)) / (2 * h); math.Abs(d-MinJerkAcceleration(m)) > 1e-7 {
			t.Fatalf("acceleration at %v is %v, by differences %v", m, MinJerkAcceleration(m), d)
		}
		if MinJerkSpeed(u) > PeakSpeed || math.Abs(MinJerkAcceleration(u)) > PeakAcceleration+1e-12 {
			t.Fatalf("above its peaks at %v", u)
		}
		if back := MinJerk(MinJerkTime(u)); math.Abs(back-u) > 1e-12 {
			t.Fatalf("MinJerkTime(%v) leads to %v", u, back)
		}
	})
	// Flash & Hogan 1985: the peaks are reached, at 1/2 and at (3 - sqrt 3)/6.
	if got := MinJerkAcceleration((3 - math.Sqrt(3)) / 6); math.Abs(got-PeakAcceleration) > 1e-12 {
		t.Errorf("peak acceleration %v, want %v", got, PeakAcceleration)
	}
	if got := MinJerkSpeed(0.5); got != PeakSpeed {
		t.Errorf("peak speed %v, want %v", got, PeakSpeed)
	}
}

// The travel that a minimum-jerk movement of Land's peak speed makes is the
// travel asked for: speed over the movement adds up to it.
func TestPeakBelongsToTravel(t *testing.T) {
	h := Default()
	l := h.Land(Pull{Travel: 90, Time: 0.9})
	const steps = 10_000
	sum := 0.0
	for i := range steps {
		u := (float64(i) + 0.5) / steps
		sum += l.Peak * MinJerkSpeed(u) / PeakSpeed * l.Moving / steps
	}
	if math.Abs(sum-90) > 1e-4 {
		t.Errorf("a peak of %v deg/s over %v s turns %v deg, want 90", l.Peak, l.Moving, sum)
	}
	if l := h.Land(Pull{Travel: 90, Time: 0.9, Even: true}); math.Abs(l.Peak*l.Moving-90) > 1e-9 {
		t.Errorf("even: %v deg/s over %v s", l.Peak, l.Moving)
	}
}

// The share of slips lessens chance and ceiling alike, and a pull that has to be
// surer than that has no time.
func TestSlipsLessenEveryChance(t *testing.T) {
	p := Pull{Travel: 60, Time: 0.9, Lo: -1.5, Hi: 1.5}
	h := Default()
	without := h.Land(p)
	h.Slips = 0.04
	with := h.Land(p)
	if math.Abs(with.Chance-0.96*without.Chance) > 1e-12 || math.Abs(with.Ceiling-0.96*without.Ceiling) > 1e-12 || with.Spread != without.Spread {
		t.Errorf("%+v with slips, %+v without", with, without)
	}
	p.Lo, p.Hi = -20, 20
	if _, ok := h.Needed(p, 0.97); ok {
		t.Error("a hand that slips in 4 of 100 pulls is said to land 97")
	}
	if _, ok := h.Needed(p, 0.95); !ok {
		t.Error("a hand that slips in 4 of 100 pulls is said never to land 95")
	}
}
