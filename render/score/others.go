// One row for all whom a shot leaves soft, where there are many.

package score

import (
	"fmt"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// mostRows is how many subjects have a row each, whatever they do.
const mostRows = 9

// gathered returns the subjects that have a row of their own, in their order, and those
// that share one: of many those who are never sharp, to whom no pull goes, and of whom
// nothing was found.
func gathered(w *bands.Window) (own, others []int) {
	if len(w.Order) <= mostRows {
		return w.Order, nil
	}
	for _, k := range w.Order {
		if apart(w, k) {
			own = append(own, k)
		} else {
			others = append(others, k)
		}
	}
	if len(others) < 2 {
		return w.Order, nil
	}
	return own, others
}

// apart reports whether a subject has something to show in some window of the shot.
func apart(w *bands.Window, k int) bool {
	s, name := w.Shot, w.Shot.Subjects[k].Name
	if s.Optics.Start.Name == name || slices.ContainsFunc(s.Pulls, func(p *plan.Pull) bool { return p.To == name || p.From == name }) {
		return true
	}
	return slices.ContainsFunc(w.Windows, func(o *bands.Window) bool {
		return len(o.FlagsOf(name)) > 0 || slices.ContainsFunc(o.Curves.Blur[k], func(blur float64) bool { return blur <= 1 })
	})
}

// drawOthers draws the row of several subjects, its bars standing on base: where any of
// them is faintly soft.
func drawOthers(sh *bands.Leaf, g *draw.Group, others []int, base float64) {
	w := sh.Window
	names := make([]string, len(others))
	for i, k := range others {
		names[i] = w.Shot.Subjects[k].Name
	}
	row := g.Group(signs.Row)
	row.Title = "others: " + strings.Join(names, ", ")
	sh.RowHead(row, base-signs.BarHeight/2+sheet.FontBody.Middle(), fmt.Sprintf("others (%d)", len(others)))
	row.Line(w.Left, base, w.Right, base, draw.Solid(draw.Soft, draw.DashWidth))
	for _, k := range others {
		bar := blurBar{t: w.Curves.T, blur: w.Curves.Blur[k]}
		for _, piece := range bar.between(1, faintUpTo) {
			signs.DrawFaint(row, w.X(piece[0].t), w.X(piece[len(piece)-1].t), base)
		}
	}
}
