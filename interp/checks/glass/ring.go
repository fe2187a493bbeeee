// no-ring, by-wire, ring-unknown, beyond-marks: what the ring of the lens cannot do, or
// what nothing says of it.

package glass

import (
	"fmt"
	"math"

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
			Message: fmt.Sprintf("the ring of lens %q works by wire and repeats no mark: Pullscore cannot compute an angle or a chance", b.Setup.Lens.Name),
			Detail:  "Set the camera to a linear ring if it has one, or take a lens with a ring that has ends.",
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

var BeyondMarks = check.Check{Codes: []rule.Code{rule.BeyondMarks}, Run: outsideMarks}

func outsideMarks(b *check.Shot) (found []check.Finding) {
	law := b.Plan.Optics.Ring
	if law == nil || !b.Plan.Optics.Marked {
		return nil
	}
	for _, p := range b.Pulls {
		if b.OutOfReach(p) {
			continue // told as inside-closest or macro
		}
		if !math.IsNaN(b.Plan.RingDeg(p.Plan.ToLens, p.Rack.LandS)) {
			continue
		}
		found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "beyond-marks", Severity: lang.Note,
			Message: fmt.Sprintf("%s lies beyond the last mark, and nothing says where infinity is: no angle, no chance", p.Rack.ToText()),
			Detail:  "As in: ring 300 deg, or mark inf at 300 deg.",
			Figures: []lang.Figure{check.Figure("distance_m", float64(p.Plan.ToM))},
		}}))
	}
	return found
}
