// Plans that are made to take for ever, or to bring the program down.

package interp_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pullscore/interp"
)

// repeat joins lines made from 0 to n-1.
func repeat(n int, line func(i int) string) string {
	var s strings.Builder
	for i := range n {
		s.WriteString(line(i))
		s.WriteByte('\n')
	}
	return s.String()
}

// Each of these takes a moment; what it is told is what it has to be told.
func TestHostilePlansEnd(t *testing.T) {
	tests := []struct{ name, text, code string }{
		{"moves that use moves twice", scene("m0()\n") + repeat(40, func(i int) string {
			return fmt.Sprintf("move m%d()\n  m%d()\n  m%d()", i, i+1, i+1)
		}) + "move m40()\n  pause 1 s", "too-long"},
		{"arguments made of arguments", scene("m0(1 ms)\n") + repeat(40, func(i int) string {
			return fmt.Sprintf("move m%d(t)\n  m%d(t + t)", i, i+1)
		}) + "move m40(t)\n  pause t", "out-of-range"},
		{"a chain of subjects", scene(repeat(5000, func(i int) string {
			return fmt.Sprintf("subject S%d at S%d + 1 cm", i+1, i)
		}) + "subject S0 at 1 m"), "nested-too-deep"},
		{"a chain that moves", scene(repeat(11, func(i int) string {
			return fmt.Sprintf("subject S%d at S%d + 1 cm", i+1, i)
		}) + "subject S0 at 1 m\n" + repeat(11, func(i int) string {
			return fmt.Sprintf("S%d moves to S%d + 2 cm over 3 s, on 0 s", i+1, i)
		}) + "rack to S11, over 1 s"), "unmotivated"},
		{"hundreds of racks that all miss", scene(repeat(600, func(i int) string {
			return "rack to " + []string{"GATE", "NORA"}[i%2] + ", over 300 ms"
		})), "hard-to-land"},
		{"lines that wait for one another", scene(repeat(2000, func(i int) string {
			return fmt.Sprintf("OTTO: \"word%d and%d\", on \"word%d\"", i, i, i+1)
		})), "word-not-found"},
		{"cues that wait for one another", scene(repeat(3000, func(i int) string {
			return fmt.Sprintf("cue c%d on c%d", i, i+1)
		})), "unknown-name"},
		{"lets in a circle", scene("") + repeat(2000, func(i int) string { return "" }) + repeat(500, func(i int) string {
			return fmt.Sprintf("let a%d = a%d * 2", i, (i+1)%500)
		}), ""},
		{"huge numbers", scene("rack to GATE, over 1e300 s"), ""},
		{"a day and more", scene("pause 80000 s\npause 80000 s"), "out-of-range"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			res := interpret("plan.pull", test.text)
			checkSane(t, res)
			for _, d := range res.Findings {
				if d.Code == test.code {
					return
				}
			}
			if test.code != "" {
				t.Errorf("nothing was told as %s", test.code)
			}
		})
	}
}

// A file that never ends, or is too large, is refused before it is read.
func TestReadFileRefuses(t *testing.T) {
	if _, err := interp.ReadFile(os.DevNull); err == nil {
		t.Error("a device was read")
	}
	if _, err := interp.ReadFile(t.TempDir()); err == nil {
		t.Error("a folder was read")
	}
	big := filepath.Join(t.TempDir(), "big.pull")
	if err := os.WriteFile(big, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(big, 64<<20); err != nil {
		t.Fatal(err)
	}
	if _, err := interp.ReadFile(big); err == nil || !strings.Contains(err.Error(), "64 MB") {
		t.Errorf("a file of 64 MB: %v", err)
	}
	if _, err := interp.ReadFile(filepath.Join(t.TempDir(), "none")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
}

// Files that use one another, and more files than anyone has.
func TestUses(t *testing.T) {
	res := interpret("a.pull", "use \"b.pull\"\n", "b.pull", "use \"c.pull\"\n", "c.pull", "use \"a.pull\"\n")
	if len(res.Findings) != 1 || res.Findings[0].Code != "circle" || res.Findings[0].Detail != "a.pull uses b.pull uses c.pull uses a.pull." {
		t.Errorf("%+v", res.Findings)
	}
	deep := []string{}
	for i := range 100 {
		deep = append(deep, fmt.Sprintf("f%d.pull", i), fmt.Sprintf("use \"f%d.pull\"\n", i+1))
	}
	res = interpret("a.pull", "use \"f0.pull\"\n", deep...)
	if len(res.Findings) != 1 || res.Findings[0].Code != "too-deep-use" {
		t.Errorf("%+v", res.Findings)
	}
	// Both use the kit: it is read once and nothing in it is double.
	res = interpret("a.pull", "use \"b.pull\"\nuse \"kit.pull\"\n", "b.pull", "use \"kit.pull\"\n")
	if len(res.Findings) != 0 {
		t.Errorf("%+v", res.Findings)
	}
	// A file's own statements win over those that it uses.
	res = interpret("a.pull", "plan \"P\"\nuse \"b.pull\"\nsubject NORA at 3 m\nrate 25\nshot 1\n  with stop f/8\n  start on NORA\n",
		"b.pull", "use \"kit.pull\"\nsubject NORA at 1 m\nrate 30\nwith lens \"75\"\n")
	if len(res.Plan.Shots) != 1 || res.Plan.Rate != "25" || res.Plan.Shots[0].Subjects[0].Distance != 3 {
		t.Errorf("%+v", res.Findings)
	}
}
