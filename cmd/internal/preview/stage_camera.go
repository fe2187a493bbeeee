// What the stage is told of a camera that turns or leaves its axis, and of everybody as
// the lens sees them.

package preview

import (
	"pullscore/cmd/internal/preview/sampled"
	"pullscore/interp/plan"
)

// A toldCamera is the camera on the floor of the shot: metres from where it starts,
// degrees to the right and up. A camera that has a place in a scene is on the floor of that,
// metres from its zero point, and Floor is how high that floor is: 0. Pupil is how far ahead
// of the sensor mark the entrance pupil is, from which the lens sees.
type toldCamera struct {
	Right   sampled.Series `json:"right_m"`
	Upstage sampled.Series `json:"upstage_m"`
	High    sampled.Series `json:"high_m"`
	Pan     sampled.Series `json:"pan_deg"`
	Tilt    sampled.Series `json:"tilt_deg"`
	Pupil   sampled.Series `json:"pupil_ahead_m"`
	Floor   *plan.Number   `json:"floor_m,omitempty"` // nil: how high the camera is nobody says
}

// tellCamera returns the camera of a shot, or nil if it does not turn or leave its axis.
func tellCamera(s *plan.Shot, times sampled.Samples) *toldCamera {
	if s.Optics.Rig == nil {
		return nil
	}
	of := func(figure func(plan.Pose) float64) sampled.Series {
		return times.Figure(func(t float64) float64 { return figure(s.Stands(t)) })
	}
	told := &toldCamera{
		Right:   of(func(p plan.Pose) float64 { return p.X }),
		Upstage: of(func(p plan.Pose) float64 { return p.Y }),
		High:    of(func(p plan.Pose) float64 { return p.Z }),
		Pan:     of(func(p plan.Pose) float64 { return p.Pan }),
		Tilt:    of(func(p plan.Pose) float64 { return p.Tilt }),
		Pupil:   times.Figure(func(t float64) float64 { return pupilAhead(s, t) }),
	}
	if placed(s) {
		told.Floor = new(plan.Number)
	}
	return told
}

// placed reports whether the camera of a shot has a place on the floor of a scene.
func placed(s *plan.Shot) bool { return s.Staging != nil && s.Placed }

// standsOn returns how high what the people of a scene stand on is at first, metres over its
// zero point, by their names: of those in a shot with a placed camera whose eyes have a
// height.
func standsOn(p *plan.Plan, s *plan.Shot) map[string]float64 {
	on := map[string]float64{}
	if !placed(s) || s.Of < 0 || s.Of >= len(p.Scenes) {
		return on
	}
	for _, u := range p.Scenes[s.Of].Subjects {
		if u.Eyes > 0 && len(u.Path) > 0 {
			on[u.Name] = float64(u.Path[0].High) - u.Eyes
		}
	}
	return on
}

// pupilAhead is how far the entrance pupil is ahead of the sensor mark, metres.
func pupilAhead(s *plan.Shot, t float64) float64 {
	const far = 1000 // metres: beyond it the lens does not go on moving
	x := min(s.FocusAt(t), far)
	return s.ToTape(x, t) - x - pupilBehind(s, t)
}

// tellEyes returns how high the eyes of somebody are over what they stand on, which is so
// high in the scene.
func tellEyes(s *plan.Shot, u *plan.Subject, on float64, times sampled.Samples) sampled.Series {
	return times.Figure(func(t float64) float64 {
		_, _, high := s.OnFloor(u, t)
		return high - on
	})
}

// tellSubject returns a subject as the lens sees it.
func tellSubject(s *plan.Shot, u *plan.Subject, person bool, times sampled.Samples) toldSubject {
	told := toldSubject{
		Name: u.Name, Person: person, Deep: u.Deep,
		Distance: times.Figure(func(t float64) float64 { return s.LensDistanceAt(u, t) }),
		Side:     times.Figure(func(t float64) float64 { return s.SideAt(u, t) }),
		Blur:     times.Figure(func(t float64) float64 { return s.BlurAt(u, t) }),
	}
	if s.Optics.Rig != nil {
		told.Above = times.Figure(func(t float64) float64 { return s.AboveAt(u, t) })
	}
	return told
}
