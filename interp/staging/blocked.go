// Who stands in the way: a person between the camera and another, or a thing.

package staging

import (
	"math"
	"slices"

	"pullscore/interp/plan"
)

// How near a person stands to the line of sight to be in the way. Common practice, no
// source.
const (
	blockedWithin = 0.15 // metres to the side, on the floor
	blockedOver   = 0.12 // metres from the eyes to the top of the head
	blockedFrom   = 0.3  // metres from the sensor mark; what is nearer is no person
)

// A Block is somebody in the way of another.
type Block struct {
	By     *plan.Subject
	Aside  float64 // from the line of sight, on the floor, metres
	Nearer float64 // to the camera than who is behind, metres
}

// InTheWay returns the nearest of the people who stand in the camera's sight of a subject
// at t, and how; By is nil where nobody does, or where the plan does not say to which side
// they stand. people says which of the subjects of the shot are persons.
func InTheWay(s *plan.Shot, people []bool, u *plan.Subject, t float64) (b Block) {
	all := s.Optics.Rig != nil || isPlaced(s)
	if !u.SideSaid && !all {
		return b
	}
	pose := s.Optics.Pose(t)
	behind := floorView(pose, u, t)
	if !(behind.Along > blockedFrom) {
		return b
	}
	nearest := behind.Along
	for i, q := range s.Subjects {
		if q == u || !people[i] || !q.SideSaid && !all {
			continue
		}
		if v := floorView(pose, q, t); v.Along > blockedFrom && v.Along < nearest && hides(v, behind) {
			nearest = v.Along
			b = Block{By: q, Aside: aside(v, behind), Nearer: behind.Along - v.Along}
		}
	}
	return b
}

// isPlaced reports whether the camera of a shot has a place on the floor of a scene, so
// that it is known to which side everybody stands.
func isPlaced(s *plan.Shot) bool { return s.Staging != nil && s.Staging.Placed }

// hides reports whether a person whom the camera sees at v stands in the sight of what it
// sees at behind.
func hides(v, behind plan.View) bool {
	sight := behind.Above * v.Along / behind.Along // how high the line is where the person stands
	return aside(v, behind) < blockedWithin && sight < v.Above+blockedOver
}

// aside is how far from the line of sight to one point another is, on the floor.
func aside(v, behind plan.View) float64 {
	return math.Abs(v.Across*behind.Along-v.Along*behind.Across) / math.Hypot(behind.Along, behind.Across)
}

// floorView returns where a camera that stands so, and looks level, sees a subject at t.
func floorView(pose plan.Pose, u *plan.Subject, t float64) plan.View {
	pose.Tilt = 0
	return pose.View(u.Across.At(t), u.Along.At(t), u.Height(t))
}

// People returns which of the subjects of a shot are persons.
func People(s *plan.Shot) []bool {
	list := make([]bool, len(s.Subjects))
	for i, u := range s.Subjects {
		list[i] = IsPerson(s, u)
	}
	return list
}

// IsPerson reports whether a subject speaks or moves.
func IsPerson(s *plan.Shot, u *plan.Subject) bool {
	if u.Person {
		return true
	}
	for i := range s.Lines {
		if s.Lines[i].Who == u.Name {
			return true
		}
	}
	return len(u.Along.Keys()) > 0 || len(u.Across.Keys()) > 0
}

// Blocked returns from when to when somebody stands in the way of a subject, in seconds of
// the shot.
func Blocked(s *plan.Shot, u *plan.Subject) [][2]float64 {
	people := People(s)
	return plan.While(keysOf(s), func(from, to float64) int { return steps(s, from, to) }, func(t float64) bool {
		return InTheWay(s, people, u, t).By != nil
	})
}

// FillBlocked says of every subject of a staged shot when somebody stands in its way.
func FillBlocked(s *plan.Shot) {
	if !isPlaced(s) {
		return
	}
	for _, u := range s.Subjects {
		if u.Seen == nil {
			continue
		}
		u.Seen.Blocked = nil
		for _, t := range Blocked(s, u) {
			u.Seen.Blocked = append(u.Seen.Blocked, plan.Interval{plan.Number(t[0]), plan.Number(t[1])})
		}
	}
}

// keysOf returns the times at which anybody or the camera starts or stops, within the
// shot and with both its ends.
func keysOf(s *plan.Shot) []float64 {
	end := float64(s.Duration)
	keys := append(s.Optics.Keys(), 0, end)
	for _, u := range s.Subjects {
		keys = append(append(append(keys, u.Along.Keys()...), u.Across.Keys()...), u.HeightKeys()...)
	}
	return plan.Sorted(slices.DeleteFunc(keys, func(t float64) bool { return !(t >= 0 && t <= end) }))
}

// steps is how closely a shot is looked at between two of its keys: once where all stands
// still.
func steps(s *plan.Shot, from, to float64) int {
	middle := from + (to-from)/2
	still := s.Optics.Pose(from) == s.Optics.Pose(middle)
	for _, u := range s.Subjects {
		still = still && u.Along.At(from) == u.Along.At(middle) && u.Across.At(from) == u.Across.At(middle)
		still = still && u.Height(from) == u.Height(middle)
	}
	if still {
		return 1
	}
	return int(math.Ceil((to - from) * s.Looks()))
}
