// Who stands in the way: a person between the camera and another.

package coverage

import (
	"math"

	"pullscore/interp/plan"
)

// How near a person stands to the line of sight to be in the way. Common practice, no
// source.
const (
	blockedWithin = 0.15 // metres to the side, on the floor
	blockedOver   = 0.12 // metres from the eyes to the top of the head
	blockedFrom   = 0.3  // metres from the sensor mark; what is nearer is no person
)

// blockedBy returns the nearest of the people who stand in the camera's sight of a subject
// at t; nil where nobody does, or where the plan does not say to which side they stand.
// people says which of the subjects of the shot are persons.
func blockedBy(s *plan.Shot, people []bool, u *plan.Subject, t float64) (by *plan.Subject) {
	all := s.Optics.Rig != nil || isPlaced(s)
	if !u.SideSaid && !all {
		return nil
	}
	behind := floorView(s, u, t)
	if !(behind.Along > blockedFrom) {
		return nil
	}
	nearest := behind.Along
	for i, q := range s.Subjects {
		if q == u || !people[i] || !q.SideSaid && !all {
			continue
		}
		if v := floorView(s, q, t); v.Along > blockedFrom && v.Along < nearest && hides(v, behind) {
			by, nearest = q, v.Along
		}
	}
	return by
}

// isPlaced reports whether the camera of a shot has a place on the floor of a scene, so
// that it is known to which side everybody stands.
func isPlaced(s *plan.Shot) bool { return s.Staging != nil && s.Placed }

// hides reports whether a person whom the camera sees at v stands in the sight of what it
// sees at behind.
func hides(v, behind plan.View) bool {
	aside := math.Abs(v.Across*behind.Along-v.Along*behind.Across) / math.Hypot(behind.Along, behind.Across)
	sight := behind.Above * v.Along / behind.Along // how high the line is where the person stands
	return aside < blockedWithin && sight < v.Above+blockedOver
}

// floorView returns where a camera that looks level sees a subject at t.
func floorView(s *plan.Shot, u *plan.Subject, t float64) plan.View {
	if s.Optics.Rig == nil {
		return s.ViewOf(u, t)
	}
	pose := s.Optics.Pose(t)
	pose.Tilt = 0
	up := 0.0
	if u.Up != nil {
		up = u.Up.At(t)
	}
	return pose.View(u.Across.At(t), u.Along.At(t), up)
}

// isPerson reports whether a subject speaks or moves in the shot.
func isPerson(s *plan.Shot, u *plan.Subject) bool {
	for i := range s.Lines {
		if s.Lines[i].Who == u.Name {
			return true
		}
	}
	return len(u.Along.Keys()) > 0 || len(u.Across.Keys()) > 0
}
