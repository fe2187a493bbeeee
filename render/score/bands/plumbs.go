// Plumb lines: from a word or a cue that a move hangs on down through all bands. A text
// that stands in the way, as it belongs to another time, breaks the line.

package bands

import (
	"cmp"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// A plumb is a plumb line: where it falls, and from where to where.
type plumb struct{ x, from, to float64 }

// plumbClear is how far a text keeps from a plumb line, millimetres.
const plumbClear = 0.6

// DropPlumb lets a plumb line fall, one where two hang on the same moment. It is drawn when
// all texts are in their places.
func (sh *Leaf) DropPlumb(x, from, to float64) {
	if !slices.Contains(sh.PlumbX, x) {
		sh.PlumbX = append(sh.PlumbX, x)
		sh.plumbs = append(sh.plumbs, plumb{x, from, to})
	}
}

// drawPlumbs draws the plumb lines of a leaf, under all else, with gaps for texts.
func (sh *Leaf) drawPlumbs(texts []draw.Box) {
	sh.drawJoins(texts)
	for _, p := range sh.plumbs {
		signs.DrawPlumb(sh.Plumbs, p.x, p.from, p.to, p.gaps(texts)...)
	}
}

// gaps returns where texts break the line, from top to bottom.
func (p *plumb) gaps(texts []draw.Box) (gaps [][2]float64) {
	for _, b := range texts {
		if b.X < p.x && p.x < b.Right() && b.Y < p.to && b.Bottom() > p.from {
			gaps = append(gaps, [2]float64{b.Y, b.Bottom()})
		}
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	return gaps
}

// lying returns the boxes of all texts that would lie on a line, with room round them:
// not those in discs and flags, which cover it.
func lying(g *draw.Group, list []draw.Box) []draw.Box {
	if signs.Covers(g.Name) {
		return list
	}
	for _, it := range g.Items {
		switch it := it.(type) {
		case *draw.Group:
			list = lying(it, list)
		case draw.Text:
			list = append(list, it.Room().Grow(plumbClear))
		}
	}
	return list
}
