package hand

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// turn is a rack from one angle to another, in a window of that width.
func turn(from, to, start, land, window float64) Turn {
	return Turn{From: from, To: to, Least: min(from, to), Most: max(from, to), Start: start, Land: land, Window: window}
}

func TestClock(t *testing.T) {
	for deg, want := range map[float64]float64{0: 12, 30: 1, 90: 3, 120: 4, -30: 11, -60: 10, 180: 6, -180: 6, 360: 12, -360: 12, 735: 0.5, -1e-18: 12} {
		if got := Clock(deg); got != want {
			t.Errorf("%v deg: %v o'clock, want %v", deg, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(-1e6, 1e6).Draw(t, "deg")
		h := Clock(deg)
		if !(h > 0 && h <= 12) {
			t.Fatalf("%v o'clock", h)
		}
		if off := math.Abs(math.Remainder(h*30-deg, 360)); off > 1e-6 {
			t.Fatalf("%v o'clock is %v deg off", h, off)
		}
	})
}

// The figures are worked out by hand for a grip of 120 degrees: 60 each way.
func TestHolds(t *testing.T) {
	open := math.Inf(1)
	for name, test := range map[string]struct {
		turns []Turn
		want  []Hold
	}{
		"lands at 12": {
			[]Turn{turn(200, 240, 0, 1, 5)}, []Hold{{From: -40, OK: true}},
		},
		"starts at the end of the arc": {
			[]Turn{turn(200, 100, 0, 1, 5)}, []Hold{{From: 60, To: -40, OK: true}},
		},
		"the whole arc": {
			[]Turn{turn(0, 120, 0, 1, 5)}, []Hold{{From: -60, To: 60, OK: true}},
		},
		"a re-grip": {
			[]Turn{turn(0, 150, 0, 1, 5)}, []Hold{{From: -60, Regrips: 1, Regrip: 60, RegripTo: -30, OK: true}},
		},
		"two re-grips": {
			[]Turn{turn(0, -340, 0, 1, 5)}, []Hold{{From: 60, To: -40, Regrips: 2, Regrip: -60, RegripTo: 60, OK: true}},
		},
		"time to take hold anew": {
			[]Turn{turn(0, 40, 0, 1, 5), turn(40, -10, 1.4, 2, 5)}, []Hold{{From: -40, OK: true}, {From: 50, OK: true}},
		},
		"no time: equal windows": {
			[]Turn{turn(0, 40, 0, 1, 5), turn(40, -10, 1.2, 2, 5)}, []Hold{{From: -15, To: 25, OK: true}, {From: 25, To: -25, Kept: true, OK: true}},
		},
		"no time: one is open": {
			[]Turn{turn(0, 40, 0, 1, open), turn(40, -10, 1.2, 2, 5)}, []Hold{{From: 10, To: 50, OK: true}, {From: 50, Kept: true, OK: true}},
		},
		"no time: all are open": {
			[]Turn{turn(0, 40, 0, 1, open), turn(40, -10, 1.2, 2, open)}, []Hold{{From: -15, To: 25, OK: true}, {From: 25, To: -25, Kept: true, OK: true}},
		},
		"no time: windows of 2 and 6": {
			[]Turn{turn(0, 40, 0, 1, 2), turn(40, 0, 1.2, 2, 6)}, []Hold{{From: -30, To: 10, OK: true}, {From: 10, To: -30, Kept: true, OK: true}},
		},
		"too far for one hold": {
			[]Turn{turn(0, 60, 0, 1, 5), turn(60, 110, 1.3, 2, 5), turn(110, 150, 2.1, 3, 5)},
			[]Hold{{From: -60, OK: true}, {From: 0, To: 50, Kept: true, OK: true}, {From: -40, Hurried: true, OK: true}},
		},
		"a chain goes on after a re-grip": {
			[]Turn{turn(0, 150, 0, 1, 5), turn(150, 130, 1.1, 2, 5)},
			[]Hold{{From: -60, To: 10, Regrips: 1, Regrip: 60, RegripTo: -20, OK: true}, {From: 10, To: -10, Kept: true, OK: true}},
		},
		"what is not known breaks a chain": {
			[]Turn{turn(0, 40, 0, 1, 5), turn(math.NaN(), 60, 1.1, 2, 5), turn(60, 40, 2.1, 3, 5)},
			[]Hold{{From: -40, OK: true}, {}, {From: 20, OK: true}},
		},
		"a follow that turns back": {
			[]Turn{{From: 0, To: 10, Least: -50, Most: 20, Window: 5, Backs: true}}, []Hold{{From: -10, OK: true}},
		},
		"a follow over more than a grip": {
			[]Turn{{From: 0, To: 10, Least: -100, Most: 20.1, Window: 5, Backs: true}}, []Hold{{}},
		},
	} {
		if got := Default().Holds(test.turns); !slices.EqualFunc(got, test.want, alike) {
			t.Errorf("%s: %+v, want %+v", name, got, test.want)
		}
	}
}

// alike tells whether two holds are the same to a billionth of a degree.
func alike(a, b Hold) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) < 1e-9 }
	return near(a.From, b.From) && near(a.To, b.To) && near(a.Regrip, b.Regrip) && near(a.RegripTo, b.RegripTo) &&
		a.Regrips == b.Regrips && a.Kept == b.Kept && a.Hurried == b.Hurried && a.OK == b.OK
}

