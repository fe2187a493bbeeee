// no-ring, by-wire, ring-unknown: what the ring of the lens cannot do, or what nothing
// says of it.

package glass

import (
	"fmt"

	"pullscore/interp/checks/check"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var NoRing = check.Check{Codes: []rule.Code{rule.NoRing, rule.ByWire}, Run: pulledByNoAngle}

func pulledByNoAngle(b *check.Shot) (found []check.Finding) {
	if len(b.Pulls) == 0 {
		return nil
	}
	first := b.Pulls[0]
	switch b.Setup.Lens.RingKind {
	case "none":
		for _, p := range b.Pulls {
			found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
				Code: "no-ring", Severity: lang.Error,
				Message: fmt.Sprintf("lens %q has no ring: its focus cannot be pulled", b.Setup.Lens.Name),
			}}))
		}
	case "wire":
		found = append(found, b.About(first, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "by-wire", Severity: lang.Warning,
			Message: "a ring by wire turns by how fast it is turned: it repeats no mark",
			Detail:  "If the body offers a linear ring: ring by wire, linear over 360 deg.",
		}}))
	}
	return found
}

var RingUnknown = check.Check{Codes: []rule.Code{rule.RingUnknown}, Run: nothingSaid}

func nothingSaid(b *check.Shot) []check.Finding {
	if !b.Plan.RingUnknown() || len(b.Pulls) == 0 {
		return nil
	}
	message := fmt.Sprintf("nothing says how the ring of lens %q turns: no degrees", b.Setup.Lens.Name)
	least, most := 1.0, 0.0
	for _, p := range b.Pulls {
		if p.Guesses != nil {
			least, most = min(least, float64(p.Plan.ChanceBand[0])), max(most, float64(p.Plan.ChanceBand[1]))
		}
	}
	switch lo, hi := b.Units.Chance(least, 0), b.Units.Chance(most, 0); {
	case least > most: // none of them can be landed at all, which is told
	case lo == hi:
		message += ", and on any ring a chance of " + lo
	default:
		message += fmt.Sprintf(", and chances only from %s to %s", lo, hi)
	}
	return []check.Finding{b.About(b.Pulls[0], check.Finding{Diagnostic: lang.Diagnostic{
		Code: "ring-unknown", Severity: lang.Warning, Message: message,
		Detail: "A strip of paper and ten minutes tell: pullscore help throw.",
	}})}
}
