// Tables on handouts: one row for each thing, with its texts wrapped and never cut.

package sheet

import "pullscore/render/draw"

// A Column is one column of a table.
type Column struct {
	Title string
	Text  bool // wraps in the width that other columns leave; if false, as wide as its cells
	width float64
}

// A Table holds rows of cells, one cell for each column.
type Table struct {
	Columns []Column
	Rows    [][]string
	Links   [][]string // for each cell the ID that it leads to, or ""; nil: none leads anywhere
	IDs     []string   // for each row its own ID, or ""; nil: none has one
}

const (
	tableGap   = 5.0
	TablePitch = 3.2
	tableLead  = 1.2 // below a row
)

// fit drops the columns that say nothing and sets the widths of the others.
func (t *Table) fit(room float64) {
	t.DropEmpty()
	texts, wish := 0, 0.0
	room -= tableGap * float64(len(t.Columns)-1)
	for i := range t.Columns {
		c := &t.Columns[i]
		c.width = FontSmall.Room(c.Title)
		for _, row := range t.Rows {
			c.width = max(c.width, FontNote.Room(draw.Clean(row[i])))
		}
		if c.Text {
			texts, wish = texts+1, wish+c.width
		} else {
			room -= c.width
		}
	}
	if wish <= room {
		return
	}
	for i := range t.Columns { // the narrow texts first: what they leave is shared by the wide
		if c := &t.Columns[i]; c.Text && c.width <= room/float64(texts) {
			room, texts = room-c.width, texts-1
		}
	}
	for i := range t.Columns {
		if c := &t.Columns[i]; c.Text && texts > 0 {
			c.width = min(c.width, max(room/float64(texts), 12))
		}
	}
}

// DropEmpty removes the columns that are empty in every row.
func (t *Table) DropEmpty() {
	var columns []Column
	rows, links := make([][]string, len(t.Rows)), make([][]string, len(t.Links))
	for i, c := range t.Columns {
		said := false
		for _, row := range t.Rows {
			said = said || row[i] != ""
		}
		if !said {
			continue
		}
		columns = append(columns, c)
		for k, row := range t.Rows {
			rows[k] = append(rows[k], row[i])
		}
		for k, link := range t.Links {
			links[k] = append(links[k], link[i])
		}
	}
	t.Columns, t.Rows, t.Links = columns, rows, links
}

// Put writes the table onto the handout, and repeats its head on every sheet.
func (t *Table) Put(h *Handout, name string) {
	t.fit(h.Width())
	if len(t.Rows) == 0 {
		return
	}
	sheet := 0
	defer func() { h.Y += 2.5 }()
	for i, row := range t.Rows {
		cells, lines := t.wrap(row)
		height := TablePitch*float64(lines) + tableLead
		if need := height + 2*TablePitch + 1; sheet != len(h.Roots) || h.Left() < height {
			if h.Left() < need {
				h.Turn()
			}
			t.head(h, name)
			sheet = len(h.Roots)
		}
		g, top := h.Take(height, name)
		if i < len(t.IDs) {
			g.ID = t.IDs[i]
		}
		t.eachColumn(func(column int, x float64) {
			cell := g
			if i < len(t.Links) && t.Links[i][column] != "" {
				cell = g.Group("cell")
				cell.Link = t.Links[i][column]
			}
			for k, line := range cells[column] {
				if line != "" {
					cell.Add(draw.NewText(x, top+2.7+TablePitch*float64(k), line, FontNote, draw.Black))
				}
			}
		})
		g.Line(Margin, top+height, Margin+h.Width(), top+height, Solid(draw.Pale, Hair))
	}
}

func (t *Table) head(h *Handout, name string) {
	g, top := h.Take(2*TablePitch, name)
	t.eachColumn(func(i int, x float64) {
		if title := t.Columns[i].Title; title != "" {
			g.Add(draw.NewText(x, top+4.6, title, FontSmall, draw.Grey))
		}
	})
	g.Line(Margin, top+2*TablePitch-0.6, Margin+h.Width(), top+2*TablePitch-0.6, Solid(draw.Black, Thin))
}

func (t *Table) eachColumn(do func(i int, x float64)) {
	x := Margin
	for i, c := range t.Columns {
		do(i, x)
		x += c.width + tableGap
	}
}

// wrap breaks the cells of a row; lines is how many the longest of them takes.
func (t *Table) wrap(row []string) (cells [][]string, lines int) {
	for i, c := range t.Columns {
		cell := []string{draw.Clean(row[i])}
		if c.Text {
			cell = FontNote.Wrap(row[i], c.width+1e-6)
		}
		cells = append(cells, cell)
		lines = max(lines, len(cell))
	}
	return cells, lines
}
