// oval, darkens: what a lens does to a picture beside focusing.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/shot"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// darkensAt is the change of light from which a rack is said to change it, stops (common
// practice, no source).
const darkensAt = 0.25

var Oval = check.Check{Codes: []rule.Code{rule.Oval}, Run: blursOval}

func blursOval(b *check.Shot) []check.Finding {
	g := &b.Plan.Optics.Glass
	if !g.Squeeze.Known() || g.Rear {
		return nil
	}
	squeeze := g.Squeeze.At(b.Plan.SensorTape(b.Plan.Optics.Start.Distance, 0))
	if math.IsNaN(squeeze) || squeeze <= 1 {
		return nil
	}
	f := check.Finding{Diagnostic: lang.Diagnostic{
		Code: "oval", Severity: lang.Note,
		Message: fmt.Sprintf("the disc is %s times as high as wide: sharpness is judged by its height", units.Decimal(squeeze, 2)),
		Figures: []lang.Figure{check.Figure("squeeze", squeeze)},
	}}
	if len(b.Pulls) > 0 {
		return []check.Finding{b.About(b.Pulls[0], f)}
	}
	f.Range = b.Head.Range()
	return []check.Finding{f}
}

var Darkens = check.Check{Codes: []rule.Code{rule.Darkens}, Run: changesLight}

func changesLight(b *check.Shot) (found []check.Finding) {
	b.Racks(func(p *shot.Pull) {
		lost := b.LostBetween(p)
		if b.OutOfReach(p) || !(math.Abs(lost) >= darkensAt) || math.IsInf(lost, 0) {
			return
		}
		word := "loses"
		if lost < 0 {
			word = "gains"
		}
		found = append(found, b.About(p, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "darkens", Severity: lang.Note, Detail: "Near, a lens passes less light; a meter at the camera does not see it.",
			Message: fmt.Sprintf("the picture %s %s in this rack", word, b.Units.Stops(math.Abs(lost))),
			Figures: []lang.Figure{check.Figure("stops", lost)},
		}}))
	})
	return found
}
