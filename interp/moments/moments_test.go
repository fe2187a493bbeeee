package moments

import (
	"math"
	"testing"

	"pullscore/interp/plan"
	"pullscore/interp/units"
)

var (
	none  = plan.None()
	table = units.ForTable(false)
)

func shot() *plan.Shot { return &plan.Shot{Wanted: 0.9} }

// The figures are those of a 75 mm at f/2.8 on a mark at 2 m.
func TestMiss(t *testing.T) {
	s := shot()
	m := plan.Miss{SoftForward: 0.0204, SoftBack: 0.0222, SeenForward: 0.0721, SeenBack: 0.0814, Left: none, Right: none, RingNear: -5.21, RingFar: 4.7}
	check := func(want string) {
		t.Helper()
		if got := Miss(s, &m, table); got != want {
			t.Errorf("%s\nwant %s", got, want)
		}
	}
	check("may miss −2.0/+2.2 cm sharp, −7.2/+8.1 cm before it shows; 10 cm nearer is 5.2°")
	s.Optics.Diameter = 0.11
	m.RingNear = none
	check("may miss −2.0/+2.2 cm sharp, −7.2/+8.1 cm before it shows; 10 cm farther is 4.7°, 4.5 mm at the rim")
	m.RingFar, m.Left, m.Right = none, 0.12, 1.5
	check("may miss −2.0/+2.2 cm sharp, −7.2/+8.1 cm before it shows; out of the picture after 12 cm left, 1.5 m right")
	m = plan.Miss{SoftForward: 1.7, SoftBack: plan.Number(math.Inf(1)), SeenForward: 2, SeenBack: plan.Number(math.Inf(1)), Left: none, Right: none, RingNear: none, RingFar: none}
	check("may miss −1.7/+∞ m sharp, −2/+∞ m before it shows")
	if got := Miss(s, nil, table); got != "" {
		t.Errorf("of nobody: %q", got)
	}
}

func TestRestAndFollow(t *testing.T) {
	s := shot()
	r := plan.Rest{Subject: "ANN", Start: 1, End: 7.5, Share: 0.96, Stays: 0.77}
	if got, want := Rest(s, &r, table), "ANN, 1 s to 7.5 s: sharp 96 %, all through 77 %"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	p := plan.Pull{Kind: "follow", Land: 2.7, SharpShare: 0.9, WorstShare: 0.71, WorstAt: 2.4, Chance: 0.98, Ceiling: 0.99}
	if got, want := Follow(s, &p, table), "sharp 90 %, at worst 71 % from 2.4 s to 2.7 s; at its end 98 %, at most 99 %"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := Follow(s, &plan.Pull{Kind: "rack", WorstShare: none}, table); got != "" {
		t.Errorf("a rack: %q", got)
	}
}

// The worst of landings, follows and rests counts, the first of equals, and where
// nothing is known there is none.
func TestWorst(t *testing.T) {
	rack := func(n int, chance plan.Number) *plan.Pull {
		return &plan.Pull{Number: n, Kind: "rack", Chance: chance, WorstShare: none, ChanceBand: plan.Interval{chance - 0.2, chance + 0.05}}
	}
	follow := &plan.Pull{Number: 3, Kind: "follow", Chance: 0.8, WorstShare: 0.6, WorstAt: 4}
	for _, test := range []struct {
		pulls []*plan.Pull
		rests []plan.Rest
		want  string
	}{
		{[]*plan.Pull{rack(1, 0.84), rack(2, 0.84)}, nil, "pull 1 lands 84 % (64–89)"},
		{[]*plan.Pull{rack(1, 0.84), follow}, nil, "follow 3 at 4 s: sharp 60 %"},
		{[]*plan.Pull{{Number: 3, Kind: "follow", Chance: 0.5, WorstShare: 0.6}}, nil, "follow 3 ends 50 %"},
		{[]*plan.Pull{rack(1, 0.84)}, []plan.Rest{{Subject: "ANN", Start: 2, Share: 0.35}}, "rest on ANN at 2 s: sharp 35 %"},
		{[]*plan.Pull{rack(1, none)}, nil, ""},
	} {
		s := shot()
		s.Pulls, s.Rests = test.pulls, test.rests
		got := ""
		if m, ok := Worst(s); ok {
			got = m.Says(s, table)
		}
		if got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}
