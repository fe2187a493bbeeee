// Whom a camera would run into that turns or leaves its axis, for runs-into: it is looked
// at on the floor, wherever the lens looks.

package rig

import (
	"math"

	"pullscore/interp/checks/check"
	"pullscore/interp/stage"
)

// So near to a person, and to a thing, the camera meets them, metres on the floor. Over
// the head of a person it passes by as much.
const (
	nearPerson = 0.3
	nearThing  = 0.05
)

// Meets returns when the camera first meets a subject in a move that was clear of it
// when it began; ok is false where it does not.
func Meets(b *check.Shot, u *stage.Subject, m *stage.Move) (t float64, ok bool) {
	within := func(t float64) bool { return meetsAt(b, u, t) }
	if m.Kind == "pan" || m.Kind == "tilt" || within(m.Start) {
		return 0, false
	}
	steps := max(1, int(math.Ceil((m.End-m.Start)*b.Plan.Looks())))
	for k := 1; k <= steps; k++ {
		if t := m.Start + (m.End-m.Start)*float64(k)/float64(steps); within(t) {
			return t, true
		}
	}
	return 0, false
}

// StandsIn reports whether the camera stands where a person is as the shot starts.
func StandsIn(b *check.Shot, u *stage.Subject) bool {
	return isPerson(u) && meetsAt(b, u, 0)
}

func isPerson(u *stage.Subject) bool { return u.Person || float64(u.Sways) > 0 }

// meetsAt reports whether the camera meets a subject at t. On the floor of a scene a
// camera also passes under a thing that is higher.
func meetsAt(b *check.Shot, u *stage.Subject, t float64) bool {
	reach := nearThing
	if isPerson(u) {
		reach = nearPerson
	}
	p := b.Plan.Optics.Place(t)
	if apart := math.Hypot(u.Across.At(t)-p.X, u.Along.At(t)-p.Y); apart >= reach {
		return false
	}
	over := p.Z - u.Height(t)
	if placed(b) && !isPerson(u) {
		return math.Abs(over) < reach
	}
	return over < reach
}
