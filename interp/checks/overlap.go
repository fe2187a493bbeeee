// racks-overlap: the focus is wanted in two places at once.

package checks

import (
	"cmp"
	"fmt"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

// An overlap is two pulls at once: late is the one written below the other, which
// was made to overlap it.
type overlap struct{ late, early *clock.Pull }

// checkOverlap tells every pull that overlaps one above it, once: of several, by
// the one that lands last.
func checkOverlap(b Run) {
	var list []overlap
	var p *clock.Pull // the rack that lands last of those before
	for _, q := range b.Pulls {
		under := p
		if !q.Follow && (p == nil || q.LandS > p.LandS) {
			p = q
		}
		if under == nil || q.StartS >= under.LandS-1e-9 {
			continue
		}
		o := overlap{late: q, early: under}
		if under.Item > q.Item {
			o = overlap{late: under, early: q}
		}
		i := slices.IndexFunc(list, func(x overlap) bool { return x.late == o.late })
		switch {
		case i < 0:
			list = append(list, o)
		case o.early.LandS > list[i].early.LandS:
			list[i] = o
		}
	}
	for _, o := range list {
		b.tellOverlap(o)
	}
}

func (b Run) tellOverlap(o overlap) {
	late, early := o.late, o.early
	message := fmt.Sprintf("%s starts at %s, and %s lands only at %s",
		late.Called(), inwords.Seconds(late.StartS), early.Called(), inwords.Seconds(early.LandS))
	if late.StartS < early.StartS {
		message = fmt.Sprintf("%s, from %s to %s, is still under way when %s starts at %s",
			late.Called(), inwords.Seconds(late.StartS), inwords.Seconds(late.LandS), early.Called(), inwords.Seconds(early.StartS))
	}
	b.tellPull(late, shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "racks-overlap", Severity: lang.Error, Message: message,
		Related: []lang.Related{{Message: early.Called(), Range: early.Stmt.Range()}},
		Figures: []lang.Figure{shot.Figure("start_s", late.StartS), shot.Figure("land_s", early.LandS)},
	}, Tries: func() []change.Change {
		tries := b.overTry(late, inwords.FloorTo(late.LandS-early.LandS, 10))
		if late.StartS < early.StartS { // over before the other starts
			tries = append(tries, b.overTry(late, inwords.FloorTo(early.StartS-late.StartS, 10))...)
		}
		return append(tries, b.laterTry(late, early.LandS-late.StartS)...)
	}})
}

// checkBlockingOverlap reports anyone and anything that is to move in two ways
// at once.
func checkBlockingOverlap(b Run) {
	last := map[any]*stage.Move{}
	moves := slices.SortedStableFunc(slices.Values(b.Stage.Moves), func(a, c *stage.Move) int { return cmp.Compare(a.Start, c.Start) })
	for _, m := range moves {
		var key any = m.Kind
		what := "the " + m.Kind
		if m.Who != nil {
			key, what = m.Who, m.Who.Name
		}
		if p := last[key]; p != nil && m.Start < p.End-1e-9 {
			b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "moves-overlap", Severity: lang.Error, Range: m.Stmt.Range(), Time: m.Start,
				Message: fmt.Sprintf("%s starts a move at %s, and the one before ends only at %s", what, inwords.Seconds(m.Start), inwords.Seconds(p.End)),
				Related: []lang.Related{{Message: "this move is still under way", Range: p.Stmt.Range()}},
			}})
		}
		if m.Start < -1e-9 {
			b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "before-the-shot", Severity: lang.Error, Range: m.Stmt.Range(),
				Message: fmt.Sprintf("%s would have to start %s before the shot does", what, inwords.Seconds(-m.Start)),
			}})
		}
		last[key] = m
	}
}
