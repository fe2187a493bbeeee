// cuts-into-line: the focus leaves a speaker within the line.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var cutsIntoLine = Check{Codes: []rule.Code{rule.CutsIntoLine}, Run: leavesSpeaker}

func leavesSpeaker(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		if p.Rack.Because != "" || b.StaysOn(p) {
			return
		}
		from := b.GoalBefore(p).Members()
		for _, l := range b.Clock.Lines {
			if l == nil || !speaks(from, l) || !b.Clock.At[l.Item].Known {
				continue
			}
			m := b.Clock.At[l.Item]
			if p.Rack.StartS <= m.StartS+1e-9 || p.Rack.StartS >= m.EndS-1e-9 {
				continue
			}
			found = append(found, b.about(p, Finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", l.Who, inwords.Seconds(m.EndS-p.Rack.StartS)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{figure("left_s", m.EndS-p.Rack.StartS)},
				Related: []lang.Related{{Message: "the line", Range: l.Stmt.Range()}},
			}, Tries: func() []change.Change {
				return []change.Change{
					edited(change.Edit{Kind: change.OnEndOf, Item: p.Rack.Item + 1, Who: l.Who, Seconds: m.EndS}),
					edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1}),
				}
			}}))
			return
		}
	})
	return found
}
