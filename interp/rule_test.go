package interp_test

import (
	"strings"
	"testing"

	"pullscore/lang/rule"
)

// Whatever is told of the plans of all corpora has a row in the table of
// findings, with that severity.
func TestEveryFindingHasARule(t *testing.T) {
	told := map[rule.Code]int{}
	for _, plan := range allLines(t).plans {
		for _, d := range interpret("plan.pull", strings.Join(plan, "\n")+"\n", shuffledFiles...).Findings {
			code, ok := rule.Named(d.Code)
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
}
