package interp_test

import (
	"math"
	"testing"

	"pullscore/interp/plan"
)

const chances = `plan "Chance"
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  on hand
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject NORA at 1.7 m
  sways 3 cm
subject OTTO at 1.2 m
  sways 0 mm
subject LAMP at 4 m
shot 1
  with stop f/2.8
  start on NORA
  rack to OTTO, at 2 s, over 0.5 s, because "a"
  NORA moves to 3 m, at 5 s, over 3 s
  follow NORA, at 4 s, until 8.5 s
  rack to 4 m, at 10 s, over 1 s, because "b"
  hold 3 s
`

// A bar of who is sharp is as high as that is sure: the share of the rest at first, the
// lesser of rack and rest after it, the chance of the moment in a follow.
func TestSharpChance(t *testing.T) {
	res := interpret("chance.pull", chances)
	if len(res.Plan.Shots) != 1 {
		t.Fatal(res.Findings)
	}
	s := res.Plan.Shots[0]
	if len(s.Pulls) != 3 || len(s.Rests) < 3 {
		t.Fatalf("%d pulls, %d rests: %v", len(s.Pulls), len(s.Rests), res.Findings)
	}
	nora, otto, lamp := s.Subject("NORA"), s.Subject("OTTO"), s.Subject("LAMP")
	same := func(what string, got, want plan.Number) {
		t.Helper()
		if math.IsNaN(float64(got)) != math.IsNaN(float64(want)) || math.Abs(float64(got-want)) > 1e-12 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	rack, follow, last := s.Pulls[0], s.Pulls[1], s.Pulls[2]
	if !(s.Rests[0].Share < 0.99 && rack.Chance < 0.99) {
		t.Fatalf("the plan is too easy: %v, %v", s.Rests[0].Share, rack.Chance)
	}
	same("before the first pull", s.SharpChance(nora, 1), s.Rests[0].Share)
	same("who is left, as the rack starts", s.SharpChance(nora, 2.05), s.Rests[0].Share)
	same("who is reached, before the landing", s.SharpChance(otto, 2.45), min(rack.Chance, s.Rests[1].Share))
	same("after the landing", s.SharpChance(otto, 3), min(rack.Chance, s.Rests[1].Share))
	for _, m := range follow.Sures {
		if m.T < float64(follow.Land) {
			same("in the follow", s.SharpChance(nora, m.T), plan.Number(m.Chance))
		}
	}
	a, b := follow.Sures[100], follow.Sures[101]
	same("between two moments", s.SharpChance(nora, (a.T+b.T)/2), plan.Number(a.Chance+b.Chance)/2)
	same("after the follow", s.SharpChance(nora, 9), min(follow.Chance, s.Rests[2].Share))
	same("after a bare distance", s.SharpChance(lamp, 12), last.Chance)
}

// Where nobody knows how the hand lands, no chance is told.
func TestSharpChanceUnknown(t *testing.T) {
	const start = "plan \"C\"\ncamera A\n  sensor 24.89 x 18.66 mm\n  on tripod\n" +
		"subject ANN at 2 m\nsubject BOB at 3 m\nlens \"50\"\n  focal 50 mm\n  stops f/1.4 to f/16\n  closest 40 cm\n"
	const end = "shot 1\n  with stop f/2.8\n  start on ANN\n  rack to BOB, at 1 s, over 1 s, because \"a\"\n  hold 2 s\n"
	for _, lens := range []string{"", "  ring by wire\n", "  ring none\n"} {
		res := interpret("c.pull", start+lens+end)
		if len(res.Plan.Shots) != 1 || len(res.Plan.Shots[0].Pulls) != 1 {
			t.Fatal(res.Findings)
		}
		s := res.Plan.Shots[0]
		if got := s.SharpChance(s.Subject("BOB"), 3); got.Known() {
			t.Errorf("lens with %q: the chance is %v", lens, got)
		}
	}
}
