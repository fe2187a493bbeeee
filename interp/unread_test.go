// Lines that cannot be read are one mistake each: their names are known.

package interp_test

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/lang"
)

// bad ends the lines of unreadable that hold a mistake.
const bad = "  # bad"

// unreadable is a plan in which nearly every declaration has a mistake.
const unreadable = `plan "One mistake a line"
use "kit.pull"
subject MARLO at 2.2 metres` + bad + `
subject BO at 5'13"` + bad + `
subject AUNT VEE at 3 m` + bad + `
subject MARLO at 2.2 m
voice HORN 2` + bad + `
let late = 2 sec` + bad + `
subject NORA at 1.7 m
subject LAMP at 95 cm
camera B 2` + bad + `
  sensor 36 x 24 mm
lens "50" mm` + bad + `
  focal 50 mm
puller INES 2` + bad + `
move glance(who` + bad + `
  rack to who, over 1 s
shot 1
  with camera A, lens "75", stop f/8, puller INES
  start on MARLO
  cue knock on "here` + bad + `
  HORN: "Ahoy."
  MARLO: "You know."
  "AUNT VEE": "I do not."
  rack to MARLO, on knock, over 1 s
  rack to "AUNT VEE", on MARLO, over 1 s
  rack to MARLO and NORA, on late, over 1 s
  hold 1 s
  rack to BO - 10 cm, over 1 s
  follow BO until knock + late
  MARLO moves to 3 m over 1 s
  NORA moves to BO - 20 cm over 1 s
  glance(NORA)
  BO: "Nor do I."
shot 2
  with camera B, lens "75", stop f/8
  start on NORA
  rack to MARLO, over 1 s
shot 3
  with camera A, lens "50", stop f/8
  start on BO
shot 4
  with camera A, lens "75", stop f/8
  start on DORA` + bad + `
  follow NORA
shot 5
  with camera A, lens "75", stop f/8
  start of NORA` + bad + `
  follow LAMP
shot 6
  with camera A, lens "75", stop f/8
  start on LAMP
  rack to NORA ovr 1 s` + bad + `
  hold 1 s
  follow NORA
`

func TestNamesOfLinesThatCannotBeRead(t *testing.T) {
	told := map[int]int{}
	for _, f := range interpret("plan.pull", unreadable).Findings {
		told[f.Range.Start.Line]++
	}
	for i, line := range strings.Split(unreadable, "\n") {
		want := 0
		if strings.HasSuffix(line, bad) {
			want = 1
		}
		if told[i+1] != want {
			t.Errorf("line %d, %q: told of %d times, want %d", i+1, line, told[i+1], want)
		}
	}
}

// A kit in UTF-16 is one mistake, and what it would declare is not missed.
func TestKitThatIsNoText(t *testing.T) {
	wide := "\xff\xfe" + strings.Join(strings.Split(kitText, ""), "\x00") + "\x00"
	res := interpret("plan.pull", scene("  rack to LAMP, over 1 s"), "kit.pull", wide)
	if len(res.Findings) != 1 || res.Findings[0].Code != "bad-character" {
		t.Errorf("told: %+v", res.Findings)
	}
}

// A line of the ring that cannot be read is one mistake: what the rest of the lens says
// would be another ring, so nothing is told of it.
func TestRingThatCannotBeRead(t *testing.T) {
	const plan = `plan "A torn ring"
subject ANNA at 1.7 m
subject KEY at 1.1 m
camera A
  sensor 24.89 x 14 mm
  on tripod
lens "50"
  focal 50 mm
  stops f/1.8 to f/22
  closest 45 cm
%s
shot 1
  with camera A, lens "50", stop f/2.8
  start on ANNA
  pause 2 s
  rack to KEY, over 1 s, because "of it"
  hold 1 s
`
	for _, lines := range []string{
		"  ring 1e9 deg",
		"  ring 300 dge",
		"  ring by wire linear",
		"  ring 300 deg\n  mark 1 m at 1e9 deg",
		"  ring 300 deg\n  mark 1 m at 118 degg\n  mark 2 m at 200 deg",
		"  ring 3o0 deg, diameter 80 mm\n  mark 1 m at 100 deg\n  mark 2 m at 200 deg",
	} {
		res := interpret("plan.pull", fmt.Sprintf(plan, lines))
		if len(res.Findings) != 1 || res.Findings[0].Severity != lang.Error {
			t.Errorf("%q: told %+v, want the line alone", lines, res.Findings)
		}
	}
}
