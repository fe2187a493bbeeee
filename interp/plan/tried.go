// Cures tried together: what is left of the findings of a shot once one cure after the
// other is written into the plan.

package plan

import (
	"fmt"
	"strings"
)

// A Tried is one of the cures that are tried together. Its counts are of the shot with
// this cure and those before it.
type Tried struct {
	Cure   string   `json:"cure"`            // what to write, in all places of its cause
	Cause  string   `json:"cause"`           // the letter of the cause that it is offered for
	Pulls  []int    `json:"pulls,omitempty"` // the pulls that it is written at; none: the whole shot
	Leaves int      `json:"leaves"`          // how many findings are left
	Adds   int      `json:"adds"`            // how many of those the plan as it is does not have
	Mends  []string `json:"mends,omitempty"` // the letters of which nothing is left since the step before

	AddsBy [3]int `json:"-"` // the same as Adds: errors, warnings, notes
}

// SaysTogether returns the cures of a shot that are tried together as one sentence without
// a full stop, with what each of them leaves; "" if none helps.
func (s *Shot) SaysTogether() string {
	var parts []string
	for i, t := range s.Together {
		text := t.Cure
		if n := len(t.Pulls); n > 0 {
			text += " on " + pullList(t.Pulls)
		}
		left := fmt.Sprintf("%d left", t.Leaves)
		if i == 0 {
			left = fmt.Sprintf("%d of %d left", t.Leaves, len(s.Flags))
		}
		if len(t.Mends) > 1 {
			text += " (mends " + strings.Join(t.Mends, ", ") + ")"
		}
		text += ": " + left + addedBy(t.AddsBy)
		if i > 0 {
			text = "then " + text
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// addedBy says how many findings are new, by their severities.
func addedBy(by [3]int) (text string) {
	for i, name := range []string{"error", "warning", "note"} {
		if by[i] == 0 {
			continue
		}
		if by[i] > 1 {
			name += "s"
		}
		text += fmt.Sprintf(", %d new %s", by[i], name)
	}
	return text
}

// pullList names pulls by their numbers, in order: pull 3, pulls 1 to 6, pulls 1, 2 and 5.
func pullList(numbers []int) string {
	n := len(numbers)
	if n == 1 {
		return fmt.Sprintf("pull %d", numbers[0])
	}
	if n > 2 && numbers[n-1]-numbers[0] == n-1 {
		return fmt.Sprintf("pulls %d to %d", numbers[0], numbers[n-1])
	}
	words := make([]string, n)
	for i, k := range numbers {
		words[i] = fmt.Sprint(k)
	}
	return "pulls " + strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}
