// What the cures of a shot come to together: tried again only where something has changed
// that it depends on. To try them builds a shot many times, and a save mostly changes one
// shot of a scene.

package rebuild

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"

	"pullscore/interp"
	"pullscore/interp/plan"
	"pullscore/render/sheet"
)

// A basis stands for the text that the cures of a shot depend on: its own lines, and all
// that the files of its plan hold outside of shots.
type basis [sha256.Size]byte

// redraw draws a plan whose files are used, after the sheets before.
func redraw(ctx context.Context, res *interp.Result, used map[string]*text, old map[string][]*Sheet, paper sheet.Paper) map[string][]*Sheet {
	all := bases(res, used)
	tryTogether(res, all, old)
	list := sheets(ctx, res.Plan, old, paper)
	for shot, b := range all {
		for _, s := range list[shot.ID] {
			s.basis = b
		}
	}
	return list
}

// bases returns the basis of every shot.
func bases(res *interp.Result, used map[string]*text) map[*plan.Shot]basis {
	own, rest := map[*plan.Shot][]byte{}, sha256.New()
	for _, path := range slices.Sorted(maps.Keys(used)) {
		fmt.Fprintf(rest, "%q %v\n", path, used[path].err)
		lines := bytes.SplitAfter(used[path].data, []byte("\n"))
		at := 0
		for _, s := range shotsIn(res, path) {
			if s.first <= at || s.last > len(lines) {
				continue // not of this text: it is all taken for what lies outside
			}
			rest.Write(bytes.Join(lines[at:s.first-1], nil))
			own[s.shot] = bytes.Join(lines[s.first-1:s.last], nil)
			at = s.last
		}
		rest.Write(bytes.Join(lines[at:], nil))
	}
	list := map[*plan.Shot]basis{}
	for _, shot := range res.Plan.Shots {
		list[shot] = sha256.Sum256(slices.Concat(rest.Sum(nil), own[shot]))
	}
	return list
}

// A stretch is the lines of a shot, from 1.
type stretch struct {
	shot        *plan.Shot
	first, last int
}

// shotsIn returns the shots of a file in its order.
func shotsIn(res *interp.Result, path string) (list []stretch) {
	for _, shot := range res.Plan.Shots {
		if shot.File == path {
			first, last := res.Lines(shot)
			list = append(list, stretch{shot, first, last})
		}
	}
	slices.SortFunc(list, func(a, b stretch) int { return cmp.Compare(a.first, b.first) })
	return list
}

// tryTogether tries the cures of the shots together, and returns of how many. A shot that
// is as it was, on the same basis, takes over what its old sheets show.
func tryTogether(res *interp.Result, all map[*plan.Shot]basis, old map[string][]*Sheet) (tried int) {
	for _, shot := range res.Plan.Shots {
		if before := old[shot.ID]; len(before) > 0 && before[0].basis == all[shot] {
			was := *before[0].shot
			was.Together = nil
			if identical(&was, unplaced(shot)) {
				shot.Together = before[0].shot.Together
				continue
			}
		}
		res.TryTogether([]*plan.Shot{shot})
		tried++
	}
	return tried
}
