// play-loses: a rack that would land if the ring had no play.

package glass

import (
	"fmt"

	"pullscore/interp/change"
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics/ring"
)

// LosesByPlay reports whether a rack lands too seldom and would land as wanted without
// the play of the ring. It is told in place of what else is wrong with its landing.
func LosesByPlay(b *check.Shot, p *shot.Pull) bool {
	without, loses := b.WithoutPlay(p)
	wanted := b.Setup.View.Wanted - 1e-9
	return loses && p.Landed.Possible && p.Landed.Chance < wanted && without.Possible && without.Chance >= wanted
}

var PlayLoses = check.Check{Codes: []rule.Code{rule.PlayLoses}, Run: missesByPlay}

func missesByPlay(b *check.Shot) (found []check.Finding) {
	b.Racks(func(p *shot.Pull) {
		if !p.Plan.Chance.Known() || p.Rack.LandS < p.Rack.StartS || !LosesByPlay(b, p) {
			return
		}
		lens := &b.Setup.Lens
		side, detail := "this mark is taken from the other side", "Approach from the side of infinity (rack beyond and come back)."
		switch lens.MarkedFrom() {
		case ring.ToInf:
			detail = "Approach from the near side (rack beyond and come back)."
		case ring.WayUnknown:
			side, detail = "nothing says from which side this mark is taken", "Say which way the marks were come to, as in: marked to inf."
		}
		found = append(found, b.About(p, check.Finding{
			Diagnostic: lang.Diagnostic{
				Code: "play-loses", Severity: lang.Warning,
				Message: fmt.Sprintf("the ring has %s of play, and %s: it lands %s of the time, and %s is wanted",
					b.Units.Angle(lens.Slack()), side, b.Units.Chance(p.Landed.Chance, b.Setup.View.Wanted), b.Units.Wanted(b.Setup.View.Wanted)),
				Detail:  detail,
				Figures: []lang.Figure{check.Figure("play_deg", lens.Slack()), check.Figure("probability", p.Landed.Chance), check.Figure("short_deg", float64(p.Plan.PlayShift))},
			},
			Tries: func() []change.Change { return []change.Change{{BothWays: true}} },
		}))
	})
	return found
}
