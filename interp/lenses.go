// The lenses of a plan or of a kit alone, without any shot.

package interp

import (
	"maps"
	"slices"

	"pullscore/interp/lenses"
)

// Lenses returns what is known of every lens that can be used, in the order of their
// names. stop is the stop that the sheet of a lens shall be enough for.
func (r *Result) Lenses(stop lenses.Stop) []*lenses.Lens {
	f := r.program.film
	k := lenses.Kit{View: f.View, Imperial: f.Units == "imperial", OwnUnits: f.OwnUnits}
	for _, name := range slices.Sorted(maps.Keys(f.Cameras)) {
		k.Cameras = append(k.Cameras, f.Cameras[name])
	}
	var list []*lenses.Lens
	for _, name := range slices.Sorted(maps.Keys(f.Lenses)) {
		if l := f.Lenses[name]; l.Ok {
			list = append(list, lenses.Of(&l, k, stop))
		}
	}
	return list
}
