// cuts-into-line, unmotivated: a rack that leaves a speaker within the line, and
// one that nothing in the scene asks for.

package checks

import (
	"fmt"

	"pullscore/interp/checks/check"

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
			if p.Rack.StartS <= l.start+1e-9 || p.Rack.StartS >= l.end-1e-9 || b.Unscripted(l.line) {
				continue
			}
			found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
				Code: "cuts-into-line", Severity: lang.Warning,
				Message: fmt.Sprintf("the focus leaves %s within a line, %s before its end", l.line.Who, b.Units.Time(l.end-p.Rack.StartS)),
				Detail:  "Say why it does, or wait for the end of the line.",
				Figures: []lang.Figure{check.Figure("left_s", l.end-p.Rack.StartS)},
				Related: []lang.Related{{Message: "the line", Range: l.line.Stmt.Range()}},
			}, Tries: func() []change.Change {
				return []change.Change{
					check.Edited(change.Edit{Kind: change.OnEndOf, Item: p.Rack.Item + 1, Who: l.line.Who, Seconds: l.end}),
					check.Edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1}),
				}
			}}))
			return
		}
	})
	return found
}

// speaksWithin is how near to the landing the one reached has to speak to be
// the reason for a rack, seconds.
const speaksWithin = 1.0

var unmotivated = Check{Codes: []rule.Code{rule.Unmotivated}, Run: asksForNothing}

func asksForNothing(b *Shot) (found []Finding) {
	b.Racks(func(p *shot.Pull) {
		if p.Rack.Anchored || p.Rack.Because != "" || b.StaysOn(p) {
			return
		}
		if len(b.speaking(p.Rack.Aim.Members(), p.Rack.LandS+speaksWithin, p.Rack.LandS-speaksWithin)) > 0 {
			return
		}
		message := fmt.Sprintf("the rack to %s has no cue and no reason", p.Rack.ToText())
		if p.Rack.Aim.Subject != nil {
			message = fmt.Sprintf("the rack to %s has no cue and no reason, and %s does not speak", p.Rack.ToText(), p.Rack.ToText())
		}
		found = append(found, b.About(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "unmotivated", Severity: lang.Warning, Message: message,
			Detail: "Give it a word, a cue or a reason.",
		}, Tries: func() []change.Change {
			return []change.Change{check.Edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1})}
		}}))
	})
	return found
}
