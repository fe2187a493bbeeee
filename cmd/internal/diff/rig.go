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
	if b.Seen != nil && a.Seen != nil { // else that the camera turns is told, and the tape is the distance
		l.figure("tape_m", "tape", was.Tape, is.Tape, c.tape)
	}
	in := units.Style{}
	l.word("in_frame", "", moments.InFrame(c.before, b, in), moments.InFrame(c.after, a, in))
}
