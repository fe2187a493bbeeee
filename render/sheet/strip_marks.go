package sheet

import (
	"strconv"
	"strings"

	"pullscore/interp/plan"
)

// Moves reports whether the distance to a subject changes.
func Moves(s *plan.Shot, u *plan.Subject) bool {
	return u != nil && (u.Along.Moves() || s.Optics.Camera.Moves())
}

// NounOf is a noun for so many things.
func NounOf(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// JoinNumbers writes numbers as a list.
func JoinNumbers(numbers []int) string {
	parts := make([]string, len(numbers))
	for i, n := range numbers {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}
