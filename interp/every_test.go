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
		return "	rule.RoughMark, rule.Slips, rule.TubeTooLong,
	rule.WhichWay, rule.WholeTurn,
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
	for _, c := range notYetTold {
		if told[c] {
			t.Errorf("%v is told by now: take it off the list", c)
		}
	}
	for _, group := range []rule.Group{rule.Written, rule.Meaning, rule.Shot, rule.Page} {
		never := slices.DeleteFunc(slices.Collect(rule.Of(group)), func(c rule.Code) bool { return told[c] || slices.Contains(notYetTold, c) })
		if len(never) > 0 {
			t.Errorf("%v: no plan is told %v", group, never)
		}
	}
}
