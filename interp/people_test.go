package interp_test

import "testing"

// Who speaks or moves anywhere in the plan sways a little: also by a move, by a name
// in a let, and in another shot. A thing does not, and `sways 0 mm` turns it off.
func TestWhoSways(t *testing.T) {
	res := interpret("plan.pull", `plan "Who sways"
use "kit.pull"
with camera A, lens "75", stop f/2.8
let HERO = ASTA
subject ASTA at 2 m
subject BOX at 2 m
subject CAY at 2 m
subject DUN at 2 m, sways 0 mm
subject EEL at 2 m
subject FIN at 2 m, sways 2 cm
move outer(who, other)
  inner(other, who)
move inner(a, b)
  b: "Now."
  a moves to 3 m over 1 s
shot 1
  start on BOX
  outer(HERO, EEL)
shot 2
  start on BOX
  CAY: "Then."
  DUN: "So."
`)
	for _, s := range res.Plan.Shots {
		for name, want := range map[string]float64{"ASTA": 0.005, "BOX": 0, "CAY": 0.005, "DUN": 0, "EEL": 0.005, "FIN": 0.02} {
			u := s.Subject(name)
			if got := float64(u.Sways); !(got == want || want == 0 && !u.Sways.Known()) {
				t.Errorf("shot %s: %s sways %v, want %v", s.ID, name, got, want)
			}
		}
	}
	if len(res.Plan.Shots) != 2 {
		t.Error(res.Findings)
	}
}
