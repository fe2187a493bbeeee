package moments

import (
	"testing"

	"pullscore/interp/plan"
)

func TestHold(t *testing.T) {
	ring := plan.Hold{HoldOn: "ring", HoldFrom: 4.1, HoldTo: 11, Regrip: none, RegripTo: none}
	kept, hurried, same, again, wheel := ring, ring, ring, ring, ring
	kept.Kept, hurried.Hurried, same.HoldFrom, wheel.HoldOn = true, true, 10.8, "wheel"
	again.Regrip, again.RegripTo = 10, 1.5
	wheelAgain := again
	wheelAgain.HoldOn = "wheel"
	rack, twice, follow := plan.Pull{Kind: "rack"}, plan.Pull{Kind: "rack", Regrips: 3}, plan.Pull{Kind: "follow"}
	once := plan.Pull{Kind: "rack", Regrips: 1}
	for _, test := range []struct {
		pull        plan.Pull
		hold        plan.Hold
		says, thumb string
	}{
		{rack, ring, "take hold with the thumb at 4 o'clock, land at 11", "4 to 11"},
		{follow, ring, "take hold with the thumb at 4 o'clock, end at 11", "4 to 11"},
		{rack, kept, "keep hold with the thumb at 4 o'clock, land at 11", "4 to 11"},
		{rack, hurried, "let go at once and take hold with the thumb at 4 o'clock, land at 11", "4 to 11"},
		{rack, same, "take hold with the thumb at 11 o'clock, land there", "11 to 11"},
		{once, again, "take hold with the thumb at 4 o'clock, re-grip from 10 to 1:30, land at 11", "4 to 10, 1:30 to 11"},
		{twice, again, "take hold with the thumb at 4 o'clock, re-grip 3 times at 10, the last time to 1:30, land at 11", "4 to 10, 1:30 to 11"},
		{rack, wheel, "on the wheel: take hold with the thumb at 4 o'clock, land at 11 (where it turns anticlockwise to infinity: 8 to 1)", "4 to 11"},
		{once, wheelAgain, "on the wheel: take hold with the thumb at 4 o'clock, re-grip from 10 to 1:30, land at 11 (where it turns anticlockwise to infinity: 8 to 2, 10:30 to 1)", "4 to 10, 1:30 to 11"},
	} {
		if got := Hold(&test.pull, &test.hold, table); got != test.says {
			t.Errorf("%q, want %q", got, test.says)
		}
		if got := Thumb(&test.hold, table); got != test.thumb {
			t.Errorf("%q, want %q", got, test.thumb)
		}
	}
	s := shot()
	s.Pulls = []*plan.Pull{{}, {Hold: &ring}}
	if got := ThumbHead(s) + Thumb(nil, table); got != "thumb, o'clock" {
		t.Errorf("on the ring: %q", got)
	}
	s.Pulls[1].Hold = &wheel
	if got := ThumbHead(s); got != "thumb, ∞ clockwise" {
		t.Errorf("on the wheel: %q", got)
	}
	noon := plan.Hold{HoldFrom: 12, HoldTo: 6, Regrip: none, RegripTo: none}.Mirrored()
	if noon.HoldFrom != 12 || noon.HoldTo != 6 || noon.Regrip.Known() {
		t.Errorf("mirrored: %+v", noon)
	}
}
