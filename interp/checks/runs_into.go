// runs-into: the camera and someone would meet.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/checks/rig"

	"pullscore/interp/stage"
	"pullscore/lang"
	"pullscore/lang/rule"
)

// Nearer than this to the sensor mark, and no farther than that from the axis,
// there is the camera itself, metres.
const (
	cameraReach = 0.05
	cameraHalf  = 0.5
)

var runsInto = Check{Codes: []rule.Code{rule.RunsInto}, Run: meetsCamera}

func meetsCamera(b *Shot) (found []Finding) {
	found = append(found, b.standsIn()...)
	for _, m := range b.Stage.Moves {
		if m.Kind == "zoom" {
			continue
		}
		if b.Plan.Optics.Rig != nil {
			found = append(found, b.meetsOnFloor(m)...)
			continue
		}
		for _, u := range b.Stage.Order {
			if m.Who != nil && !b.Stage.HangsOn(u, m.Who) || !b.meets(u, m) {
				continue
			}
			found = append(found, Finding{Diagnostic: lang.Diagnostic{
				Code: "runs-into", Severity: lang.Error, Range: m.Stmt.Range(), Time: m.End,
				Message: fmt.Sprintf("the camera and %s would meet: at %s %s", u.Name, b.Units.Time(m.End), b.whereTo(u, m.End)),
				Detail:  "Distances count from where the camera is then. Give the camera another path.",
				Figures: []lang.Figure{check.Figure("distance_m", b.Plan.DistanceAt(u.Subject, m.End))},
			}})
			break
		}
	}
	return found
}

// standsIn tells of a camera that has its place where a person stands as the shot starts.
func (b *Shot) standsIn() []Finding {
	at, ok := b.Settings["camera"].(*lang.CameraAt)
	if !ok || b.Plan.Staging == nil || !b.Plan.Placed {
		return nil
	}
	for _, u := range b.Stage.Order {
		if !rig.StandsIn(&b.Shot, u) {
			continue
		}
		apart := math.Hypot(u.Across.At(0), u.Along.At(0))
		return []Finding{{Diagnostic: lang.Diagnostic{
			Code: "runs-into", Severity: lang.Error, Range: at.Range(),
			Message: fmt.Sprintf("the camera stands where %s is: they are %s apart on the floor", u.Name, b.Units.Gap(apart)),
			Detail:  "Give it another place.",
			Figures: []lang.Figure{check.Figure("apart_m", apart)},
		}}}
	}
	return nil
}

// meetsOnFloor tells of the first whom a camera meets in a move, of those that turn or
// leave their axis.
func (b *Shot) meetsOnFloor(m *stage.Move) []Finding {
	for _, u := range b.Stage.Order {
		if m.Who != nil && !b.Stage.HangsOn(u, m.Who) {
			continue
		}
		t, meets := rig.Meets(&b.Shot, u, m)
		if !meets {
			continue
		}
		apart := b.Plan.ViewOf(u.Subject, t).Tape()
		camera := "the camera"
		if b.Plan.Staging != nil { // the move may be of a scene, and so of several shots
			camera += " of " + b.Plan.ID
		}
		return []Finding{{Diagnostic: lang.Diagnostic{
			Code: "runs-into", Severity: lang.Error, Range: m.Stmt.Range(), Time: t,
			Message: fmt.Sprintf("%s and %s would meet: at %s they are %s apart", camera, u.Name, b.Units.Time(t), b.Units.Gap(apart)),
			Detail:  "Give the camera another path.",
			Figures: []lang.Figure{check.Figure("apart_m", apart)},
		}}}
	}
	return nil
}

// meets tells whether a move brings a subject that stood before the camera up
// to it or past it on its way.
func (b *Shot) meets(u *stage.Subject, m *stage.Move) bool {
	return b.Plan.DistanceAt(u.Subject, m.Start) > cameraReach &&
		b.Plan.DistanceAt(u.Subject, m.End) <= cameraReach &&
		math.Abs(b.Plan.SideAt(u.Subject, m.End)) < cameraHalf
}

func (b *Shot) whereTo(u *stage.Subject, t float64) string {
	d := b.Plan.DistanceAt(u.Subject, t)
	if d < 0 {
		return b.Units.Tape(-d) + " behind the sensor"
	}
	return b.Units.Tape(d) + " before the sensor"
}
