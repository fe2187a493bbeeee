package diff

import (
	"slices"
	"strings"
	"testing"

	"pullscore/interp/plan"
)

// turning returns a shot whose camera pans by so many degrees to the right, and somebody
// who is in the picture until it has turned halfway.
func turning(deg, start float64, target string) *plan.Shot {
	u := &plan.Subject{Name: "ILKA", Distance: 2, Seen: &plan.Seen{Tape: 2, InFrame: []plan.Interval{{0, plan.Number(start + 0.5)}}}}
	none := plan.None()
	return &plan.Shot{
		Optics: plan.Optics{Focal: plan.Still(0.05), Camera: plan.Still(0)},
		ID:     "1", Duration: 6, Subjects: []*plan.Subject{u}, Operator: "SELM",
		Turns:    []plan.Turn{{Kind: "pan", Target: target, Start: plan.Number(start), End: plan.Number(start + 1), To: plan.Number(deg), Peak: plan.Number(1.875 * deg), Profile: "smooth"}},
		Blocking: []plan.Blocking{{Kind: "pan", Start: plan.Number(start), End: plan.Number(start + 1), From: none, To: none, FromMM: none, ToMM: none, Profile: "smooth"}},
	}
}

func phrasesOf(b, a *plan.Shot) []string {
	c := comparison{before: b, after: a, rate: 24}
	s := Shot{Change: Changed, Details: c.shot(), Subjects: c.subjects(), Events: c.events(), Before: b, After: a}
	return s.Notes()
}

func TestTurnsAreCompared(t *testing.T) {
	before := turning(12, 1, "")
	if list := phrasesOf(before, turning(12, 1, "")); len(list) > 0 {
		t.Errorf("the same turn: %q", list)
	}
	after := turning(-20, 2, "ILKA")
	after.Operator = "TAV"
	list := phrasesOf(before, after)
	for _, want := range []string{
		"operator SELM -> TAV",
		"ILKA: in the picture 0 s to 1.5 s -> in the picture 0 s to 2.5 s",
		"the pan: 24 frames (1 s) later, goes to none -> ILKA, turns 12° right -> 20° left",
	} {
		if !slices.ContainsFunc(list, func(text string) bool { return strings.Contains(text, want) }) {
			t.Errorf("%q is missing in %q", want, list)
		}
	}
	gone := turning(12, 1, "")
	gone.Turns, gone.Blocking = nil, nil
	if list := phrasesOf(before, gone); !slices.Contains(list, "the pan: gone") {
		t.Errorf("a pan that is gone: %q", list)
	}
}
