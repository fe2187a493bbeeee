// cuts-into-line: the focus leaves a speaker within the line.

package checks

import (
	"fmt"
	"slices"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/interp/stage"
	"pullscore/lang"
)

func checkCutsIntoLine(b Run) {
	b.Racks(func(p *clock.Pull) {
		if p.Because != "" || b.StaysOn(p) {
			return
		}
		from := b.GoalBefore(p).Members()
		for _, l := range b.Clock.Lines {
			if l == nil || !speaks(from, l) || !b.Clock.At[l.Item].Known {
				continue
			}
			m := b.Clock.At[l.Item]
			if p.StartS <= m.StartS+1e-9 || p.StartS >= m.EndS-1e-9 {
				continue
			}
			b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", l.Who, inwords.Seconds(m.EndS-p.StartS)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{shot.Figure("left_s", m.EndS-p.StartS)},
				Related: []lang.Related{{Message: "the line", Range: l.Stmt.Range()}},
			}, Tries: func() []change.Change {
				return []change.Change{
					edited(change.Edit{Kind: change.OnEndOf, Item: p.Item + 1, Who: l.Who, Seconds: m.EndS}),
					edited(change.Edit{Kind: change.Because, Item: p.Item + 1}),
				}
			}})
			return
		}
	})
}

// speaks tells whether a line is one of these subjects'.
func speaks(who []*stage.Subject, l *clock.Line) bool {
	return slices.ContainsFunc(who, func(u *stage.Subject) bool { return u.Name == l.Who })
}
