// cuts-into-line: the focus leaves a speaker within the line.

package interp

import (
	"fmt"
	"slices"

	"pullscore/lang"
)

func checkCutsIntoLine(b run) {
	b.racks(func(p *pull) {
		if p.Because != "" || b.staysOn(p) {
			return
		}
		from := b.goalBefore(p).members()
		for _, l := range b.clock.lines {
			if l == nil || !speaks(from, l) || !b.clock.at[l.item].known {
				continue
			}
			m := b.clock.at[l.item]
			if p.start <= m.start+1e-9 || p.start >= m.end-1e-9 {
				continue
			}
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", l.who, seconds(m.end-p.start)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{figure("left_s", m.end-p.start)},
				Related: []lang.Related{{Message: "the line", Range: l.stmt.Range()}},
			}, tries: func() []try {
				return []try{
					{lang.Cure{Text: "on end of " + lang.WriteName(l.who), Value: m.end, Unit: "s"}, change{Item: p.item + 1, Rack: onEndOf(l.who)}},
					{lang.Cure{Text: `because "why"`}, change{Item: p.item + 1, Rack: withReason}},
				}
			}})
			return
		}
	})
}

// speaks tells whether a line is one of these subjects'.
func speaks(who []*subject, l *line) bool {
	return slices.ContainsFunc(who, func(u *subject) bool { return u.Name == l.who })
}
