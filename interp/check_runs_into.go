// runs-into: the camera and someone would meet.

package interp

import (
	"fmt"
	"math"

	"pullscore/lang"
)

// Nearer than this to the sensor mark, and no farther than that from the axis,
// there is the camera itself, metres.
const (
	cameraReach = 0.05
	cameraHalf  = 0.5
)

func checkRunsInto(b run) {
	for _, m := range b.stage.moves {
		if m.kind == "zoom" {
			continue
		}
		for _, u := range b.stage.order {
			if m.who != nil && !b.stage.hangsOn(u, m.who) || !b.meets(u, m) {
				continue
			}
			b.tell(finding{Diagnostic: lang.Diagnostic{
				Code: "runs-into", Severity: lang.Error, Range: m.stmt.Range(), Time: m.end,
				Message: fmt.Sprintf("the camera and %s would meet: at %s %s", u.Name, seconds(m.end), b.whereTo(u, m.end)),
				Detail:  "Distances are from where the camera then stands; give it another way.",
				Figures: []lang.Figure{figure("distance_m", b.shot.DistanceAt(u.Subject, m.end))},
			}})
			break
		}
	}
}

// meets tells whether a move brings a subject that stood before the camera up
// to it or past it on its way.
func (b run) meets(u *subject, m *move) bool {
	return b.shot.DistanceAt(u.Subject, m.start) > cameraReach &&
		b.shot.DistanceAt(u.Subject, m.end) <= cameraReach &&
		math.Abs(u.Across.At(m.end)) < cameraHalf
}

func (b run) whereTo(u *subject, t float64) string {
	d := b.shot.DistanceAt(u.Subject, t)
	if d < 0 {
		return metres(-d) + " behind the sensor"
	}
	return metres(d) + " before the sensor"
}
