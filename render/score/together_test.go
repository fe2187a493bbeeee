package score

import (
	"fmt"
	"strings"
	"testing"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
	"pullscore/render/testing/plans"
)

// What the cures leave that are tried together stands once, below the sentences, also
// where it needs more than one line; a shot that nobody tried has no such line.
func TestTriedTogether(t *testing.T) {
	for name, s := range plans.Made() {
		if len(s.Flags) == 0 {
			continue
		}
		for steps := range 6 {
			s.Together = nil
			for i := range steps {
				s.Together = append(s.Together, plan.Tried{Cure: "over 1.5 s", Cause: "a", Pulls: []int{1, 2, 4}, Leaves: 9 - i, Adds: 1, AddsBy: [3]int{0, 1, 0}})
			}
			told := 0
			for i, p := range Score(s, sheet.Options{}) {
				plans.CheckPage(t, fmt.Sprintf("%s, %d steps, page %d", name, steps, i+1), p)
				told += strings.Count(string(plans.SVGOf(t, p)), "Tried together: over 1.5 s on pulls 1, 2 and 4: 9 of")
			}
			if told != min(steps, 1) {
				t.Errorf("%s: %d steps are told %d times", name, steps, told)
			}
		}
	}
}
