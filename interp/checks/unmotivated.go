// unmotivated: nothing in the scene asks for the rack.

package checks

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/clock"
	"pullscore/interp/shot"
	"pullscore/lang"
)

// speaksWithin is how near to the landing the one reached has to speak to be
// the reason for a rack, seconds.
const speaksWithin = 1.0

func checkUnmotivated(b Run) {
	b.Racks(func(p *clock.Pull) {
		if p.Anchored || p.Because != "" || b.StaysOn(p) {
			return
		}
		for _, l := range b.Clock.Lines {
			if l == nil || !speaks(p.Aim.Members(), l) {
				continue
			}
			if m := b.Clock.At[l.Item]; m.Known && m.StartS <= p.LandS+speaksWithin && m.EndS >= p.LandS-speaksWithin {
				return
			}
		}
		message := fmt.Sprintf("nothing asks for the rack to %s: it hangs on no word or cue, and gives no reason", p.ToText())
		if p.Aim.Subject != nil {
			message = fmt.Sprintf("nothing asks for the rack to %s: it hangs on no word or cue, gives no reason, and %s does not speak", p.ToText(), p.ToText())
		}
		b.tellPull(p, shot.Finding{Diagnostic: lang.Diagnostic{
			Code: "unmotivated", Severity: lang.Warning, Message: message,
			Detail: "Hang it on a word or a cue, or say why.",
		}, Tries: func() []change.Change {
			return []change.Change{edited(change.Edit{Kind: change.Because, Item: p.Item + 1})}
		}})
	})
}
