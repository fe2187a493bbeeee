package names

import (
	"slices"

	"pullscore/lang"
)

// Has tells whether a section has a statement of a kind.
func Has[S lang.Statement](sec *lang.Section) bool {
	return slices.ContainsFunc(sec.Body, func(s lang.Statement) bool { _, ok := s.(S); return ok })
}
