// Homes: where the camera of a shot stands on the floor as the shot starts.

package scene

import (
	"fmt"

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
func (s *Scene) Home(sec *lang.Section, p Part, find Shots, to *names.Report) (h Home, ok bool) {
	return s.home(sec, p.From, find, to, map[*lang.Section]bool{})
}

func (s *Scene) home(sec *lang.Section, t float64, find Shots, to *names.Report, seen map[*lang.Section]bool) (h Home, ok bool) {
	seen[sec] = true
	for _, stmt := range sec.Body {
		if c, ok := stmt.(*lang.CameraAt); ok && h.Stmt == nil {
			h.Stmt = c
		}
	}
	switch {
	case h.Stmt == nil:
		return h, false
	case h.Stmt.AsIn != nil:
		other := find(h.Stmt.AsIn.ID)
		at := h.Stmt.AsIn.Range()
		switch {
		case other == nil:
			s.Lex.Tells(to).Fail(at, "unknown-shot", fmt.Sprintf("no shot is called %s", h.Stmt.AsIn.ID), "")
			return h, false
		case seen[other]:
			s.Lex.Tells(to).Fail(at, "circle", "these cameras stand as one another do", "Give one of them a place.")
			return h, false
		}
		part, _ := s.Part(other, find, &names.Report{})
		there, okThere := s.home(other, part.From, find, &names.Report{}, seen)
		if !okThere {
			s.Lex.Tells(to).Fail(at, "no-camera-place", fmt.Sprintf("shot %s has no place for its camera", h.Stmt.AsIn.ID), "")
			return h, false
		}
		h.Pose, h.Assumed, ok = there.Pose, there.Assumed, true
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
