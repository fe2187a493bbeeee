// Plans that have another name.

package diff

import (
	"bytes"
	"slices"
)

// Rename says of a plan that is known to have another name now that it is
// renamed; that is its change if nothing else of it changed.
func (p Plan) Rename() Plan {
	p.renamed = true
	if p.Change == Same {
		p.Change = Renamed
	}
	return p
}

// JoinRenamed returns the plans with each that is gone and one that is new made
// one, where they are the same plan: by their text, to the byte, else by what
// they say to the crew, else by their title and more than half of their shots.
// The new one keeps its place. A plan whose text is the same may have changed all
// the same, with its kit.
func JoinRenamed(plans []Plan) []Plan {
	plans = slices.Clone(plans)
	joined := map[int]bool{} // those that are gone
	for _, same := range []func(gone, is Plan) bool{sameText, sameForCrew, sameScene} {
		for i, is := range plans {
			if is.Change != New {
				continue
			}
			for k, gone := range plans {
				if gone.Change == Gone && !joined[k] && same(gone, is) {
					plans[i] = Compare(gone.was, is.is).Rename()
					joined[k] = true
					break
				}
			}
		}
	}
	var list []Plan
	for i, p := range plans {
		if !joined[i] {
			list = append(list, p)
		}
	}
	return list
}

func sameText(gone, is Plan) bool {
	return len(is.is.Text) > 0 && bytes.Equal(gone.was.Text, is.is.Text)
}

// sameForCrew looks at the names of the shots first: a comparison takes longer.
func sameForCrew(gone, is Plan) bool {
	id := func(a, b Shot) bool { return a.ID == b.ID }
	return len(is.Shots) > 0 && gone.Title == is.Title && slices.EqualFunc(gone.Shots, is.Shots, id) && !Compare(gone.was, is.is).Differs()
}

// sameScene looks at title and shots alone: the plan was changed as it was renamed.
func sameScene(gone, is Plan) bool {
	if gone.Title == "" || gone.Title != is.Title {
		return false
	}
	both := 0
	for _, s := range is.Shots {
		if slices.ContainsFunc(gone.Shots, func(g Shot) bool { return g.ID == s.ID }) {
			both++
		}
	}
	return 2*both > max(len(gone.Shots), len(is.Shots))
}
