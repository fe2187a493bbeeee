// The height of a bar of sharpness: the chance that who is sharp in the plan is sharp on
// the day.

package score

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// fullFrom is the chance from which a bar has no frame.
const fullFrom = 0.985

// A sure is a moment with the chance of being sharp; NaN where nobody knows it.
type sure struct{ t, chance float64 }

// sures returns the chance at the moments of a piece, each change of it as two moments at
// one time.
func sures(s *plan.Shot, u *plan.Subject, piece []blurAt) (list []sure) {
	for i, p := range piece {
		at := p.t
		if i == 0 && len(piece) > 1 {
			at += 1e-9 // right of a step
		}
		chance := float64(s.SharpChance(u, at))
		if chance >= fullFrom {
			chance = 1 // one bar, whatever it was before
		}
		list = append(list, sure{p.t, chance})
	}
	return list
}

// drawSharp draws a stretch in which somebody is sharp, and returns how sure its end is.
func drawSharp(g *draw.Group, w *bands.Window, u *plan.Subject, piece []blurAt, base float64) sure {
	list := sures(w.Shot, u, piece)
	for from := 0; from < len(list)-1; {
		to := from + 1
		for known := alike(list[from], list[to]); to+1 < len(list) && alike(list[from], list[to+1]) == known && (known || !steady(list, to)); to++ {
		}
		drawStretch(g, w, list[from:to+1], base)
		from = to
	}
	return list[len(list)-1]
}

// alike reports whether two moments have one chance.
func alike(a, b sure) bool {
	return a.chance == b.chance || math.IsNaN(a.chance) && math.IsNaN(b.chance)
}

// steady reports whether the chance stays as it is from that moment to the next.
func steady(list []sure, i int) bool { return i+1 < len(list) && alike(list[i], list[i+1]) }

// drawStretch draws a stretch of one chance, or of one that changes evenly.
func drawStretch(g *draw.Group, w *bands.Window, list []sure, base float64) {
	first, last := list[0], list[len(list)-1]
	x1, x2 := w.X(first.t), w.X(last.t)
	switch least := leastOf(list); {
	case math.IsNaN(least):
		signs.DrawNoChance(g, x1, x2, base)
	case least >= fullFrom:
		signs.DrawSharp(g, x1, x2, base, 1)
	case alike(first, last):
		signs.DrawChance(g, x1, x2, base, first.chance)
	default:
		drawSlope(g, w, list, base)
	}
}

func leastOf(list []sure) float64 {
	least := math.Inf(1)
	for _, p := range list {
		least = min(least, p.chance) // NaN stays
	}
	return least
}

// drawSlope draws a chance that changes, moment by moment.
func drawSlope(g *draw.Group, w *bands.Window, list []sure, base float64) {
	cg := g.Group(signs.Chance)
	upper, lower := make([]draw.Point, len(list)), make([]draw.Point, len(list))
	for i, p := range list {
		upper[i] = draw.Point{X: w.X(p.t), Y: base - signs.BarHeight*p.chance}
		lower[i] = draw.Point{X: w.X(p.t), Y: base}
	}
	x1, x2 := upper[0].X, upper[len(upper)-1].X
	cg.Add(draw.Path{Runs: [][]draw.Point{sheet.Between(sheet.Simplify(upper), sheet.Simplify(lower))}, Closed: true, Fill: draw.Black},
		draw.Rect{Box: draw.Box{X: x1, Y: base - signs.BarHeight, W: x2 - x1, H: signs.BarHeight}, Stroke: draw.Solid(draw.Black, draw.FineWidth)})
}

// writeChance writes a chance right of its bar where it is under the wanted one, and there
// is room before what stands next on the row.
func writeChance(g *draw.Group, s *plan.Shot, last sure, from, to, base float64) {
	const room = 14.0
	if last.chance < float64(s.Wanted) && to-from >= room {
		g.Add(draw.NewText(from+1.2, base-0.5, sheet.Chance(s, plan.Number(last.chance)), sheet.FontNumber, draw.Black))
	}
}
