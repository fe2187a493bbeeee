// Whom each line is said to.
//
// A plan says it with `to NAME`. Where it does not, a line answers the one before it: it
// is said to who spoke last. Somebody who goes on speaks to whom they spoke to before,
// and who speaks first speaks to whoever answers. A voice stands nowhere, so that no line
// leads to it or from it.

package staging

import (
	"slices"

	"pullscore/interp/plan"
)

// LinesOfAction returns the lines between people that no camera should cross: those that
// the plan says, which then hold for all of the scene, else one for each line that
// somebody on the floor says to somebody on the floor.
func LinesOfAction(sc *plan.Scene, said []plan.LineOfAction) []plan.LineOfAction {
	if len(said) == 0 {
		return Spoken(sc)
	}
	list := slices.Clone(said)
	for i := range list {
		list[i].Start, list[i].End, list[i].Said = 0, sc.Duration, true
	}
	return list
}

// Spoken returns from whom to whom each line of a scene goes and how long it takes, in the
// order of time.
func Spoken(sc *plan.Scene) (list []plan.LineOfAction) {
	lines := slices.Clone(sc.Lines)
	slices.SortStableFunc(lines, func(a, b plan.Line) int {
		switch {
		case a.Start < b.Start:
			return -1
		case a.Start > b.Start:
			return 1
		}
		return 0
	})
	to := ""
	for i := range lines {
		l := &lines[i]
		switch {
		case l.To != "":
			to = l.To
		case i == 0 || to == "" && lines[i-1].Who == l.Who:
			to = answers(lines[i:])
		case lines[i-1].Who != l.Who:
			to = lines[i-1].Who
		}
		if to != l.Who && stands(sc, l.Who) && stands(sc, to) {
			list = append(list, plan.LineOfAction{From: l.Who, To: to, Start: l.Start, End: l.End})
		}
	}
	return list
}

// answers returns who speaks next after somebody, unless that is said to another; "" for
// nobody.
func answers(lines []plan.Line) string {
	who := lines[0].Who
	for _, l := range lines[1:] {
		if l.Who == who {
			continue
		}
		if l.To != "" && l.To != who {
			return ""
		}
		return l.Who
	}
	return ""
}

// stands reports whether a name is of somebody on the floor of a scene.
func stands(sc *plan.Scene, name string) bool {
	return slices.ContainsFunc(sc.Subjects, func(u plan.Staged) bool { return u.Name == name })
}

// pairs returns everybody who speaks to another, or between whom the plan says a line,
// each pair once.
func pairs(sc *plan.Scene) (list [][2]string) {
	for _, l := range slices.Concat(Spoken(sc), sc.Axes) {
		if !slices.Contains(list, [2]string{l.From, l.To}) && !slices.Contains(list, [2]string{l.To, l.From}) {
			list = append(list, [2]string{l.From, l.To})
		}
	}
	return list
}
