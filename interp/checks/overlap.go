// racks-overlap: the focus has to be in two places at once.

package checks

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// An overlap is two pulls at once: late is the one written below the other, which
// was made to overlap it.
type overlap struct{ late, early *shot.Pull }

// checkOverlap tells every pull that overlaps one above it, once: of several, by
// the one that lands last.
var racksOverlap = Check{Codes: []rule.Code{rule.RacksOverlap}, Run: overlaps}

func overlaps(b *Shot) (found []Finding) {
	var list []overlap
	told := map[*shot.Pull]int{} // by the one written below, its place in the list
	var p *shot.Pull             // the rack that lands last of those before
	for _, q := range b.Pulls {
		if q.Plan.IsRemoved() {
			continue
		}
		under := p
		if !q.Rack.Follow && (p == nil || q.Rack.LandS > p.Rack.LandS) {
			p = q
		}
		if under == nil || q.Rack.StartS >= under.Rack.LandS-1e-9 {
			continue
		}
		o := overlap{late: q, early: under}
		if under.Rack.Item > q.Rack.Item {
			o = overlap{late: under, early: q}
		}
		i, ok := told[o.late]
		switch {
		case !ok:
			told[o.late] = len(list)
			list = append(list, o)
		case o.early.Rack.LandS > list[i].early.Rack.LandS:
			list[i] = o
		}
	}
	for _, o := range list {
		found = append(found, b.overlapping(o))
	}
	return found
}

func (b *Shot) overlapping(o overlap) Finding {
	late, early := o.late, o.early
	message := fmt.Sprintf("%s starts at %s, and %s lands only at %s",
		late.Rack.Called(), b.Units.Time(late.Rack.StartS), early.Rack.Called(), b.Units.Time(early.Rack.LandS))
	if late.Rack.StartS < early.Rack.StartS {
		message = fmt.Sprintf("%s, from %s to %s, is still under way when %s starts at %s",
			late.Rack.Called(), b.Units.Time(late.Rack.StartS), b.Units.Time(late.Rack.LandS), early.Rack.Called(), b.Units.Time(early.Rack.StartS))
	}
	return b.About(late, Finding{Diagnostic: lang.Diagnostic{
		Code: "racks-overlap", Severity: lang.Error, Message: message,
		Related: []lang.Related{{Message: early.Rack.Called(), Range: early.Rack.Stmt.Range()}},
		Figures: []lang.Figure{check.Figure("start_s", late.Rack.StartS), check.Figure("land_s", early.Rack.LandS)},
	}, Tries: func() []change.Change {
		tries := b.OverTry(late, units.Down(late.Rack.LandS-early.Rack.LandS, 10))
		if late.Rack.StartS < early.Rack.StartS { // over before the other starts
			tries = append(tries, b.OverTry(late, units.Down(early.Rack.StartS-late.Rack.StartS, 10))...)
		}
		return append(tries, b.LaterTry(late, early.Rack.LandS-late.Rack.StartS)...)
	}})
}

// checkBlockingOverlap reports anyone and anything that is to move in two ways
// at once.
var movesOverlap = Check{Codes: []rule.Code{rule.MovesOverlap, rule.BeforeTheShot}, Run: movesTwice}

func movesTwice(b *Shot) (found []Finding) {
	last := map[any]*stage.Move{}
	told := map[lang.Statement]bool{} // turns: a pan and tilt is two moves
	moves := slices.SortedStableFunc(slices.Values(b.Stage.Moves), func(a, c *stage.Move) int { return cmp.Compare(a.Start, c.Start) })
	for _, m := range moves {
		var key any = m.Kind
		what := "the " + m.Kind
		if m.Who != nil {
			key, what = m.Who, m.Who.Name
		}
		if b.Clock.ItemCutOut(m.Item) {
			continue
		}
		if p := last[key]; p != nil && m.Start < p.End-1e-9 && !told[m.Stmt] {
			told[m.Stmt] = isTurn(m.Stmt)
			found = append(found, Finding{Diagnostic: lang.Diagnostic{
				Code: "moves-overlap", Severity: lang.Error, Range: m.Stmt.Range(), Time: m.Start,
				Message: fmt.Sprintf("%s starts a move at %s, and the one before ends only at %s", what, b.Units.Time(m.Start), b.Units.Time(p.End)),
				Related: []lang.Related{{Message: "this move is still under way", Range: p.Stmt.Range()}},
			}})
		}
		if m.Start < -1e-9 && !told[m.Stmt] && !goesAlong(m.Stmt) && !b.InList() {
			told[m.Stmt] = isTurn(m.Stmt)
			found = append(found, Finding{Diagnostic: lang.Diagnostic{
				Code: "before-the-shot", Severity: lang.Error, Range: m.Stmt.Range(),
				Message: fmt.Sprintf("%s would start %s before the shot", what, b.Units.Time(-m.Start)),
			}})
		}
		last[key] = m
	}
	return found
}

func isTurn(stmt lang.Statement) bool {
	_, ok := stmt.(*lang.Turn)
	return ok
}

// goesAlong reports whether a move takes its start from another, which is told of.
func goesAlong(stmt lang.Statement) bool {
	switch s := stmt.(type) {
	case *lang.Turn:
		return s.Alongside != ""
	case *lang.Dolly:
		return s.Alongside != ""
	case *lang.Track:
		return s.Alongside != ""
	case *lang.Boom:
		return s.Alongside != ""
	case *lang.Zoom:
		return s.Alongside != ""
	}
	return false
}
