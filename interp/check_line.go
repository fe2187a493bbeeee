// cuts-into-line: the focus leaves a speaker within the line.

package interp

import (
	"fmt"

	"pullscore/lang"
)

func checkCutsIntoLine(b *builder) {
	b.racks(func(p *pull) {
		from := b.goalBefore(p).subject
		if from == nil || p.Because != "" || b.staysOn(p) {
			return
		}
		for _, l := range b.clock.lines {
			if l == nil || l.who != from.Name || !b.clock.at[l.item].known {
				continue
			}
			m := b.clock.at[l.item]
			if p.start <= m.start+1e-9 || p.start >= m.end-1e-9 {
				continue
			}
			b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", from.Name, seconds(m.end-p.start)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{figure("left_s", m.end-p.start)},
				Related: []lang.Related{{Message: "the line", Range: l.stmt.Range()}},
			}, tries: func() []try {
				return []try{
					{lang.Cure{Text: "on end of " + quoteName(from.Name), Value: m.end, Unit: "s"}, change{Item: p.item + 1, Rack: onEndOf(from.Name)}},
					{lang.Cure{Text: `because "why"`}, change{Item: p.item + 1, Rack: withReason}},
				}
			}})
			return
		}
	})
}
