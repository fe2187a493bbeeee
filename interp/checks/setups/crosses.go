// crosses-line: a camera on the other side of the line between two people.
//
// A cut between two cameras on either side of that line turns the two people round: who
// looked right looks left, and they seem to look past each other. The line counts for as
// long as one of the two speaks to the other, and only for cameras that show one of them
// then. Two set-ups are compared at every line of the dialogue that both have; if there is
// none, at the two lines of it that are nearest.

package setups

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/staging"
	"pullscore/lang"
)

// A pair is two people with a line between them.
type pair struct{ a, b string }

// A stand is how a camera stands to a pair while something is said.
type stand struct {
	of   pair
	line int     // the index of what is said
	t    float64 // seconds of the scene
	side float64 // to the right of the line from a to b, metres
}

func crosses(sc *scene) (told []lang.Diagnostic) {
	spoken := sc.spoken()
	stands := make([][]stand, len(sc.shots))
	for i, s := range sc.shots {
		if s.Staging.Placed && s.Staging.Action && s.Staging.Because == "" {
			stands[i] = standsOf(s, spoken)
		}
	}
	for j := range sc.shots {
		for i := range j {
			if mine, theirs := crossed(stands[j], stands[i]); len(mine) > 0 {
				told = append(told, sc.crossing(sc.shots[j], sc.shots[i], mine, theirs))
				break
			}
		}
	}
	return told
}

// spoken returns the lines of action with one entry for each time that somebody speaks: a
// line that the plan says counts whoever does. Everyone is named in one order.
func (sc *scene) spoken() (list []plan.LineOfAction) {
	var order []pair
	add := func(l plan.LineOfAction) {
		p := pair{l.From, l.To}
		if slices.Contains(order, pair{p.b, p.a}) {
			l.From, l.To = l.To, l.From
		} else if !slices.Contains(order, p) {
			order = append(order, p)
		}
		list = append(list, l)
	}
	for _, axis := range sc.Axes {
		if !axis.Said || len(sc.Lines) == 0 {
			add(axis)
			continue
		}
		for _, l := range sc.Lines {
			axis.Start, axis.End = l.Start, l.End
			add(axis)
		}
	}
	return list
}

// standsOf returns how a camera stands to each pair of which it shows one while something
// is said.
func standsOf(s *plan.Shot, spoken []plan.LineOfAction) (list []stand) {
	covers := s.Staging.Covers
	for i, l := range spoken {
		from, to := max(l.Start, covers[0]), min(l.End, covers[1])
		if to < from || to == from && l.End > l.Start {
			continue
		}
		start := float64(from - covers[0])
		v, ok := staging.At(s, l.From, l.To, start)
		if ok && shows(s, l, start, float64(to-covers[0])) {
			list = append(list, stand{of: pair{l.From, l.To}, line: i, t: float64(from), side: float64(v.Side)})
		}
	}
	return list
}

// shows reports whether one of two people is in the picture as something is said: as it
// starts, in its middle, or as it ends.
func shows(s *plan.Shot, l plan.LineOfAction, from, to float64) bool {
	for _, name := range []string{l.From, l.To} {
		u := s.Subject(name)
		for _, t := range []float64{from, from + (to-from)/2, to} {
			if u != nil && s.FrameAt(u, t) != plan.OutOfFrame {
				return true
			}
		}
	}
	return false
}

// crossed returns where two cameras stand on either side of a line, each pair once.
func crossed(mine, theirs []stand) (left, right []stand) {
	var done []pair
	for _, m := range mine {
		if slices.Contains(done, m.of) {
			continue
		}
		done = append(done, m.of)
		if a, b, ok := opposite(of(mine, m.of), of(theirs, m.of)); ok {
			left, right = append(left, a), append(right, b)
		}
	}
	return left, right
}

// of returns the stands to one pair.
func of(list []stand, p pair) []stand {
	return slices.DeleteFunc(slices.Clone(list), func(s stand) bool { return s.of != p })
}

// opposite returns the first two stands of two cameras, while the same is said, that are on
// either side of the line. Where they have nothing in common it looks at the nearest two.
func opposite(mine, theirs []stand) (a, b stand, ok bool) {
	sides := func(a, b stand) bool {
		return math.Abs(a.side) > staging.OnTheLine && math.Abs(b.side) > staging.OnTheLine && (a.side > 0) != (b.side > 0)
	}
	both, apart := false, math.Inf(1)
	for _, m := range mine {
		for _, o := range theirs {
			if m.line == o.line {
				if sides(m, o) {
					return m, o, true
				}
				both = true
			}
			if d := math.Abs(m.t - o.t); d < apart {
				a, b, apart = m, o, d
			}
		}
	}
	return a, b, !both && !math.IsInf(apart, 1) && sides(a, b)
}

// crossing tells of a camera that stands across a line from an earlier one.
func (sc *scene) crossing(s, earlier *plan.Shot, mine, theirs []stand) lang.Diagnostic {
	u, m, o := style(s), mine[0], theirs[0]
	detail := "Put both on one side, or add because and the reason if you want it."
	if len(mine) > 1 {
		var others []string
		for _, x := range mine[1:] {
			others = append(others, x.of.a+" to "+x.of.b)
		}
		detail = "So it does to the line " + strings.Join(others, ", ") + ". " + detail
	}
	stands := func(side float64) string {
		return fmt.Sprintf("%s %s", u.Tape(math.Abs(side)), word(side, "left", "right"))
	}
	return lang.Diagnostic{
		Code: "crosses-line", Shot: s.ID, Range: sc.placed(s), Time: m.t - float64(s.Staging.Covers[0]),
		Message: fmt.Sprintf("%s stands %s of the line %s to %s, and %s %s of it", s.ID, stands(m.side), m.of.a, m.of.b, earlier.ID, stands(o.side)),
		Detail:  detail,
		Figures: []lang.Figure{figure("line_side_m", m.side), figure("other_side_m", o.side)},
		Related: []lang.Related{{Message: "where the camera of " + earlier.ID + " stands", Range: sc.placed(earlier)}},
	}
}
