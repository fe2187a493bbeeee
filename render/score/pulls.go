// The table of pulls at the foot of a score.

package score

import (
	"fmt"
	"slices"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/score/table"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A column is one figure of all pulls.
type column struct {
	title string
	text  bool // takes a share of the free room and wraps; else as wide as it needs
	extra bool // only where there is plenty of room
	rank  int  // on a screen without room for all the highest go first; 0 stays
	bold  func(p *plan.Pull) bool
	cell  func(p *plan.Pull) string
	width float64
	gap   float64 // after it
}

// font returns the type of a cell.
func (c *column) font(p *plan.Pull) draw.Font {
	f := sheet.FontNote
	f.Bold = c.bold != nil && c.bold(p)
	return f
}

// number returns the cell of a figure that may not apply.
func number(of func(p *plan.Pull) plan.Number, write func(float64) string) func(*plan.Pull) string {
	return func(p *plan.Pull) string {
		if n := of(p); n.Known() {
			return write(float64(n))
		}
		return ""
	}
}

// pullColumns returns the columns that have anything to say of the shot's
// pulls.
func pullColumns(s *plan.Shot) []column {
	of := func(p *plan.Pull) string {
		if p.Kind == "follow" {
			return "follow " + sheet.TargetName(s, p.To, p.Target)
		}
		return "to " + sheet.TargetName(s, p.To, p.Target)
	}
	all := []column{
		{text: true, bold: always, cell: of},
		{title: "hangs on", rank: 8, text: true, cell: func(p *plan.Pull) string { return p.Anchor }},
		{title: "because", rank: 9, text: true, cell: func(p *plan.Pull) string { return p.Because }},
		{title: "starts", cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Start)) }},
		{title: "lands", cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Land)) }},
		{title: "frames", extra: true, cell: func(p *plan.Pull) string { return fmt.Sprintf("%d–%d", p.StartFrame, p.LandFrame) }},
		{title: "takes", rank: 3, cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Land - p.Start)) }},
		{title: "at the hand", rank: 2, cell: number(func(p *plan.Pull) plan.Number { return p.HandDeg }, sheet.Figures.Angle)},
		{title: "window", rank: 4, cell: func(p *plan.Pull) string { return sheet.WindowWidth(p) }},
		{title: "peak", rank: 5, cell: number(func(p *plan.Pull) plan.Number { return p.Peak }, sheet.Figures.Speed)},
		{title: moments.ThumbHead(s), rank: 7, cell: func(p *plan.Pull) string { return moments.Thumb(p.Hold, sheet.Figures) }},
		{title: "re-grips", extra: true, cell: func(p *plan.Pull) string { return sheet.CountOrBlank(p.Regrips) }},
		{title: "needs", rank: 1, cell: number(func(p *plan.Pull) plan.Number { return p.Needed }, sheet.Figures.TimeFixed)},
		{title: "chance", bold: func(p *plan.Pull) bool { return p.Chance < s.Wanted }, cell: func(p *plan.Pull) string { return moments.Lands(s, p, sheet.Figures) }},
		{title: "leaves soft by", rank: 6, cell: number(func(p *plan.Pull) plan.Number { return p.LeftBlur }, arcmin)},
	}
	var said []column
	for _, c := range all {
		for _, p := range s.Pulls {
			if c.cell(p) != "" {
				said = append(said, c)
				break
			}
		}
	}
	return said
}

func always(*plan.Pull) bool { return true }

// arcmin writes a blur at the viewer.
func arcmin(blur float64) string {
	most := 0
	if units.Nearest(blur, 10) < 10 {
		most = 1
	}
	return sheet.Figures.Number(blur, most) + " arcmin"
}

const (
	widestGap  = 9.0 // between columns at most
	numberRoom = 5.4 // for a pull's number
)

// pullTable returns a section for every pull.
func pullTable(sc *bands.Chart) []bands.Section {
	columns := fit(sc, pullColumns(sc.Shot))
	head := bands.Section{Name: "pulls", Least: table.FootAir + 4.6, Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+table.FootAir+2.9, "Pulls", sheet.FontHeading, draw.Black))
		drawTableHead(g, columns, top+table.FootAir+2.9)
		g.Line(sheet.Margin, top+table.FootAir+4.6, sc.Paper.W-sheet.Margin, top+table.FootAir+4.6, draw.Solid(draw.Black, draw.RulerWidth))
	}}
	var all []bands.Section
	for _, p := range sc.Shot.Pulls {
		cells, lines := wrapCells(columns, p)
		height := table.CellPitch*float64(lines) + 1.6
		all = append(all, bands.Section{Name: "pulls", Least: height, Most: height, Head: &head,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
				drawPull(sc.Shot, g, columns, cells, p, top)
				g.Line(sheet.Margin, top+height, sh.Paper.W-sheet.Margin, top+height, draw.Solid(draw.Guide, draw.GuideWidth))
			}})
	}
	return all
}

