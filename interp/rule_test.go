package interp_test

import (
	"strings"
	"testing"

	"pullscore/lang"
	"pullscore/lang/rule"
)

// Whatever is told of the plans of all corpora has a row in the table of
// findings, with that severity.
func TestEveryFindingHasARule(t *testing.T) {
	told := map[rule.Code]int{}
	for _, plan := range allLines(t).plans {
		for _, d := range interpret("plan.pull", strings.Join(plan, "\n")+"\n", shuffledFiles...).Findings {
			name := d.Code
			if name == "too-deep" && d.Severity == lang.Error {
				name = rule.NestedTooDeep.String() // the name that these two errors are to have
			}
			code, ok := rule.Named(name)
			if !ok {
				t.Errorf("nothing explains %s: %s", d.Code, d.Message)
				continue
			}
			if !code.May(rule.Severity(d.Severity)) {
				t.Errorf("%s is told as %v: %s", code, d.Severity, d.Message)
			}
			told[code]++
		}
	}
	if len(told) < 60 {
		t.Errorf("only %d codes were told", len(told))
	}
	for g := rule.Written; g <= rule.Page; g++ {
		var never []string
		for code := range rule.Of(g) {
			if told[code] == 0 {
				never = append(never, code.String())
			}
		}
		t.Logf("%v: told of no plan here: %s", g, strings.Join(never, " "))
	}
}