// anyTurns draws the pulls of a shot, one after the other on the ring.
func anyTurns(t *rapid.T) []Turn {
	at, now := 0.0, 0.0
	turns := make([]Turn, rapid.IntRange(1, 7).Draw(t, "pulls"))
	for i := range turns {
		to := at + rapid.Float64Range(-300, 300).Draw(t, "travel")
		start := now + rapid.OneOf(rapid.Float64Range(0, 0.38), rapid.Float64Range(0.4, 3)).Draw(t, "rest")
		turns[i] = turn(at, to, start, start+1, rapid.OneOf(rapid.Float64Range(0.01, 40), rapid.Just(inf)).Draw(t, "window"))
		at, now = to, turns[i].Land
	}
	return turns
}

// Whatever the pulls, the thumb goes as far as the ring, no place of it lies outside
// the arc, and a hand that has no time to let go is where it has landed.
func TestHoldsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Default()
		h.Grip = rapid.Float64Range(20, 200).Draw(t, "grip")
		turns := anyTurns(t)
		holds := h.Holds(turns)
		for i, o := range holds {
			travel := o.To - o.From
			if o.Regrips > 0 { // each but the last takes it back to where it started
				travel += float64(o.Regrips-1)*(o.Regrip-o.From) + o.Regrip - o.RegripTo
			}
			if off := travel - (turns[i].To - turns[i].From); !o.OK || math.Abs(off) > 1e-6 {
				t.Fatalf("pull %d: the thumb goes %v, the ring %v", i+1, travel, turns[i].To-turns[i].From)
			}
			for _, at := range []float64{o.From, o.To, o.Regrip, o.RegripTo} {
				if math.Abs(at) > h.Grip/2+1e-6 {
					t.Fatalf("pull %d: %v is outside the arc of %v", i+1, at, h.Grip)
				}
			}
			gap := inf
			if i > 0 {
				gap = turns[i].Start - turns[i-1].Land
			}
			if o.Kept && math.Abs(o.From-holds[i-1].To) > 1e-6 || o.Kept && gap >= Regrip || o.Hurried && gap >= Regrip {
				t.Fatalf("pull %d after a rest of %v: %+v after %+v", i+1, gap, o, holds[max(i-1, 0)])
			}
			if gap < Regrip && !o.Kept && !o.Hurried {
				t.Fatalf("pull %d has no time to take hold anew: %+v", i+1, o)
			}
			if n := h.Land(Pull{Travel: math.Abs(turns[i].To - turns[i].From), Time: 1}).Regrips; n != o.Regrips {
				t.Fatalf("pull %d has %d re-grips and not %d", i+1, o.Regrips, n)
			}
		}
	})
}

// No other start of a chain that fits the arc lands nearer 12 o'clock, in squares by
// the windows; and the other way round everything is the mirror image.
func TestHoldsAreBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Default()
		turns := anyTurns(t)
		for i := range turns { // so that all fit one grip, with no time to let go
			shrink := func(v *float64) { *v *= h.Grip / 4200 }
			shrink(&turns[i].From)
			shrink(&turns[i].To)
			shrink(&turns[i].Least)
			shrink(&turns[i].Most)
			turns[i].Start, turns[i].Land = float64(i), float64(i)+0.9
		}
		by := rapid.Float64Range(-60, 60).Draw(t, "shifted by")
		sum, other, narrow := 0.0, 0.0, false
		for i, o := range h.Holds(turns) {
			if w := weigh(turns[i].Window); w > 0 {
				narrow = true
				sum, other = sum+w*o.To*o.To, other+w*(o.To+by)*(o.To+by)
			}
			if math.Abs(o.To+by) > h.Grip/2 || math.Abs(o.From+by) > h.Grip/2 {
				other = inf
			}
		}
		if narrow && sum > other+1e-6 {
			t.Fatalf("shifted by %v it is better: %v, not %v", by, other, sum)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		turns := anyTurns(t)
		mirrored := slices.Clone(turns)
		for i, u := range turns {
			mirrored[i].From, mirrored[i].To, mirrored[i].Least, mirrored[i].Most = -u.From, -u.To, -u.Most, -u.Least
		}
		there := Default().Holds(mirrored)
		for i, o := range Default().Holds(turns) {
			o.From, o.To, o.Regrip, o.RegripTo = -o.From, -o.To, -o.Regrip, -o.RegripTo
			if !alike(o, there[i]) {
				t.Fatalf("pull %d: %+v, mirrored %+v", i+1, o, there[i])
			}
		}
	})
}
