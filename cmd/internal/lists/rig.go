// What the pull list tells of a camera that turns or leaves its axis.

package lists

import (
	"cmp"
	"slices"
	"strings"

	"pullscore/cmd/internal/console"
	"pullscore/cmd/internal/lists/scenes"
	"pullscore/interp/moments"
	"pullscore/interp/plan"
)

// A cameraMove is a move of the camera, as the list tells it among the pulls.
type cameraMove struct {
	start, end float64
	says       string
}

// cameraMoves returns what the camera of a shot does, in the order of time; none where it
// only goes along its axis.
func cameraMoves(s *plan.Shot) (list []cameraMove) {
	if s.Optics.Rig == nil {
		return nil
	}
	for i := range s.Turns {
		t := &s.Turns[i]
		list = append(list, cameraMove{float64(t.Start), float64(t.End), moments.Turn(t, style(s))})
	}
	for i := range s.Blocking {
		b := &s.Blocking[i]
		if text, ok := scenes.Goes(s, b, style(s)); ok {
			list = append(list, cameraMove{float64(b.Start), float64(b.End), text})
		} else if text := moments.Goes(b, style(s)); text != "" {
			list = append(list, cameraMove{float64(b.Start), float64(b.End), text})
		}
	}
	slices.SortStableFunc(list, func(a, b cameraMove) int { return cmp.Compare(a.start, b.start) })
	return list
}

// cameraMovesUntil writes the first of the moves that start by t, and returns the others.
func (w *writer) cameraMovesUntil(s *plan.Shot, moves []cameraMove, t float64, indent string) []cameraMove {
	for len(moves) > 0 && moves[0].start <= t {
		m := moves[0]
		w.cameraMove(s, m, len(moves) > 1 && moves[1].start == m.start && moves[1].end == m.end, indent)
		moves = moves[1:]
	}
	return moves
}

// cameraMove writes a move of the camera, and where it leaves everyone if no other move
// starts and ends with it.
func (w *writer) cameraMove(s *plan.Shot, m cameraMove, goesOn bool, indent string) {
	text := console.Clean(m.says)
	more := " · starts at " + style(s).Time(m.start)
	switch at := s.Timecode(m.start); {
	case at == "" && cutUp(s):
		more += " · rec removed"
	case cutUp(s):
		more += " · rec " + at
	case at != "":
		more += " · " + at
	}
	for i, line := range console.Wrap(text+more, w.Screen.Width-len(indent)) {
		if i == 0 && strings.HasPrefix(line, text) {
			line = w.Screen.Paint(console.Bold, text) + w.Screen.Paint(console.Dim, line[len(text):])
		}
		w.Line(indent + line)
	}
	if goesOn {
		return
	}
	for _, u := range s.Subjects {
		w.Wrapped(console.Dim, indent, console.Clean("then "+moments.SeenAt(s, u, m.end, style(s))))
	}
}

// inFrame writes from when to when everyone is in the picture.
func (w *writer) inFrame(s *plan.Shot) {
	if s.Optics.Rig == nil || len(s.Subjects) == 0 {
		return
	}
	w.Line("")
	w.Line(margin + w.Screen.Paint(console.Dim, "frame"))
	for _, u := range s.Subjects {
		w.Hanging(console.Plain, margin+margin, console.Clean(u.Name+": "+scenes.Seen(s, u, style(s))))
	}
}

// rigColumns are the columns that only a list has in which a camera turns or leaves its
// axis: where whom a pull goes to is as it lands.
var rigColumns = []column{
	asItLands("tape_m", func(_ *plan.Shot, v plan.View, _ plan.Frame) string { return cell(plan.Number(v.Tape())) }),
	asItLands("above_m", func(_ *plan.Shot, v plan.View, _ plan.Frame) string { return cell(plan.Number(v.Above)) }),
	asItLands("off_axis_deg", func(_ *plan.Shot, v plan.View, _ plan.Frame) string { return cell(plan.Number(v.OffAxis())) }),
	asItLands("in_frame", func(_ *plan.Shot, _ plan.View, f plan.Frame) string { return f.String() }),
}

// asItLands makes a column of whom a pull goes to as it lands; empty for a camera that only
// goes along its axis, and where a pull goes to nobody.
func asItLands(name string, value func(*plan.Shot, plan.View, plan.Frame) string) column {
	return column{name, func(_ *plan.Plan, s *plan.Shot, u *plan.Pull) string {
		who := s.Subject(u.To)
		if s.Optics.Rig == nil || who == nil {
			return ""
		}
		t := float64(u.Land)
		return value(s, s.ViewOf(who, t), s.FrameAt(who, t))
	}}
}

// columnsFor returns the columns of the CSV for plans.
func columnsFor(plans []*plan.Plan) []column {
	list := columns
	if anyShot(plans, func(s *plan.Shot) bool { return s.Optics.Rig != nil }) {
		list = slices.Concat(list, rigColumns)
	}
	if anyShot(plans, func(s *plan.Shot) bool { return len(s.Pieces) > 0 }) {
		list = slices.Concat(list, cutColumns)
	}
	return list
}

// anyShot reports whether any shot of the plans is so.
func anyShot(plans []*plan.Plan, is func(*plan.Shot) bool) bool {
	return slices.ContainsFunc(plans, func(p *plan.Plan) bool { return slices.ContainsFunc(p.Shots, is) })
}
