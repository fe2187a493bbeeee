// speed-light, speed-sound: what a camera does to light and sound that runs at another
// speed than the film.

package glass

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
)

var Speed = check.Check{Codes: []rule.Code{rule.SpeedLight, rule.SpeedSound}, Run: runsOff}

// lightTold is the difference of light from which a word is said, in stops: the picture
// may be off by as much.
const lightTold = 0.25

func runsOff(b *check.Shot) []check.Finding {
	at := b.Plan.Speed()
	if !at.Off() {
		return nil
	}
	var found []check.Finding
	frames := fmt.Sprintf("at %s frames a second", units.Decimal(at.Shoots, 3))
	less := math.Log2(at.Factor())
	if math.Abs(less) > lightTold && !math.IsNaN(b.Setup.Meter) {
		word := "less"
		if less < 0 {
			word = "more"
		}
		found = append(found, check.Finding{Diagnostic: lang.Diagnostic{
			Code: "speed-light", Severity: lang.Note, Range: b.Setup.MeterAt,
			Message: fmt.Sprintf("%s each frame gets %s %s light than at %s: has the meter been read at that speed?",
				frames, b.Units.Stops(math.Abs(less)), word, at.Rate),
			Figures: []lang.Figure{check.Figure("stops", less), check.Figure("shoots", at.Shoots), check.Figure("slow_factor", at.Factor())},
		}})
	}
	if len(b.Clock.InOrder) > 0 {
		l := b.Clock.InOrder[0]
		found = append(found, check.Finding{Item: l.Item + 1, Diagnostic: lang.Diagnostic{
			Code: "speed-sound", Severity: lang.Warning, Range: l.Stmt.Range(), Time: b.Clock.At[l.Item].StartS,
			Message: fmt.Sprintf("the shot runs at %s times: on the screen this line is not in step with its mouth", units.Decimal(at.Factor(), 3)),
			Detail:  "Lines in an off-speed shot are for the hand alone.",
			Figures: []lang.Figure{check.Figure("slow_factor", at.Factor())},
		}})
	}
	return found
}
