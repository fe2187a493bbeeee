package interp_test

import (
	"slices"
	"testing"

	"pullscore/interp"
)

// What drawings print as the plan has it: the marks of a lens, and a target in
// a move with the name that the parameter stands for, and its offset.
func TestWhatIsPrintedAsWritten(t *testing.T) {
	res := interp.Interpret("plan.pull", []byte(`plan "Written"
camera A
  sensor 24.89 x 18.66 mm
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  ring 310 deg
  mark 1'8" at 0 deg
  mark 2 m at 240 deg
  mark inf at 310 deg
subject TOBIN at 1.6 m
subject "AUNT VEE" at 2.4 m
move shy(who)
  rack to who - 10 cm, over 1.5 s, because "not quite"
shot 1
  with stop f/4
  start on TOBIN
  pause 2 s
  shy("AUNT VEE")
`), interp.Options{})
	s := res.Plan.Shots[0]
	if want := []string{`1'8"`, "2 m", "inf"}; !slices.Equal(s.Optics.Engraved, want) {
		t.Errorf("marks are %q, want %q", s.Optics.Engraved, want)
	}
	if len(s.Pulls) != 1 || s.Pulls[0].Target != "AUNT VEE - 10 cm" {
		t.Errorf("pulls are %+v, findings %v", s.Pulls, res.Findings)
	}
}
