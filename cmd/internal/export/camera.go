// The moves of a camera that turns or leaves its axis, as the cutting room reads them.

package export

import (
	"fmt"
	"math"

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
	if s.Optics.Rig == nil {
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
	for _, b := range s.Blocking {
		if text := going(b, in); text != "" {
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
	m := cameraMove{start: t.Start, land: t.End}
	switch {
	case t.Profile == "with":
		m.starts, m.lands = kind+" with "+t.Target, kind+" with "+t.Target+" ends"
	case t.Target != "":
		m.starts, m.lands = kind+" to "+t.Target, kind+" lands on "+t.Target
	default:
		by := float64(t.To - t.From)
		m.starts, m.lands = fmt.Sprintf("%s %s %s", kind, in.Angle(math.Abs(by)), way(t.Kind, by)), kind+" lands"
	}
	return m
}

// going says where a move takes the camera; "" for a move of anything else.
func going(b plan.Blocking, in units.Style) string {
	by := float64(b.To - b.From)
	switch b.Kind {
	case "boom", "track", "dolly":
		return fmt.Sprintf("%s %s %s", b.Kind, way(b.Kind, by), in.Tape(math.Abs(by)))
	}
	return ""
}

// way is the word for the way that a move of the camera goes.
func way(kind string, by float64) string {
	words := map[string][2]string{
		"pan": {"left", "right"}, "tilt": {"down", "up"}, "track": {"left", "right"}, "boom": {"down", "up"}, "dolly": {"out", "in"},
	}[kind]
	if by < 0 {
		return words[0]
	}
	return words[1]
}
