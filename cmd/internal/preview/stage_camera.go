// What the stage is told of a camera that turns or leaves its axis, and of everybody as
// the lens sees them.

package preview

import (
	"pullscore/cmd/internal/preview/sampled"
	"pullscore/interp/plan"
)

// A toldCamera is the camera on the floor of the shot: metres from where it starts,
// degrees to the right and up. Pupil is how far ahead of the sensor mark the entrance
// pupil is, from which the lens sees.
type toldCamera struct {
	Right   sampled.Series `json:"right_m"`
	Upstage sampled.Series `json:"upstage_m"`
	High    sampled.Series `json:"high_m"`
	Pan     sampled.Series `json:"pan_deg"`
	Tilt    sampled.Series `json:"tilt_deg"`
	Pupil   sampled.Series `json:"pupil_ahead_m"`
}

// tellCamera returns the camera of a shot, or nil if it does not turn or leave its axis.
func tellCamera(s *plan.Shot, times sampled.Samples) *toldCamera {
	if s.Optics.Rig == nil {
		return nil
	}
	of := func(figure func(plan.Pose) float64) sampled.Series {
		return times.Figure(func(t float64) float64 { return figure(s.Optics.Pose(t)) })
	}
	return &toldCamera{
		Right:   of(func(p plan.Pose) float64 { return p.X }),
		Upstage: of(func(p plan.Pose) float64 { return p.Y }),
		High:    of(func(p plan.Pose) float64 { return p.Z }),
		Pan:     of(func(p plan.Pose) float64 { return p.Pan }),
		Tilt:    of(func(p plan.Pose) float64 { return p.Tilt }),
		Pupil:   times.Figure(func(t float64) float64 { return pupilAhead(s, t) }),
	}
}

// pupilAhead is how far the entrance pupil is ahead of the sensor mark, metres.
func pupilAhead(s *plan.Shot, t float64) float64 {
	const far = 1000 // metres: beyond it the lens does not go on moving
	x := min(s.FocusAt(t), far)
	return s.ToTape(x, t) - x - pupilBehind(s, t)
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
