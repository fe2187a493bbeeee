// Tables on handouts: a row a thing, its texts wrapped, never cut.

package render

import (
	"pullscore/render/draw"
)

// A tableColumn is one figure of all rows.
type tableColumn struct {
	title string
	text  bool // wraps in what the others leave; else as wide as its cells
	width float64
}

// A table is rows of cells under columns.
type table struct {
	columns []tableColumn
	rows    [][]string
}

const (
	tableGap   = 5.0
	tablePitch = 3.2
	tableLead  = 1.2 // below a row
)

// fit drops the columns that say nothing and sets the widths of the others.
func (t *table) fit(room float64) {
	t.dropEmpty()
	texts, wish := 0, 0.0
	room -= tableGap * float64(len(t.columns)-1)
	for i := range t.columns {
		c := &t.columns[i]
		c.width = fontSmall.Width(c.title)
		for _, row := range t.rows {
			c.width = max(c.width, fontNote.Width(draw.Clean(row[i])))
		}
		if c.text {
			texts, wish = texts+1, wish+c.width
		} else {
			room -= c.width
		}
	}
	if wish <= room {
		return
	}
	for i := range t.columns { // the narrow texts first: what they leave is shared by the wide
		if c := &t.columns[i]; c.text && c.width <= room/float64(texts) {
			room, texts = room-c.width, texts-1
		}
	}
	for i := range t.columns {
		if c := &t.columns[i]; c.text && texts > 0 {
			c.width = min(c.width, max(room/float64(texts), 12))
		}
	}
}

// dropEmpty leaves out the columns in which no row says anything.
func (t *table) dropEmpty() {
	var columns []tableColumn
	rows := make([][]string, len(t.rows))
	for i, c := range t.columns {
		said := false
		for _, row := range t.rows {
			said = said || row[i] != ""
		}
		if !said {
			continue
		}
		columns = append(columns, c)
		for k, row := range t.rows {
			rows[k] = append(rows[k], row[i])
		}
	}
	t.columns, t.rows = columns, rows
}

// put writes the table onto the handout, with its head again on every sheet.
func (t *table) put(h *handout, name string) {
	t.fit(h.width())
	if len(t.rows) == 0 {
		return
	}
	sheet := 0
	defer func() { h.y += 2.5 }()
	for _, row := range t.rows {
		cells, lines := t.wrap(row)
		height := tablePitch*float64(lines) + tableLead
		if need := height + 2*tablePitch + 1; sheet != len(h.roots) || h.left() < height {
			if h.left() < need {
				h.turn()
			}
			t.head(h, name)
			sheet = len(h.roots)
		}
		g, top := h.take(height, name)
		t.eachColumn(func(i int, x float64) {
			for k, line := range cells[i] {
				if line != "" {
					g.Add(draw.NewText(x, top+2.7+tablePitch*float64(k), line, fontNote, draw.Black))
				}
			}
		})
		g.Line(margin, top+height, margin+h.width(), top+height, solid(draw.Pale, hair))
	}
}

func (t *table) head(h *handout, name string) {
	g, top := h.take(2*tablePitch, name)
	t.eachColumn(func(i int, x float64) {
		if title := t.columns[i].title; title != "" {
			g.Add(draw.NewText(x, top+4.6, title, fontSmall, draw.Grey))
		}
	})
	g.Line(margin, top+2*tablePitch-0.6, margin+h.width(), top+2*tablePitch-0.6, solid(draw.Black, thin))
}

func (t *table) eachColumn(do func(i int, x float64)) {
	x := margin
	for i, c := range t.columns {
		do(i, x)
		x += c.width + tableGap
	}
}

// wrap breaks the cells of a row; lines is how many the longest of them takes.
func (t *table) wrap(row []string) (cells [][]string, lines int) {
	for i, c := range t.columns {
		cell := []string{draw.Clean(row[i])}
		if c.text {
			cell = fontNote.Wrap(row[i], c.width+1e-6)
		}
		cells = append(cells, cell)
		lines = max(lines, len(cell))
	}
	return cells, lines
}
