// cuts-into-line: the focus leaves a speaker within the line.

package checks

import (
	"fmt"

	"pullscore/interp/change"
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
		for _, l := range b.speaking(b.GoalBefore(p).Members(), p.Rack.StartS, p.Rack.StartS) {
			if p.Rack.StartS <= l.start+1e-9 || p.Rack.StartS >= l.end-1e-9 {
				continue
			}
			found = append(found, b.about(p, Finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", l.line.Who, b.units.Time(l.end-p.Rack.StartS)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{figure("left_s", l.end-p.Rack.StartS)},
				Related: []lang.Related{{Message: "the line", Range: l.line.Stmt.Range()}},
			}, Tries: func() []change.Change {
				return []change.Change{
					edited(change.Edit{Kind: change.OnEndOf, Item: p.Rack.Item + 1, Who: l.line.Who, Seconds: l.end}),
					edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1}),
				}
			}}))
			return
		}
	})
	return found
}
