// The moves of a camera that turns or leaves its axis, as the cutting room reads them.

package export

import (
	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
)

// A cameraMove is one move of the camera: its times in seconds, and what to write at its
// start and at its landing.
type cameraMove struct {
	start, land   plan.Number
	starts, lands string
}

// cameraMoves returns what the camera does in a shot: the turns, then the ways that it
// goes. A camera that only goes along its axis has none, as its picture needs no eye in
// the cutting room.
func cameraMoves(s *plan.Shot) (list []cameraMove) {
	if s.Optics.Rig == nil && !hasPlace(s) {
		return nil
	}
	in := units.Style{}
	if s.Imperial {
		in.System = units.Imperial
	}
	for i := 0; i < len(s.Turns); i++ {
		turn, kind := s.Turns[i], s.Turns[i].Kind
		if i+1 < len(s.Turns) && together(turn, s.Turns[i+1]) {
			kind = "pan and tilt"
			i++
		}
		list = append(list, turning(turn, kind, in))
	}
	for i := range s.Blocking {
		b := &s.Blocking[i]
		if text := moments.Goes(b, in); text != "" {
			list = append(list, cameraMove{b.Start, b.End, text, b.Kind + " lands"})
		}
	}
	return list
}

// together reports whether two turns are the pan and the tilt of one statement.
func together(a, b plan.Turn) bool {
	return a.Kind != b.Kind && a.Target != "" && a.Target == b.Target && a.Profile == b.Profile &&
		a.Start == b.Start && a.End == b.End
}

// turning says what a turn does.
func turning(t plan.Turn, kind string, in units.Style) cameraMove {
	m, s := cameraMove{start: t.Start, land: t.End}, "s"
	if kind != t.Kind {
		s = "" // two of them
	}
	switch {
	case t.Profile == "with":
		m.starts, m.lands = kind+" with "+t.Target, kind+" with "+t.Target+" end"+s
	case t.Target != "":
		m.starts, m.lands = kind+" to "+t.Target, kind+" land"+s+" on "+t.Target
	default:
		m.starts, m.lands = kind+" "+moments.Heading(kind, float64(t.To-t.From), in), kind+" lands"
	}
	return m
}
