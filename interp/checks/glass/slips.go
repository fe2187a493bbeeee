// slips: a rack lands against an end of the ring that holds nothing.

package glass

import (
	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Slips = check.Check{Codes: []rule.Code{rule.Slips}, Run: landsOnSlip}

func landsOnSlip(b *check.Shot) (found []check.Finding) {
	b.Racks(func(p *shot.Pull) {
		if b.LandsOnSlip(p) {
			found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "slips", Severity: lang.Warning,
				Message: "the ring slips past its end, and this rack lands against it",
				Detail:  "Stop at the mark, or the marks move.",
			}}))
		}
	})
	return found
}
