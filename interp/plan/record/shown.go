// What of a shot is shown at all.

package record

import (
	"cmp"
	"slices"
)

// A Stretch is a stretch of shot time, in seconds.
type Stretch struct{ From, To float64 }

// Shown returns the stretches of the shot that its pieces show, in their order; those
// that touch are one.
func Shown(pieces []Piece) (joined []Stretch) {
	list := make([]Stretch, len(pieces))
	for i := range pieces {
		list[i] = Stretch{float64(pieces[i].From), float64(pieces[i].To)}
	}
	slices.SortStableFunc(list, func(a, b Stretch) int { return cmp.Compare(a.From, b.From) })
	for _, u := range list {
		if last := len(joined) - 1; last >= 0 && u.From <= joined[last].To+1e-9 {
			joined[last].To = max(joined[last].To, u.To)
			continue
		}
		joined = append(joined, u)
	}
	return joined
}

// ShowAll reports whether pieces show all of a stretch of shot time, in seconds.
func ShowAll(pieces []Piece, from, to float64) bool {
	return slices.ContainsFunc(Shown(pieces), func(u Stretch) bool { return from >= u.From-1e-9 && to <= u.To+1e-9 })
}
