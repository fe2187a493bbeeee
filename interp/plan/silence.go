// What a lack of findings says nothing of.

package plan

import (
	"fmt"
	"slices"
	"strings"
)

// mostSilent is how many shots are named before they are counted.
const mostSilent = 3

// NotJudged returns in one sentence, without a full stop, what findings of these shots
// can say nothing of, and what they take for granted because nothing says it; ""
// where there is nothing of the kind. It stands wherever "no findings" does, which
// else would read as if the shots had been vouched for.
func NotJudged(shots ...*Shot) string {
	var ringless []string
	var screen, sway, hand bool
	lines := 0
	for _, s := range shots {
		screen = screen || s.ScreenAssumed
		if s.Optics.Ring == nil && len(s.Pulls) > 0 {
			ringless = append(ringless, s.ID)
		}
		for _, l := range s.Lines {
			if l.Estimated {
				lines++
			}
		}
		sway = sway || slices.ContainsFunc(s.Subjects, func(u *Subject) bool { return u.SwayAssumed })
		hand = hand || s.Log == "" && slices.ContainsFunc(s.Pulls, func(p *Pull) bool { return p.Chance.Known() })
	}
	var parts []string
	switch n := len(ringless); {
	case n == 1:
		parts = append(parts, "how the hand lands in shot "+ringless[0]+" (no ring, or one by wire)")
	case n > 1 && n <= mostSilent:
		parts = append(parts, "how the hand lands in shots "+strings.Join(ringless[:n-1], ", ")+" and "+ringless[n-1]+" (no ring, or one by wire)")
	case n > mostSilent:
		parts = append(parts, fmt.Sprintf("how the hand lands in %d shots (no ring, or one by wire)", n))
	}
	add := func(is bool, what string) {
		if is {
			parts = append(parts, what)
		}
	}
	add(screen, "the screen it is watched on (assumed)")
	add(lines == 1, "when one line is said (estimated)")
	add(lines > 1, fmt.Sprintf("when %d lines are said (estimated)", lines))
	add(sway, "how people sway (assumed)")
	add(hand, "whose hand it is (no log of takes)")
	if len(parts) == 0 {
		return ""
	}
	return "not judged: " + strings.Join(parts, "; ")
}
