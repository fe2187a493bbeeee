// How far the camera tilts.

package shot

import (
	"fmt"
	"math"

	"pullscore/interp/units"
)

// steepest is how far up or down a camera tilts, degrees.
const steepest = 90

// limitTurns tells of tilts that go past straight up or down.
func (b *builder) limitTurns(out *Built) {
	for _, m := range out.Stage.Moves {
		if m.Kind != "tilt" || math.Abs(m.To) <= steepest+1e-9 && math.Abs(m.From) <= steepest+1e-9 {
			continue
		}
		it := out.Items[m.Item]
		it.In.Fail(m.Stmt.Range(), "out-of-range", fmt.Sprintf("the camera tilts to %s up or down at most, and this goes to %s",
			units.Style{}.Angle(steepest), units.Style{}.AngleTo(m.To, 1)), "")
	}
}
