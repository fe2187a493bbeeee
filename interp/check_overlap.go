// racks-overlap: the focus is wanted in two places at once.

package interp

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pullscore/lang"
)

func checkOverlap(b *builder) {
	var p *pull // the rack that lands last of those before
	for _, q := range b.pulls {
		under := p
		if !q.follow && (p == nil || q.land > p.land) {
			p = q
		}
		if under == nil || q.start >= under.land-1e-9 {
			continue
		}
		b.tellOverlap(under, q)
	}
}

func (b *builder) tellOverlap(p, q *pull) {
	b.tellPull(q, finding{Diagnostic: lang.Diagnostic{
		Code: "racks-overlap", Severity: lang.Error,
		Message: fmt.Sprintf("%s starts at %s, and the rack to %s lands only at %s", racked(b, q), seconds(q.start), p.to(), seconds(p.land)),
		Related: []lang.Related{{Message: "this rack is still under way", Range: p.stmt.Range()}},
		Figures: []lang.Figure{figure("start_s", q.start), figure("land_s", p.land)},
	}, tries: func() []try {
		return append(b.overTry(q, math.Floor((q.land-p.land)*10+1e-6)/10), b.laterTry(q, p.land-q.start)...)
	}})
}

// checkBlockingOverlap reports anyone and anything that is to move in two ways
// at once.
func checkBlockingOverlap(b *builder) {
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
