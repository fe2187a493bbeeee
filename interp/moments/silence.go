// What a lack of findings says nothing of.

package moments

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/plan"
)

// mostSilent is how many shots are named before they are counted.
const mostSilent = 3

// NotJudged returns in one sentence, without a full stop, what findings of these shots
// can say nothing of, and what they take for granted because nothing says it; ""
// where there is nothing of the kind. It stands wherever "no findings" does, which
// else would read as if the shots had been vouched for.
func NotJudged(shots ...*plan.Shot) string {
	var ringless, unknown []string
	var screen, sway, hand bool
	lines := 0
	for _, s := range shots {
		screen = screen || s.ScreenAssumed
		switch {
		case len(s.Pulls) == 0:
		case s.RingUnknown():
			unknown = append(unknown, s.ID)
		case s.Optics.Ring == nil:
			ringless = append(ringless, s.ID)
		}
		for _, l := range s.Lines {
			if l.Estimated {
				lines++
			}
		}
		sway = sway || slices.ContainsFunc(s.Subjects, func(u *plan.Subject) bool { return u.SwayAssumed })
		hand = hand || s.Log == "" && slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return p.Chance.Known() })
	}
	var parts []string
	if len(ringless) > 0 {
		parts = append(parts, "how the hand lands in "+shotsNamed(ringless)+" (no ring, or one by wire)")
	}
	if len(unknown) > 0 {
		parts = append(parts, "how well the hand lands in "+shotsNamed(unknown)+" (ring not known)")
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

// shotsNamed returns shots for a sentence: by their IDs, or how many they are.
func shotsNamed(shots []string) string {
	switch n := len(shots); {
	case n == 1:
		return "shot " + shots[0]
	case n <= mostSilent:
		return "shots " + strings.Join(shots[:n-1], ", ") + " and " + shots[n-1]
	default:
		return fmt.Sprintf("%d shots", n)
	}
}
