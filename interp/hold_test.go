// Where the hand takes hold: what the plan says of it, and when it says nothing.

package interp_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// holdScene is a plan of racks between two marks that lie 90 degrees apart, on a lens
// with the given lines, in a shot with the given clauses.
func holdScene(lens, with, body string) string {
	return "plan \"P\"\nrate 24\nwatched on 12 m screen from 18 m\nsubject NEAR at 1 m\nsubject FAR at 2 m\ncamera A\n  sensor 25 x 18 mm\n" +
		"lens \"75\"\n  focal 75 mm\n  stops f/1.8 to f/22\n  closest 75 cm\n  ring 310 deg, diameter 110 mm\n" +
		"  mark 75 cm at 0 deg\n  mark 1 m at 110 deg\n  mark 2 m at 200 deg\n  mark inf at 310 deg\n" + lens +
		"shot 1\n  with stop f/4, lens \"75\", camera A" + with + "\n  start on NEAR\n" + body
}

func TestHoldInAPlan(t *testing.T) {
	const there, back = "  rack to FAR, at 1 s, over 1 s\n", "  rack to NEAR, at 3 s, over 1 s\n"
	const atOnce = "  rack to NEAR, at 2.2 s, over 1 s\n"
	for name, test := range map[string]struct {
		lens, with, body string
		says             string // of the pulls, with a bar between
	}{
		"left is anticlockwise":    {"  turns left\n", "", there + back, "take hold with the thumb at 2 o'clock, land at 11|take hold with the thumb at 10 o'clock, land at 1"},
		"right is clockwise":       {"  turns right\n", "", there + back, "take hold with the thumb at 10 o'clock, land at 1|take hold with the thumb at 2 o'clock, land at 11"},
		"the way is not said":      {"", "", there + back, "|"},
		"no time to let go":        {"  turns right\n", "", there + atOnce, "take hold with the thumb at 10:30 o'clock, land at 1:30|keep hold with the thumb at 1:30 o'clock, land at 10:30"},
		"on a wheel":               {"", ", gear 1.3, wheel 80 mm", there, "on the wheel: take hold with the thumb at 10 o'clock, land at 2 (where it turns anticlockwise to infinity: 2 to 10)"},
		"a re-grip":                {"  turns right\n", "", "  rack to inf, at 1 s, over 2 s\n", "take hold with the thumb at 10 o'clock, re-grip from 2 to 10, land at 12:30"},
		"the focus stays":          {"  turns right\n", "", "  rack to NEAR, at 1 s, over 1 s\n", ""},
		"a grip of its own":        {"  turns right\n", ", puller P", there, "take hold with the thumb at 9 o'clock, land at 12"},
		"nearer than it can focus": {"  turns right\n", "", "  rack to 50 cm, at 1 s, over 1 s\n", ""},
	} {
		src := holdScene(test.lens, test.with, test.body)
		src = strings.Replace(src, "camera A\n", "puller P\n  grip 240 deg\ncamera A\n", strings.Count(test.with, "puller"))
		s := interpret("plan.pull", src).Plan.Shots[0]
		var says []string
		for _, p := range s.Pulls {
			if p.Hold == nil {
				says = append(says, "")
				continue
			}
			says = append(says, p.HoldSays)
		}
		if got := strings.Join(says, "|"); got != test.says {
			t.Errorf("%s: %q, want %q", name, got, test.says)
		}
	}
}

// A ring that is not turned by hand tells no place on it.
func TestNoHoldWithoutARing(t *testing.T) {
	for _, ring := range []string{"by wire", "none"} {
		src := holdScene("  turns left\n", "", "  rack to FAR, at 1 s, over 1 s\n")
		src = strings.Replace(src, "ring 310 deg, diameter 110 mm", "ring "+ring, 1)
		for i, p := range interpret("plan.pull", src).Plan.Shots[0].Pulls {
			if p.Hold != nil {
				t.Errorf("ring %s, pull %d: %s", ring, i+1, p.HoldSays)
			}
		}
	}
}

// In generated plans, the thumb goes as far as the hand and stays in the arc; a plan
// that does not say which way the ring turns tells nothing of the ring; and one that
// turns the other way is the mirror image.
func TestHoldsOfPlans(t *testing.T) {
	told := 0
	rapid.Check(t, func(t *rapid.T) {
		src := genPlan(t)
		turning := func(way string) *plan.Shot {
			with := strings.Replace(src, "  closest ", "  turns "+way+"\n  closest ", -1)
			if s := interpret("plan.pull", with).Plan.Shots; len(s) > 0 {
				return s[0]
			}
			return &plan.Shot{}
		}
		left, right := turning("left"), turning("right")
		for i, p := range left.Pulls {
			other := right.Pulls[i].Hold
			if (p.Hold == nil) != (other == nil) {
				t.Fatalf("pull %d: told one way alone", i+1)
			}
			if p.Hold == nil {
				continue
			}
			told++
			if p.HoldOn == "ring" {
				mirrored := other.Mirrored()
				other = &mirrored
			}
			if math.Abs(math.Remainder(float64(p.HoldFrom-other.HoldFrom), 12)) > 1e-9 {
				t.Fatalf("pull %d: left from %v, right from %v", i+1, p.HoldFrom, other.HoldFrom)
			}
			if wrong := wrongHold(left, p); wrong != "" {
				t.Fatalf("pull %d: %s: %+v\n%s", i+1, wrong, *p.Hold, src)
			}
		}
		for i, p := range interpret("plan.pull", src).Plan.Shots[0].Pulls {
			if p.Hold != nil && p.HoldOn != "wheel" {
				t.Fatalf("pull %d: nobody knows which way the ring turns, and yet: %s", i+1, p.HoldSays)
			}
		}
	})
	if told < 20 {
		t.Errorf("only %d pulls were told", told)
	}
}

// wrongHold says what is wrong with the hold of a pull whose ring turns left.
func wrongHold(s *plan.Shot, p *plan.Pull) string {
	arc := s.Hand.Grip/60 + 1e-6 // hours each way from 12
	for _, at := range []plan.Number{p.HoldFrom, p.HoldTo, p.Regrip, p.RegripTo} {
		if at.Known() && (math.Abs(math.Remainder(float64(at), 12)) > arc || !(at > 0 && at <= 12)) {
			return fmt.Sprintf("%v o'clock is outside the arc", at)
		}
	}
	way := -float64(s.Gear)
	if p.HoldOn == "wheel" {
		way = float64(s.Gear)
	}
	hours := float64(p.HoldTo - p.HoldFrom)
	if p.Regrips > 0 {
		hours += float64(p.Regrips-1)*float64(p.Regrip-p.HoldFrom) + float64(p.Regrip-p.RegripTo)
	}
	if off := math.Remainder(hours-float64(p.ToDeg-p.FromDeg)*way/30, 12); math.Abs(off) > 1e-6 {
		return fmt.Sprintf("the thumb and the hand differ by %v hours", off)
	}
	if i := p.Number - 1; i > 0 && float64(p.Start-s.Pulls[i-1].Land) >= hand.Regrip && (p.Kept || p.Hurried) {
		return "there is time to take hold anew"
	}
	return ""
}
