// unmotivated: nothing in the scene asks for the rack.

package interp

import (
	"fmt"

	"pullscore/lang"
)

// speaksWithin is how near to the landing the one reached has to speak to be
// the reason for a rack, seconds.
const speaksWithin = 1.0

func checkUnmotivated(b run) {
	b.racks(func(p *pull) {
		if p.anchored || p.Because != "" || b.staysOn(p) {
			return
		}
		for _, l := range b.clock.lines {
			if l == nil || !speaks(p.goal.members(), l) {
				continue
			}
			if m := b.clock.at[l.item]; m.known && m.start <= p.land+speaksWithin && m.end >= p.land-speaksWithin {
				return
			}
		}
		message := fmt.Sprintf("nothing asks for the rack to %s: it hangs on no word or cue, and gives no reason", p.to())
		if p.goal.subject != nil {
			message = fmt.Sprintf("nothing asks for the rack to %s: it hangs on no word or cue, gives no reason, and %s does not speak", p.to(), p.to())
		}
		b.tellPull(p, finding{Diagnostic: lang.Diagnostic{
			Code: "unmotivated", Severity: lang.Warning, Message: message,
			Detail: "Hang it on a word or a cue, or say why.",
		}, tries: func() []try {
			return []try{{lang.Cure{Text: `because "why"`}, change{Item: p.item + 1, Rack: withReason}}}
		}})
	})
}
