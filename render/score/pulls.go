// The table of pulls at the foot of a score.

package score

import (
	"fmt"

	"pullscore/interp/moments"
	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/score/bands"
	"pullscore/render/sheet"
)

// A column is one figure of all pulls.
type column struct {
	title string
	text  bool // takes a share of the free room and wraps; else as wide as it needs
	cell  func(p *plan.Pull) string
	width float64
	gap   float64 // after it
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
	in := sheet.Style(s).Tape
	all := []column{
		{text: true, cell: func(p *plan.Pull) string { return sheet.PullName(s, p) }},
		{title: "cue", text: true, cell: func(p *plan.Pull) string { return p.Anchor }},
		{title: "because", text: true, cell: func(p *plan.Pull) string { return p.Because }},
		{title: "starts", cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Start)) }},
		{title: "lands", cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Land)) }},
		{title: "frames", cell: func(p *plan.Pull) string { return fmt.Sprintf("%d–%d", p.StartFrame, p.LandFrame) }},
		{title: "takes", cell: func(p *plan.Pull) string { return sheet.Figures.TimeFixed(float64(p.Land - p.Start)) }},
		{title: "from", cell: number(func(p *plan.Pull) plan.Number { return p.FromM }, in)},
		{title: "to", cell: number(func(p *plan.Pull) plan.Number { return p.ToM }, in)},
		{title: "travel", cell: number(func(p *plan.Pull) plan.Number { return p.HandDeg }, sheet.Figures.Angle)},
		{title: "window", cell: func(p *plan.Pull) string { return sheet.WindowWidth(p) }},
		{title: "peak", cell: number(func(p *plan.Pull) plan.Number { return p.Peak }, sheet.Figures.Speed)},
		{title: moments.ThumbHead(s), cell: func(p *plan.Pull) string { return moments.Thumb(p.Hold, sheet.Figures) }},
		{title: "re-grips", cell: func(p *plan.Pull) string { return sheet.CountOrBlank(p.Regrips) }},
		{title: "needs", cell: number(func(p *plan.Pull) plan.Number { return p.Needed }, sheet.Figures.TimeFixed)},
		{title: "chance", cell: func(p *plan.Pull) string { return moments.Lands(s, p, sheet.Figures) }},
		{title: "leaves soft by", cell: number(func(p *plan.Pull) plan.Number { return p.LeftBlur }, func(v float64) string { return moments.Circles(s, v, sheet.Figures) })},
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

const (
	widestGap  = 9.0 // between columns at most
	numberRoom = 6.0 // for a pull's number
)

// pullTable returns a section for every pull.
func pullTable(sc *bands.Chart) []bands.Section {
	columns := pullColumns(sc.Shot)
	fit(sc, columns)
	head := bands.Section{Name: "pulls", Least: bands.FootAir + 4.6, Draw: func(sh *bands.Leaf, g *draw.Group, top, _ float64) {
		g.Add(draw.NewText(sheet.Margin, top+bands.FootAir+2.9, "Pulls", sheet.FontHeading, draw.Black))
		drawTableHead(g, columns, top+bands.FootAir+2.9)
		g.Line(sheet.Margin, top+bands.FootAir+4.6, sc.Paper.W-sheet.Margin, top+bands.FootAir+4.6, sheet.Solid(draw.Black, sheet.Thin))
	}}
	var all []bands.Section
	for _, p := range sc.Shot.Pulls {
		cells, lines := wrapCells(columns, p)
		height := bands.CellPitch*float64(lines) + 1.1
		all = append(all, bands.Section{Name: "pulls", Least: height, Most: height, Head: &head,
			Draw: func(sh *bands.Leaf, g *draw.Group, top, height float64) {
				drawPull(g, columns, cells, p.Number, top)
				g.Line(sheet.Margin, top+height, sh.Paper.W-sheet.Margin, top+height, sheet.Solid(draw.Pale, sheet.Hair))
			}})
	}
	return all
}

// fit sets the columns' widths: figures as wide as they are; texts as wide as
// they are where there is room, else in equal shares of it. What is left over
// goes between the columns, as far as it does not tear them apart.
func fit(sc *bands.Chart, columns []column) {
	room := sc.Paper.W - 2*sheet.Margin - numberRoom - bands.CellGap*float64(len(columns)-1)
	texts := 0
	for i := range columns {
		c := &columns[i]
		c.width = sheet.FontSmall.Room(c.title)
		for _, p := range sc.Shot.Pulls {
			c.width = max(c.width, sheet.FontNote.Room(draw.Clean(c.cell(p))))
		}
		if c.text {
			texts++
		} else {
			room -= c.width
		}
	}
	for i := range columns {
		if c := &columns[i]; c.text {
			c.width = min(c.width, max(room/float64(texts), 12))
			room -= c.width
			texts--
		}
	}
	for i := range columns {
		columns[i].gap = min(bands.CellGap+max(0, room)/float64(max(1, len(columns)-1)), widestGap)
	}
}

// wrapCells breaks the texts of a pull's row and returns how many lines it has.
func wrapCells(columns []column, p *plan.Pull) (cells [][]draw.Text, lines int) {
	cells, lines = make([][]draw.Text, len(columns)), 1
	for i, c := range columns {
		if !c.text {
			cells[i] = []draw.Text{draw.NewText(0, 0, c.cell(p), sheet.FontNote, draw.Black).Aligned(draw.End)}
			continue
		}
		cells[i] = bands.WrapText(c.cell(p), c.width, bands.CellLines)
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

func drawPull(g *draw.Group, columns []column, cells [][]draw.Text, number int, top float64) {
	base := top + 3.1
	bands.Badge(g, sheet.Margin+bands.BadgeRadius(number), base-sheet.FontNote.Middle(), number)
	x := sheet.Margin + numberRoom
	for i, c := range columns {
		for k, t := range cells[i] {
			t.At = draw.Point{X: x, Y: base + float64(k)*bands.CellPitch}
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
