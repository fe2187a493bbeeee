package interp_test

import (
	"strings"
	"testing"
)

// Findings of one cause are one group, with the change that mends most of it:
// written into the plan, it leaves just those that the group says it does not
// mend.
func TestCauses(t *testing.T) {
	const plan = `plan "Causes"
watched on 12 m screen from 18 m
camera A
  sensor 24.89 x 18.66 mm
  on tripod
lens "75"
  focal 75 mm
  stops f/1.8 to f/21
  closest 75 cm
  ring 310 deg, diameter 110 mm
subject NORA at 1.7 m
subject OTTO at 1.2 m
subject LAMP at 2.4 m
shot 1
  with stop f/1.8
  start on NORA
  rack to OTTO, at 1 s, over 0.9 s, because "a"
  rack to LAMP, at 3 s, over 0.9 s, because "b"
  rack to NORA, at 5 s, over 0.9 s, because "c"
  rack to OTTO, at 7 s, over 1.2 s, because "d"
`
	res := interpret("causes.pull", plan)
	causes := res.Plan.Shots[0].Causes
	if len(causes) != 1 || causes[0].Code != "hard-to-land" || len(causes[0].Flags) < 3 || causes[0].Severity != "warning" {
		t.Fatalf("causes: %+v", causes)
	}
	c := causes[0]
	if !strings.HasPrefix(c.Cure, "stop f/") || c.Mends < 2 {
		t.Fatalf("cause: %+v", c)
	}
	again := interpret("causes.pull", strings.Replace(plan, "stop f/1.8\n", c.Cure+"\n", 1))
	left := 0
	for _, d := range again.Findings {
		if d.Code == c.Code {
			left++
		}
	}
	if left != len(c.Flags)-c.Mends {
		t.Errorf("%s leaves %d of %d findings, and mends %d", c.Cure, left, len(c.Flags), c.Mends)
	}
}
