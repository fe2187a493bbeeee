// Where a curve is not what it was.

package difference

import (
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"slices"
	"sort"

	"pullscore/render/draw"
)

// unlike is how far, in millimetres, a curve lies from another where it shows
// as another.
const unlike = 0.25

// apart returns the pieces of runs that lie off all of the others. Runs go from
// left to right.
func apart(runs, others [][]draw.Point) [][]draw.Point {
	var pieces [][]draw.Point
	for _, run := range runs {
		pieces = append(pieces, apartOf(run, others)...)
	}
	return pieces
}

// apartOf looks at every point at which the run or one of the others bends.
func apartOf(run []draw.Point, others [][]draw.Point) [][]draw.Point {
	var pieces [][]draw.Point
	var piece []draw.Point
	var last draw.Point
	for i, p := range refined(run, others) {
		off := isOff(p, others)
		switch {
		case off && piece == nil && i > 0:
			piece = []draw.Point{last, p} // it leaves the other from there
		case off:
			piece = append(piece, p)
		case piece != nil:
			pieces = append(pieces, append(piece, p))
			piece = nil
		}
		last = p
	}
	if len(piece) > 1 {
		pieces = append(pieces, piece)
	}
	return pieces
}

// strokeApart draws what of runs lies off the others.
func strokeApart(g *draw.Group, runs, others [][]draw.Point, stroke draw.Stroke) {
	if pieces := bands.Simplified(apart(runs, others)); len(pieces) > 0 {
		g.Add(draw.Path{Runs: pieces, Stroke: stroke})
	}
}

// isOff reports whether a point is off the others, or beside their ends.
func isOff(p draw.Point, others [][]draw.Point) bool {
	for _, o := range others {
		if y, ok := heightAt(o, p.X); ok && y-p.Y < unlike && p.Y-y < unlike {
			return false
		}
	}
	return true
}

// heightAt returns the y of a run at x, if it goes there.
func heightAt(run []draw.Point, x float64) (y float64, ok bool) {
	i := sort.Search(len(run), func(i int) bool { return run[i].X >= x })
	switch {
	case i == len(run) || i == 0 && run[0].X > x:
		return 0, false
	case run[i].X == x || i == 0:
		return run[i].Y, true
	}
	return sheet.PointAt(run[i-1], run[i], x).Y, true
}

// refined returns the run with a point wherever one of the others has one.
func refined(run []draw.Point, others [][]draw.Point) []draw.Point {
	if len(run) == 0 {
		return nil
	}
	fine := slices.Clone(run)
	for _, o := range others {
		for _, p := range o {
			if p.X > run[0].X && p.X < run[len(run)-1].X {
				y, _ := heightAt(run, p.X)
				fine = append(fine, draw.Point{X: p.X, Y: y})
			}
		}
	}
	slices.SortStableFunc(fine, func(a, b draw.Point) int {
		switch {
		case a.X < b.X:
			return -1
		case a.X > b.X:
			return 1
		}
		return 0
	})
	return slices.Compact(fine)
}
