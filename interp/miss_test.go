package interp_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
	"pullscore/interp/plan"
)

// kitOfMiss is a lens of 50 mm whose ring has 280 degrees.
func kitOfMiss(stop string) string {
	return "plan \"miss\"\nrate 24\nwatched on 12 m screen from 18 m\ncamera A\n  sensor 24.89 x 14 mm\n  records 3840 px\n  on tripod\n" +
		"lens \"L\"\n  focal 50 mm\n  closest 50 cm\n  ring 280 deg, diameter 110 mm\n  stops f/1.4 to f/22\nwith camera A, lens \"L\", stop " + stop + "\n"
}

// Somebody who misses the mark by just what they may is as soft as still is sharp:
// the lens itself says so, with the tape from the sensor too. Deeper people may miss
// less, and what is not sharp is seen no sooner than it is soft.
func TestMissIsTheEdgeOfSharp(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		stop := rapid.SampledFrom([]string{"f/1.4", "f/2.8", "f/5.6", "f/16"}).Draw(r, "stop")
		d, deep := rapid.Float64Range(0.7, 12).Draw(r, "at"), rapid.Float64Range(0, 0.3).Draw(r, "deep")
		sh, _ := shotOf(t, kitOfMiss(stop)+fmt.Sprintf("subject BOX at %.4f m, deep %.4f m\nshot 1\n  start on BOX\n  hold 1 s\n", d, deep))
		m, u := sh.Start.Miss, sh.Subjects[0]
		x, half := float64(u.LensDistance), float64(u.Deep)/2
		set := sh.Judged(x, 0)
		for _, side := range []struct {
			soft, seen plan.Number
			sign       float64
		}{{m.SoftForward, m.SeenForward, -1}, {m.SoftBack, m.SeenBack, 1}} {
			if side.seen < side.soft {
				r.Errorf("seen after %v, soft after %v", side.seen, side.soft)
			}
			if side.soft.IsInf() || side.soft == 0 {
				continue
			}
			if blur := set.Blur(x+side.sign*(half+float64(side.soft)), x); math.Abs(blur/set.Criterion-1) > 1e-6 {
				r.Errorf("%s at %.3f m: the edge blurs by %v of what is sharp", stop, d, blur/set.Criterion)
			}
		}
		if m.Left.Known() || m.Right.Known() {
			r.Errorf("no side is given, and there are %v and %v", m.Left, m.Right)
		}
	})
}

// Of two who are held together, the focus lies between them: the near one may hardly
// come forward and the far one hardly go back, and the least of both counts.
func TestMissOfSeveral(t *testing.T) {
	sh, _ := shotOf(t, kitOfMiss("f/8")+"subject ANN at 3 m, 20 cm left\nsubject BEN at 3.2 m, 30 cm right\nshot 1\n  start on ANN\n  rack to ANN and BEN, at 1 s, over 1 s\n  rack to inf, at 3 s, over 2 s\n  rack to ANN + 10 cm, at 6 s, over 1 s\n")
	both := sh.Pulls[0].Miss
	x := sh.Pulls[0].ToLens
	set := sh.Judged(x, 2)
	ann, ben := sh.LensDistanceAt(sh.Subjects[0], 2), sh.LensDistanceAt(sh.Subjects[1], 2)
	near := func(got plan.Number, want float64, what string) {
		if math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	near(both.SoftForward, ann-set.Near(x), "forward")
	near(both.SoftBack, set.Far(x)-ben, "back")
	half := func(d float64) float64 { return 0.02489 * (d - 0.05) / 0.1 }
	near(both.Left, half(ann)-0.2, "left")
	near(both.Right, half(ben)-0.3, "right")
	if sh.Pulls[1].Miss != nil || sh.Pulls[2].Miss != nil {
		t.Errorf("nobody has a mark at infinity or beside it: %v, %v", sh.Pulls[1].Miss, sh.Pulls[2].Miss)
	}
	if m := sh.Start.Miss; m == nil || !(m.RingNear < 0 && m.RingFar > 0) {
		t.Errorf("the ring turns by %+v", m)
	}
}

// At the closest focus the ring goes no nearer, and the zone reaches infinity where
// the lens is focused as far as its hyperfocal distance.
func TestMissAtTheEnds(t *testing.T) {
	sh, _ := shotOf(t, kitOfMiss("f/16")+"subject CUP at 55 cm\nsubject TOWER at 90 m\nshot 1\n  start on CUP\n  rack to TOWER, at 1 s, over 2 s\n")
	if m := sh.Start.Miss; m.RingNear.Known() || !m.RingFar.Known() {
		t.Errorf("at the closest focus: %+v", m)
	}
	if m := sh.Pulls[0].Miss; !m.SoftBack.IsInf() || !m.SeenBack.IsInf() || m.SoftForward.IsInf() {
		t.Errorf("beyond the hyperfocal distance: %+v", m)
	}
}
