// The table to fill in: a row for each distance, with room for what is read when the
// ring comes from near, when it comes from far, and for their mean.

package lens

import (
	"math"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	tableHead = 9.0
	rowLeast  = 5.4
	rowMost   = 8.0
	nameWide  = 43.0 // the column of distances
	blankWide = 23.0 // one of the others
)

// blankTitles are the columns to write in, two lines each.
var blankTitles = [3][2]string{{"coming from near", "mm"}, {"coming from far", "mm"}, {"mean", "mm"}}

// fontDistance is that of the distances.
var fontDistance = draw.Font{Size: 9.5, Bold: true}

// A row is a reading to take.
type row struct {
	name, note string
	single     bool // a stop of the ring: it is come to from one side
}

// rows returns the readings in the order in which the ring turns.
func (l Lens) rows() []row {
	s := l.figures()
	var list []row
	for i, d := range l.Distances {
		switch {
		case i == 0:
			list = append(list, row{s.Tape(d), "closest stop", true})
		case math.IsInf(d, 1):
			list = append(list, row{"inf", "farther than " + s.Tape(l.InfinityFrom), false})
		default:
			list = append(list, row{name: s.Tape(d)})
		}
	}
	return append(list, row{"far stop", "", true})
}

// drawTable draws the table with its left upper corner at (x, y), no higher than room.
func (l Lens) drawTable(g *draw.Group, x, y, room float64) {
	list := l.rows()
	high := min(max((room-tableHead)/float64(len(list)), rowLeast), rowMost)
	right, bottom := x+nameWide+blankWide*float64(len(blankTitles)), y+tableHead+high*float64(len(list))
	rule := draw.Solid(draw.Soft, draw.GuideWidth)
	for i, title := range blankTitles {
		at := x + nameWide + blankWide*float64(i)
		for k, line := range title {
			g.Add(draw.NewText(at+1.2, y+3.2+3.2*float64(k), line, sheet.FontSmall, draw.Black))
		}
		g.Line(at, y+tableHead, at, bottom, rule)
	}
	g.Add(draw.NewText(x, y+6.4, "from the sensor mark", sheet.FontSmall, draw.Black))
	for i, r := range list {
		top := y + tableHead + high*float64(i)
		g.Line(x, top, right, top, rule)
		base := top + high/2 + fontDistance.Middle()
		name := draw.NewText(x, base, r.name, fontDistance, draw.Black)
		g.Add(name)
		if r.note != "" {
			g.Add(draw.NewText(name.Room().Right()+2, base, r.note, sheet.FontSmall, draw.Black))
		}
		if r.single { // one reading, in the column of the side that it is come to from
			from := 1
			if i > 0 {
				from = 0
			}
			for k := range 2 {
				if k != from {
					g.Add(draw.Rect{Box: draw.Box{X: x + nameWide + blankWide*float64(k), Y: top, W: blankWide, H: high}, Fill: draw.Guide})
				}
			}
		}
	}
	g.Line(x, bottom, right, bottom, rule)
	g.Line(right, y+tableHead, right, bottom, rule)
}
