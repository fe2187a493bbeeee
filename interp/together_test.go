package interp_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

var (
	anyOver = regexp.MustCompile(`over [0-9.]+ m?s`)
	anyStop = regexp.MustCompile(`stop f/[0-9.]+`)
)

// written writes a cure into the text of a plan, in all its places; ok is false for a
// cure of which this test does not know where it belongs.
func writeTried(src string, s *plan.Shot, step plan.Tried) (text string, ok bool) {
	word, _, _ := strings.Cut(step.Cure, " ")
	if word == "stop" && strings.Count(src, "stop f/") == 1 {
		return anyStop.ReplaceAllString(src, step.Cure), true
	}
	if word != "over" || len(step.Pulls) == 0 {
		return src, false
	}
	lines := strings.Split(src, "\n")
	for _, n := range step.Pulls {
		at := &lines[s.Pulls[n-1].Line-1]
		if len(anyOver.FindAllString(*at, -1)) != 1 {
			return src, false
		}
		*at = anyOver.ReplaceAllString(*at, step.Cure)
	}
	return strings.Join(lines, "\n"), true
}

// counted counts the findings of a shot: errors, warnings, notes.
func counted(s *plan.Shot) (by [3]int) {
	for _, f := range s.Flags {
		by[slices.Index([]string{"error", "warning", "note"}, f.Severity)]++
	}
	return by
}

// Each step of the cures that are tried together leaves what a check of the plan finds
// once they are written into it, and every step leaves less than the one before.
func TestTogether(t *testing.T) {
	plans, steps, several := []string{racksTooShort()}, 0, 0
	for i := range 120 {
		plans = append(plans, generated.Example(i))
	}
	for _, src := range plans {
		res := interpret("plan.pull", src)
		if len(res.Plan.Shots) != 1 {
			continue
		}
		s := res.Plan.Shots[0]
		if s.Together != nil {
			t.Fatal("the cures are tried together though nobody asked")
		}
		res.TryTogether(res.Plan.Shots)
		text, before := src, counted(s)
		if len(s.Together) > 5 {
			t.Errorf("%d steps", len(s.Together))
		}
		for i, step := range s.Together {
			var ok bool
			if text, ok = writeTried(text, s, step); !ok {
				break
			}
			again := interpret("plan.pull", text).Plan.Shots[0]
			now := counted(again)
			if steps++; i > 0 {
				several++
			}
			if len(again.Flags) != step.Leaves {
				t.Errorf("step %d, %+v, leaves %d findings in\n%s", i+1, step, len(again.Flags), text)
			}
			if slices.Compare(now[:], before[:]) >= 0 {
				t.Errorf("step %d, %+v: %v findings after %v", i+1, step, now, before)
			}
			before = now
		}
	}
	if steps < 20 || several < 2 {
		t.Errorf("only %d steps were checked, %d of them not the first", steps, several)
	}
}

// The first step leaves no more than any single cure in all places of its cause would.
func TestTogetherIsGreedy(t *testing.T) {
	src := racksTooShort()
	res := interpret("plan.pull", src)
	res.TryTogether(res.Plan.Shots)
	s := res.Plan.Shots[0]
	if len(s.Together) == 0 {
		t.Fatal("no cure helps")
	}
	first, ok := writeTried(src, s, s.Together[0])
	if !ok {
		t.Fatalf("%+v", s.Together[0])
	}
	least := counted(interpret("plan.pull", first).Plan.Shots[0])
	for _, l := range s.Lettered() {
		for _, cure := range l.Cures {
			step := plan.Tried{Cure: cure}
			for _, n := range l.Flags {
				step.Pulls = append(step.Pulls, s.Flags[n-1].Pull)
			}
			text, ok := writeTried(src, s, step)
			if !ok {
				continue
			}
			if now := counted(interpret("plan.pull", text).Plan.Shots[0]); slices.Compare(now[:], least[:]) < 0 {
				t.Errorf("%s for %s leaves %v, and %s leaves %v", cure, l.Letter, now, s.Together[0].Cure, least)
			}
		}
	}
}
