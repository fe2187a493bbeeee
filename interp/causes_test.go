package interp_test

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/interp/plan"
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

// racksTooShort is a plan of racks of which most are too short at f/2.
func racksTooShort() string {
	src := `plan "t"
use "kit.pull"
subject ANN at 2 m
subject BOB at 3 m
subject CAL at 5 m
shot 14B
  with camera A, lens "75", stop f/2
  start on ANN
`
	for i, who := range strings.Fields("BOB CAL ANN CAL BOB CAL BOB CAL ANN") {
		src += fmt.Sprintf("  rack to %s, over 0.%d s, because \"it is so\"\n  hold 1 s\n", who, 6+i%3)
	}
	return src
}

// What a cause says of its cure holds in any plan once that is written into it.
func TestCausesHold(t *testing.T) {
	plans := []string{racksTooShort()}
	for i := range 150 {
		plans = append(plans, generated.Example(i))
	}
	mended := 0
	for _, src := range plans {
		for _, s := range interpret("plan.pull", src).Plan.Shots {
			for _, c := range s.Causes {
				if len(c.Flags) < 2 {
					t.Fatalf("%+v is no cause of two\n%s", c, src)
				}
				if word, _, _ := strings.Cut(c.Cure, " "); word == "stop" || word == "gear" || word == "wheel" {
					mended += c.Mends
					checkCause(t, src, s, c)
				}
			}
		}
	}
	if mended < 20 {
		t.Errorf("only %d findings were mended by the cure of a cause", mended)
	}
}

// checkCause writes the cure of a cause into the plan: as many of its findings as
// it says are gone, by the lines that their pulls stand in.
func checkCause(t *testing.T, src string, s *plan.Shot, c plan.Cause) {
	t.Helper()
	word, _, _ := strings.Cut(c.Cure, " ")
	lines := strings.Split(src, "\n")
	with := index(lines, "  with ")
	lines[with] = clause(lines[with], word, c.Cure)
	left := map[int]bool{}
	for _, d := range interpret("plan.pull", strings.Join(lines, "\n")).Findings {
		if d.Code == c.Code {
			left[d.Range.Start.Line] = true
		}
	}
	gone := 0
	for _, number := range c.Flags {
		f := s.Flags[number-1]
		if f.Code != c.Code || f.Severity != c.Severity {
			t.Fatalf("%+v has the finding %+v\n%s", c, f, src)
		}
		if f.Pull == 0 {
			return // of the start, which stands in no line of a pull
		}
		if !left[s.Pulls[f.Pull-1].Line] {
			gone++
		}
	}
	if gone != c.Mends {
		t.Errorf("%q is said to mend %d findings of %s, and mends %d\n%s", c.Cure, c.Mends, c.Code, gone, src)
	}
}
