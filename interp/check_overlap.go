// racks-overlap: the focus is wanted in two places at once.

package interp

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/lang"
)

// An overlap is two pulls at once: late is the one written below the other, which
// was made to overlap it.
type overlap struct{ late, early *pull }

// checkOverlap tells every pull that overlaps one above it, once: of several, by
// the one that lands last.
func checkOverlap(b run) {
	var list []overlap
	var p *pull // the rack that lands last of those before
	for _, q := range b.pulls {
		under := p
		if !q.follow && (p == nil || q.land > p.land) {
			p = q
		}
		if under == nil || q.start >= under.land-1e-9 {
			continue
		}
		o := overlap{late: q, early: under}
		if under.item > q.item {
			o = overlap{late: under, early: q}
		}
		i := slices.IndexFunc(list, func(x overlap) bool { return x.late == o.late })
		switch {
		case i < 0:
			list = append(list, o)
		case o.early.land > list[i].early.land:
			list[i] = o
		}
	}
	for _, o := range list {
		b.tellOverlap(o)
	}
}

func (b run) tellOverlap(o overlap) {
	late, early := o.late, o.early
	message := fmt.Sprintf("%s starts at %s, and %s lands only at %s",
		late.called(), seconds(late.start), early.called(), seconds(early.land))
	if late.start < early.start {
		message = fmt.Sprintf("%s, from %s to %s, is still under way when %s starts at %s",
			late.called(), seconds(late.start), seconds(late.land), early.called(), seconds(early.start))
	}
	b.tellPull(late, finding{Diagnostic: lang.Diagnostic{
		Code: "racks-overlap", Severity: lang.Error, Message: message,
		Related: []lang.Related{{Message: early.called(), Range: early.stmt.Range()}},
		Figures: []lang.Figure{figure("start_s", late.start), figure("land_s", early.land)},
	}, tries: func() []try {
		tries := b.overTry(late, floorTo(late.land-early.land, 10))
		if late.start < early.start { // over before the other starts
			tries = append(tries, b.overTry(late, floorTo(early.start-late.start, 10))...)
		}
		return append(tries, b.laterTry(late, early.land-late.start)...)
	}})
}

// called names a pull by what is written, whatever the focus is on before.
func (p *pull) called() string {
	if p.follow {
		return "the follow of " + p.to()
	}
	return "the rack to " + p.to()
}

func floorTo(v, perUnit float64) float64 { return math.Floor(v*perUnit+1e-6) / perUnit }

// checkBlockingOverlap reports anyone and anything that is to move in two ways
// at once.
func checkBlockingOverlap(b run) {
	last := map[any]*move{}
	moves := slices.SortedStableFunc(slices.Values(b.stage.moves), func(a, c *move) int { return cmp.Compare(a.start, c.start) })
	for _, m := range moves {
		var key any = m.kind
		what := "the " + m.kind
		if m.who != nil {
			key, what = m.who, m.who.Name
		}
		if p := last[key]; p != nil && m.start < p.end-1e-9 {
			b.tell(finding{Diagnostic: lang.Diagnostic{
				Code: "moves-overlap", Severity: lang.Error, Range: m.stmt.Range(), Time: m.start,
				Message: fmt.Sprintf("%s starts a move at %s, and the one before ends only at %s", what, seconds(m.start), seconds(p.end)),
				Related: []lang.Related{{Message: "this move is still under way", Range: p.stmt.Range()}},
			}})
		}
		if m.start < -1e-9 {
			b.tell(finding{Diagnostic: lang.Diagnostic{
				Code: "before-the-shot", Severity: lang.Error, Range: m.stmt.Range(),
				Message: fmt.Sprintf("%s would have to start %s before the shot does", what, seconds(-m.start)),
			}})
		}
		last[key] = m
	}
}
