// A lane on a sheet.

package lanes

import (
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/gutter"
	"pullscore/render/sheet"
	"slices"
)

const (
	Least = 7.4  // height of a lane, millimetres
	Most  = 15.0 // that it can make use of
	air   = 1.4  // above and below its curve
)

// A Place is a lane on a sheet.
type Place struct {
	*bands.Leaf
	Lane        *Lane
	Top, Height float64 // millimetres
}

// y returns where a value stands.
func (p Place) y(v float64) float64 {
	share := (p.Lane.High - v) / (p.Lane.High - p.Lane.Low)
	return p.Top + air + min(max(share, 0), 1)*(p.Height-2*air)
}

// DrawHead draws the lane's name and its scale.
func (p Place) DrawHead(g *draw.Group) {
	x, middle := p.Left-gutter.HeadGap, p.Top+p.Height/2
	if p.Lane.note != "" {
		g.Add(draw.NewText(x, middle+1.5+sheet.FontSmall.Middle(), p.Lane.note, sheet.FontSmall, draw.Grey).Aligned(draw.End))
		middle -= 1.5
	}
	g.Add(draw.NewText(x, middle+sheet.FontStrong.Middle(), p.Lane.Name, sheet.FontStrong, draw.Black).Aligned(draw.End))
	g.Line(p.Left, p.y(p.Lane.First), p.Window.Right, p.y(p.Lane.First), draw.Solid(draw.Guide, draw.GuideWidth))
	for _, v := range []float64{p.Lane.Low, p.Lane.High} {
		g.Add(draw.NewText(p.Window.Right+1.6, p.y(v)+sheet.FontSmall.Middle(), p.Lane.value(p.Shot, v), sheet.FontSmall, draw.Grey))
	}
}

// Run returns the lane's curve on the sheet; nil where the shot does not show there.
func (p Place) Run() []draw.Point {
	var run []draw.Point
	for _, t := range p.Window.Curves.T {
		run = append(run, draw.Point{X: p.Window.X(t), Y: p.y(p.Lane.At(t))})
	}
	return sheet.Simplify(run)
}

// Rest returns the curve of a camera that does nothing of the lane.
func (p Place) Rest() []draw.Point {
	return []draw.Point{{X: p.Left, Y: p.y(p.Lane.First)}, {X: p.Window.Right, Y: p.y(p.Lane.First)}}
}

// WriteMoves writes at the peak of each move where it goes, how far and how fast, after a
// label: as much of it as there is room for.
func (p Place) WriteMoves(g *draw.Group, c *sheet.Clearing, moves []Move, label string) {
	for _, m := range moves {
		if !p.Window.Holds(m.At) {
			continue
		}
		at := draw.Point{X: p.Window.X(m.At), Y: p.y(p.Lane.At(m.At))}
		all := p.Lane.Words(p.Shot, m)
		own := *c // the lane's own height: elsewhere the words read as another lane's
		own.Bounds.Y, own.Bounds.H = p.Top, p.Height
		switch {
		case writeFirst(g, &own, all, label, at):
			c.Taken, c.Texts = own.Taken, own.Texts
		case !writeFirst(g, c, all, label, at):
			for _, words := range all {
				if c.WriteAnywhere(g, draw.NewText(0, 0, label+words, sheet.FontSmall, draw.Black), at) {
					break
				}
			}
		}
	}
}

// writeFirst writes the first of some wordings that has room by a point, and reports
// whether one had.
func writeFirst(g *draw.Group, c *sheet.Clearing, all []string, label string, at draw.Point) bool {
	return slices.ContainsFunc(all, func(words string) bool {
		return c.Write(g, draw.NewText(0, 0, label+words, sheet.FontSmall, draw.Black), at)
	})
}
