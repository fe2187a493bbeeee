// What is different in how a camera that turns or leaves its axis sees everyone.

package diff

import (
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// heading writes an angle of a pan or a tilt with its way.
func heading(kind string, n plan.Number) string {
	if !n.Known() {
		return ""
	}
	return moments.Heading(kind, float64(n), figures)
}

// seen compares how the camera sees a subject, where it turns or leaves its axis. The tape
// and the heights are those at the start, which only such a camera needs.
func (c comparison) seen(l *list, b, a *plan.Subject) {
	if b.Seen == nil && a.Seen == nil {
		return
	}
	none := plan.None()
	of := func(u *plan.Subject) plan.Seen {
		if u.Seen == nil {
			return plan.Seen{Tape: none, Above: none, OffAxis: none}
		}
		return *u.Seen
	}
	was, is := of(b), of(a)
	l.figure("tape-changed", "tape reads", measured(b), measured(a), c.tape)
	if b.Seen != nil && a.Seen != nil && !c.placed() { // else that the camera turns is told, and the tape is the distance
		l.figure("tape_m", "tape", was.Tape, is.Tape, c.tape)
	}
	if hasPlace(c.before) != hasPlace(c.after) || c.scene != nil && len(c.scene.labels) > 0 {
		return // it follows from what is told of the camera, or of the scene
	}
	in := units.Style{}
	l.word("in_frame", "", moments.InFrame(c.before, b, in), moments.InFrame(c.after, a, in))
}

// measured is what a tape reads to a subject in the shot.
func measured(u *plan.Subject) plan.Number {
	if u.Seen == nil {
		return plan.None()
	}
	return u.Measured
}
