// The marks of a shot that somebody can miss.

package cards

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A mark is a place that the focus goes to for somebody. Its figures are those of the
// plan.
type mark struct {
	name  string
	tape  float64 // metres
	uses  []string
	deep  float64 // metres; 0 for several people at once
	miss  plan.Miss
	order int // of the subject
}

// marksOf returns the marks of the start and of all landings, subjects in their order,
// and the far marks of one subject first. Landings with the same figures share one mark.
func marksOf(s *plan.Shot) []mark {
	names := sheet.Names(s)
	var list []mark
	add := func(use string, goal plan.Target, name string, tape plan.Number, miss *plan.Miss) {
		if miss == nil {
			return
		}
		m := mark{name: name, tape: float64(tape), uses: []string{use}, miss: *miss, order: len(names)}
		for _, of := range append(slices.Clone(goal.Names), goal.Name) {
			if at := slices.Index(names, of); at >= 0 {
				m.order = min(m.order, at)
			}
		}
		if u := s.Subject(goal.Name); u != nil && len(goal.Names) < 2 {
			m.deep = known(u.Deep)
		}
		for i := range list {
			if list[i].same(&m) {
				list[i].uses = append(list[i].uses, use)
				return
			}
		}
		list = append(list, m)
	}
	start := s.Optics.Start
	add("start", start, sheet.TargetName(s, start.Name, start.Text), s.Start.M, s.Start.Miss)
	for _, p := range s.Pulls {
		goal := p.Goal
		goal.Name = cmp.Or(goal.Name, p.To)
		add(fmt.Sprintf("%s %d", p.Kind, p.Number), goal, sheet.TargetName(s, p.To, p.Target), p.ToM, p.Miss)
	}
	slices.SortStableFunc(list, func(a, b mark) int {
		return cmp.Or(cmp.Compare(a.order, b.order), cmp.Compare(b.tape, a.tape))
	})
	return list
}

// same reports whether two marks have the same figures, so that one row tells of both.
func (m *mark) same(o *mark) bool {
	return m.name == o.name && m.tape == o.tape && fmt.Sprint(m.miss) == fmt.Sprint(o.miss) // NaN as well
}

// used returns what the mark is used for: "start, rack 3".
func (m *mark) used() string { return strings.Join(m.uses, ", ") }

// A flaw is what is wrong with somebody on the very mark.
type flaw uint8

const (
	sound      flaw = iota
	tooDeep         // their depth is more than is sharp
	outOfFrame      // the picture ends before them
)

// flaw returns what is wrong with somebody who stands on the mark.
func (m *mark) flaw() flaw {
	switch {
	case min(m.miss.SoftForward, m.miss.SoftBack) <= 0:
		return tooDeep
	case m.miss.Left.Known() && min(m.miss.Left, m.miss.Right) <= 0:
		return outOfFrame
	}
	return sound
}

// least returns how far they may miss the mark at least, in metres; infinite if it never
// matters.
func (m *mark) least() float64 {
	return min(float64(m.miss.SoftForward), float64(m.miss.SoftBack))
}

// known returns a number, and 0 for one that nobody knows.
func known(n plan.Number) float64 {
	if v := float64(n); !math.IsNaN(v) {
		return v
	}
	return 0
}
