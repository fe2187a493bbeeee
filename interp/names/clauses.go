// Clauses: what statements of one kind come to together.

package names

import (
	"slices"

	"pullscore/lang"
)

// Clauses returns the shot's with-statement laid over the film's.
func Clauses(film, shot *lang.With) lang.With {
	var w lang.With
	if film != nil {
		w = *film
	}
	if shot == nil {
		return w
	}
	w.Node = shot.Node
	over(&w.Camera, shot.Camera)
	over(&w.Lens, shot.Lens)
	over(&w.Puller, shot.Puller)
	over(&w.Stop, shot.Stop)
	over(&w.Meter, shot.Meter)
	over(&w.Focal, shot.Focal)
	over(&w.ND, shot.ND)
	over(&w.Gear, shot.Gear)
	over(&w.Wheel, shot.Wheel)
	return w
}

func over[T any](to **T, from *T) {
	if from != nil {
		*to = from
	}
}

// Has tells whether a section has a statement of a kind.
func Has[S lang.Statement](sec *lang.Section) bool {
	return slices.ContainsFunc(sec.Body, func(s lang.Statement) bool { _, ok := s.(S); return ok })
}
