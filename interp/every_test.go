package interp_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pullscore/lang/rule"
)

// rare are plans that are told what no plan of the corpora is: limits that would
// make a sample long, and mistakes that would hide others beside them.
var rare = map[rule.Code]func() (plan string, files []string){
	rule.TooLarge:        func() (string, []string) { return "let x = " + strings.Repeat("(", 200) + "1 s\n", nil },
	rule.TooManyMistakes: func() (string, []string) { return strings.Repeat("zzz\n", 1100), nil },
	rule.UnresolvedMerge: func() (string, []string) {
		return "<<<<<<< ours\nrate 24\n=======\nrate 25\n>>>>>>> theirs\n", nil
	},
	rule.BadRate: func() (string, []string) { return "rate 31\n", nil },
	rule.FocalNotOnLens: func() (string, []string) {
		return scene("") + "shot 2\n  with camera A, lens \"75\", stop f/4, focal 90 mm\n  start on NORA\n", nil
	},
	rule.LandsTooEarly: func() (string, []string) { return scene("  rack to LAMP, on 5 s, landing on 3 s\n"), nil },
	rule.LoneMark: func() (string, []string) {
		return "lens X\n  focal 75 mm\n  stops f/2 to f/16\n  mark 1 m at 40 deg\n", nil
	},
	rule.MarksOutOfOrder: func() (string, []string) {
		return "lens X\n  focal 75 mm\n  stops f/2 to f/16\n  ring 300 deg\n  mark 1 m at 90 deg\n  mark 2 m at 40 deg\n  mark inf at 300 deg\n", nil
	},
	rule.MoreFaults: func() (string, []string) {
		return "edit \"cut.srt\"\n" + scene("  NORA: \"Hm.\""), []string{"cut.srt", strings.Repeat("1\n00:00:0x,000 --> 00:00:02,000\nhm\n\n", 40)}
	},
	rule.NestedTooDeep: func() (string, []string) {
		var b strings.Builder
		for i := range 100 {
			fmt.Fprintf(&b, "move m%d()\n  m%d()\n", i, i+1)
		}
		return b.String() + "move m100()\n  hold 1 s\n" + scene("  m0()\n"), nil
	},
	rule.TooDeepUse: func() (string, []string) {
		var files []string
		for i := range 40 {
			files = append(files, fmt.Sprintf("f%d.pull", i), fmt.Sprintf("use \"f%d.pull\"\n", i+1))
		}
		return "use \"f0.pull\"\n", files
	},
	rule.TooManyFiles: func() (string, []string) {
		var files []string
		var b strings.Builder
		for i := range 300 {
			files = append(files, fmt.Sprintf("f%d.pull", i), "")
			fmt.Fprintf(&b, "use \"f%d.pull\"\n", i)
		}
		return b.String(), files
	},
	rule.TooLong: func() (string, []string) {
		var b strings.Builder
		for i := range 20 {
			fmt.Fprintf(&b, "move m%d()\n  m%d()\n  m%d()\n", i, i+1, i+1)
		}
		return b.String() + "move m20()\n  hold 1 s\n" + scene("  m0()\n"), nil
	},
	rule.TooManyTimes: func() (string, []string) {
		return scene("  rack to LAMP, on 1 s, landing on 3 s, over 2 s\n"), nil
	},
	rule.UnknownCut: func() (string, []string) {
		return "edit \"cut.bin\"\n" + scene(""), []string{"cut.bin", "\x01\x02\x03 nothing"}
	},
	rule.WhichLine: func() (string, []string) {
		return scene("  NORA: \"One.\"\n  cue c on NORA\n  NORA: \"Two.\"\n"), nil
	},
	rule.SpeedLight: func() (string, []string) {
		return strings.Replace(scene("  NORA: \"Slowly.\"\n"), "with ", "with shoots 96, meter f/4, ", 1), nil
	},
	rule.SpeedSound: func() (string, []string) {
		return strings.Replace(scene("  NORA: \"Slowly.\"\n"), "with ", "with shoots 12, ", 1), nil
	},
	rule.RunsInto: func() (string, []string) {
		return scene("  dolly in 1.5 m over 2 s\n  NORA: \"Mind me.\"\n"), nil
	},
}

// Every code that this package can tell is told of some plan: a row of the table
// that nothing tells is dead, and help on it would be false. Readers of other
// people's files have samples of their own for their faults.
func TestEveryCodeIsTold(t *testing.T) {
	told := map[rule.Code]bool{}
	note := func(plan string, files []string) {
		for _, d := range interpret("plan.pull", plan, files...).Findings {
			if code, ok := rule.Named(d.Code); ok {
				told[code] = true
			} else {
				t.Errorf("nothing explains %s: %s", d.Code, d.Message)
			}
		}
	}
	for _, plan := range allLines(t).plans {
		note(strings.Join(plan, "\n")+"\n", shuffledFiles)
	}
	for code, make := range rare {
		if told[code] {
			continue // the corpora have it by now
		}
		note(make())
		if !told[code] {
			t.Errorf("the plan made for %s is not told it", code)
		}
	}
	for _, group := range []rule.Group{rule.Written, rule.Meaning, rule.Shot, rule.Page} {
		never := slices.DeleteFunc(slices.Collect(rule.Of(group)), func(c rule.Code) bool { return told[c] })
		if len(never) > 0 {
			t.Errorf("%v: no plan is told %v", group, never)
		}
	}
}
