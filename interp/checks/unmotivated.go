// unmotivated: nothing in the scene asks for the rack.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

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
		found = append(found, b.about(p, Finding{Diagnostic: lang.Diagnostic{
			Code: "unmotivated", Severity: lang.Warning, Message: message,
			Detail: "Give it a word, a cue or a reason.",
		}, Tries: func() []change.Change {
			return []change.Change{edited(change.Edit{Kind: change.Because, Item: p.Rack.Item + 1})}
		}}))
	})
	return found
}