// extraRoom is how much room a column needs that is there only where there is plenty.
const extraRoom = 15.0

// fit sets the columns' widths: figures as wide as they are; texts as wide as
// they are where there is room, else in equal shares of it. What is left over
// goes between the columns, as far as it does not tear them apart.
func fit(sc *bands.Chart, columns []column) []column {
	for i := range columns {
		c := &columns[i]
		c.width = sheet.FontSmall.Room(c.title)
		for _, p := range sc.Shot.Pulls {
			c.width = max(c.width, c.font(p).Room(draw.Clean(c.cell(p))))
		}
	}
	free := func() float64 {
		room := sc.Paper.W - 2*sheet.Margin - numberRoom - table.CellGap*float64(len(columns)-1)
		for _, c := range columns {
			room -= c.width
		}
		return room
	}
	for i := len(columns) - 1; i >= 0; i-- {
		if columns[i].extra && free() < extraRoom {
			columns = slices.Delete(columns, i, i+1)
		}
	}
	for sc.OnScreen() && free()+textsGive(columns) < 0 { // whoever wants the rest points at a pull
		i := 0
		for k, c := range columns {
			if c.rank > columns[i].rank {
				i = k
			}
		}
		if columns[i].rank == 0 {
			break
		}
		columns = slices.Delete(columns, i, i+1)
	}
	short := -free() // what texts have to give
	for i := range columns {
		if c := &columns[i]; c.text && short > 0 {
			give := min(short, c.width-max(textLeast, min(c.width, textShare(columns, sc.Paper.W))))
			c.width, short = c.width-max(0, give), short-max(0, give)
		}
	}
	room := max(0, free())
	for i := range columns {
		columns[i].gap = min(table.CellGap+room/float64(max(1, len(columns)-1)), widestGap)
	}
	return columns
}

// textLeast is how narrow a text may become that wraps, in millimetres.
const textLeast = 18.0

// textsGive returns by how much the texts can be narrowed, in millimetres.
func textsGive(columns []column) (give float64) {
	for _, c := range columns {
		if c.text {
			give += max(0, c.width-textLeast)
		}
	}
	return give
}

// textShare returns the width that each text may have where all of them wrap.
func textShare(columns []column, width float64) float64 {
	room, texts := width-2*sheet.Margin-numberRoom-table.CellGap*float64(len(columns)-1), 0
	for _, c := range columns {
		if c.text {
			texts++
		} else {
			room -= c.width
		}
	}
	return room / float64(max(1, texts))
}

// wrapCells breaks the texts of a pull's row and returns how many lines it has.
func wrapCells(columns []column, p *plan.Pull) (cells [][]draw.Text, lines int) {
	cells, lines = make([][]draw.Text, len(columns)), 1
	for i, c := range columns {
		if !c.text {
			cells[i] = []draw.Text{draw.NewText(0, 0, c.cell(p), c.font(p), draw.Black).Aligned(draw.End)}
			continue
		}
		cells[i] = table.WrapIn(c.font(p), c.cell(p), c.width, table.CellLines)
		lines = max(lines, len(cells[i]))
	}
	return cells, lines
}

func drawTableHead(g *draw.Group, columns []column, base float64) {
	x := sheet.Margin + numberRoom
	for _, c := range columns {
		t := draw.NewText(x, base, c.title, sheet.FontSmall, draw.Grey)
		if !c.text {
			t.At.X += c.width
			t = t.Aligned(draw.End)
		}
		if c.title != "" {
			g.Add(t)
		}
		x += c.width + c.gap
	}
}

func drawPull(s *plan.Shot, g *draw.Group, columns []column, cells [][]draw.Text, p *plan.Pull, top float64) {
	g = g.Group("pull-row")
	g.Number, g.ID, g.Link = p.Number, bands.RowID(s, p.Number), bands.PullID(s, p.Number)
	base := top + 3.3
	bands.Badge(g, sheet.Margin+signs.DiscRadius(p.Number), base-sheet.FontNote.Middle(), p)
	x := sheet.Margin + numberRoom
	for i, c := range columns {
		for k, t := range cells[i] {
			t.At = draw.Point{X: x, Y: base + float64(k)*table.CellPitch}
			if !c.text {
				t.At.X += c.width
			}
			if t.String != "" {
				g.Add(t)
			}
		}
		x += c.width + c.gap
	}
}
