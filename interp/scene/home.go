// Homes: where the camera of a shot stands on the floor as the shot starts.

package scene

import (
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/lang"
)

// A Home is where a camera stands and looks as its shot starts.
type Home struct {
	plan.Pose
	Stmt    *lang.CameraAt
	Assumed bool // no line says its height
}

// Home returns where the camera of a shot stands as it has the scene from a time on. l has
// the names of the shot. ok is false where the shot does not say it, or nobody knows;
// mistakes go to a report.
func (s *Scene) Home(sec *lang.Section, p Part, shots Shots, to *names.Report) (h Home, ok bool) {
	circle, tell := InCircle(sec, shots, standsAs)
	if tell {
		s.Lex.Tells(to).Fail(standsAs(sec).Range(), "circle", "these cameras stand as one another do", "Give one of them a place.")
	}
	if circle {
		return h, false
	}
	return s.home(sec, p.From, shots, to)
}

// home goes by shots that lead into no circle.
func (s *Scene) home(sec *lang.Section, t float64, shots Shots, to *names.Report) (h Home, ok bool) {
	if h.Stmt = first[*lang.CameraAt](sec); h.Stmt == nil {
		return h, false
	}
	if h.Stmt.AsIn != nil {
		if h.Pose, h.Assumed, ok = s.standsAs(h.Stmt.AsIn, shots, to); !ok {
			return h, false
		}
	}
	in, st := s.ownFloor(sec, to)
	if h.Stmt.At != nil {
		var said bool
		h.Pose, said, ok = st.Camera(h.Stmt.At, in, t)
		h.Assumed = !said
	}
	switch {
	case h.Stmt.Aims != nil:
		pan, tilt, okAim := st.Aim(h.Stmt.Aims, h.Pose, in, t)
		h.Pan, h.Tilt, ok = pan, tilt, ok && okAim
	case h.Stmt.AsIn == nil:
		in.Fail(h.Stmt.Range(), "missing-clause", "the camera has a place, and nobody knows where it looks", "Write aims at and whom.")
		return h, false
	}
	return h, ok
}

// standsAs returns where the camera of another shot stands and looks as that starts.
func (s *Scene) standsAs(ref *lang.ShotRef, shots Shots, to *names.Report) (p plan.Pose, assumed, ok bool) {
	other, ok := s.Shot(ref, shots, to)
	switch {
	case !ok:
		return p, false, false
	case !names.Has[*lang.CameraAt](other):
		s.Lex.Tells(to).Fail(ref.Range(), "no-camera-place", "shot "+ref.ID+" has no place for its camera", "Give it one, or this shot.")
		return p, false, false
	}
	part, okPart := s.Part(other, shots, &names.Report{})
	there, okThere := s.home(other, part.From, shots, &names.Report{})
	return there.Pose, there.Assumed, okPart && okThere // what is wrong there is told there
}
