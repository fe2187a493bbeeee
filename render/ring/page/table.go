// The table of the marks, far to near, readable at arm's length.

package page

import (
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A Row is that of a mark, or of a stop of the ring.
type Row struct {
	Start           bool  // the focus starts here
	Pulls           []int // that land here
	Letter, Name    string
	First, Second   string // the distance in the plan's units, and in the others
	Ring, Hand      string // angles
	Below, BelowEnd string // under the name, and at the end of that line
	Aside, Lens     bool   // nobody lands there; it is the lens's
}

// A Table is the table of a shot in the making.
type Table struct {
	shot    *plan.Shot
	rows    []Row
	width   float64
	columns columns
}

// columns are the widths of the columns, 0 for one that is not there.
type columns struct{ numbers, letters, name, first, second, ring, hand float64 }

var (
	fontRow    = draw.Font{Size: 12, Bold: true}
	fontFigure = draw.Font{Size: 9.5}
	fontHand   = draw.Font{Size: 10.5, Bold: true}
	fontBelow  = draw.Font{Size: 8}
)

// SignsMost is how many signs stand beside each other. What starts and lands where there are
// more has to be written out.
const SignsMost = 3

const (
	columnGap = 2.6
	nameLeast = 22.0
	rowTop    = 5.2 // from the top of a row to its baseline
	rowBelow  = 4.2 // from there to the second line
	rowFoot   = 1.4
	tableHead = 9.8
	signWide  = 4.4
)

// NewTable makes a table of rows.
func NewTable(s *plan.Shot, rows []Row) *Table {
	t := &Table{shot: s, rows: rows}
	t.fit()
	return t
}

// Narrowed returns the table with the other units under the names.
func (t *Table) Narrowed() *Table {
	rows := slices.Clone(t.rows)
	for i := range rows {
		r := &rows[i]
		if r.Second != "" {
			r.Below = strings.TrimSuffix(r.Second+", "+r.Below, ", ")
			r.Second = ""
		}
	}
	return NewTable(t.shot, rows)
}

// fit sets the widths of the columns but that of the names.
func (t *Table) fit() {
	c := &t.columns
	for i := range t.rows {
		r := &t.rows[i]
		c.numbers = max(c.numbers, t.numbersWidth(r))
		c.letters = max(c.letters, fontRow.Room(r.Letter))
		c.first = max(c.first, fontFigure.Room(draw.Clean(r.First)))
		c.second = max(c.second, sheet.FontNote.Room(draw.Clean(r.Second)))
		c.ring = max(c.ring, fontFigure.Room(r.Ring))
		c.hand = max(c.hand, fontHand.Room(r.Hand))
	}
	c.first = max(c.first, sheet.FontNote.Room(t.firstTitle()))
	if c.ring > 0 {
		c.ring = max(c.ring, sheet.FontNote.Room("ring"))
	}
	if c.hand > 0 {
		c.hand = max(c.hand, sheet.FontNote.Room(t.handTitle()))
	}
}

// firstTitle names the distances: those of a camera on the floor of a scene lie along its
// axis, and a tape runs straight to somebody.
func (t *Table) firstTitle() string {
	if t.shot.Staging != nil && t.shot.Placed {
		return "focus"
	}
	return "tape"
}

func (t *Table) handTitle() string {
	if t.columns.ring > 0 {
		return "at the hand"
	}
	return "ring"
}

// Signs is how many things start or land at a row's mark.
func (r *Row) Signs() int {
	if r.Start {
		return len(r.Pulls) + 1
	}
	return len(r.Pulls)
}

// numbersWidth is the room of the signs of what starts or lands at a row's mark.
func (t *Table) numbersWidth(r *Row) float64 {
	width := 0.0
	if r.Signs() > SignsMost {
		return 0
	}
	if r.Start {
		width += signWide
	}
	for _, n := range r.Pulls {
		width += discWide(n)
	}
	return width
}

// discWide is the room of the disc of a pull.
func discWide(number int) float64 { return max(signWide, 2*signs.DiscRadius(number)+0.6) }

// others is the width of all columns but that of the names, with the gaps.
func (c columns) others() float64 {
	sum := 0.0
	for _, w := range []float64{c.numbers, c.letters, c.first, c.second, c.ring, c.hand} {
		if w > 0 {
			sum += w + columnGap
		}
	}
	return sum
}

// Least is the width that the table takes at least.
func (t *Table) Least() float64 { return t.columns.others() + nameLeast }

// wish is the width at which all names have room.
func (t *Table) wish() float64 {
	name := nameLeast
	for _, r := range t.rows {
		name = max(name, fontRow.Room(draw.Clean(r.Name)))
	}
	return t.columns.others() + name
}

// A setRow is a row with its texts broken into lines.
type setRow struct {
	*Row
	names, below []string
}

// set breaks the texts of a row.
func (t *Table) set(r *Row) setRow {
	l := setRow{Row: r, names: []string{r.Name}}
	if !r.Lens {
		l.names = fontRow.Wrap(r.Name, t.columns.name)
	}
	if r.Below != "" {
		l.below = fontBelow.Wrap(r.Below, t.belowWidth(r))
	}
	return l
}

// belowWidth is the room under a name.
func (t *Table) belowWidth(r *Row) float64 {
	width := t.width - t.edges(0).name
	if r.BelowEnd != "" {
		width -= fontBelow.Room(r.BelowEnd) + 2
	}
	return max(width, 8)
}

// height is that of the row.
func (l setRow) height() float64 {
	h := rowTop + rowFoot + float64(len(l.names)-1)*fontRow.Height()
	switch {
	case len(l.below) > 0:
		h += rowBelow + LinePitch(fontBelow)*float64(len(l.below)-1)
	case l.BelowEnd != "":
		h += rowBelow
	}
	return h
}

// Put writes the table across the page from y on, and goes on overleaf.
func (t *Table) Put(b *Book, y float64) {
	if len(t.rows) == 0 {
		return
	}
	b.Y = y
	width := min(b.Width(), max(t.wish(), 110))
	b.Reserve(tableHead + 20)
	b.Y = t.draw(b, sheet.Margin, b.Y, width)
	t.rows = nil
}

// PutBeside writes as much of the table as the page holds, and leaves the rest to put. It
// returns where it ends.
func (t *Table) PutBeside(b *Book, x, y float64) float64 {
	page := len(b.Roots)
	end := t.draw(b, x, y, b.Paper.W-sheet.Margin-x)
	if len(b.Roots) != page {
		end = b.Y
	}
	t.rows = nil
	return end
}

// draw writes the rows from (x, y) on; those that have no room go on the next page, across
// all of it.
func (t *Table) draw(b *Book, x, y, width float64) float64 {
	g := t.start(b, x, y, width)
	y += tableHead
	for i := range t.rows {
		r := t.set(&t.rows[i])
		if y+r.height() > b.Foot() && y > Top+tableHead {
			b.Turn()
			x, y, width = sheet.Margin, b.Y, min(b.Width(), max(t.wish(), 110))
			g = t.start(b, x, y, width)
			y += tableHead
			r = t.set(&t.rows[i])
		}
		t.drawRow(g, r, x, y)
		y += r.height()
		g.Line(x, y, x+width, y, draw.Solid(draw.Guide, draw.GuideWidth))
		b.Y = max(b.Y, y)
	}
	return y + 3
}

// start writes the head of the table.
func (t *Table) start(b *Book, x, y, width float64) *draw.Group {
	t.width = width
	t.columns.name = width - t.columns.others()
	g := b.Root().Group("table")
	g.Add(draw.NewText(x, y+3, "Marks, far to near", sheet.FontHeading, draw.Black))
	c := t.columns
	title := func(right float64, text string) {
		g.Add(draw.NewText(right, y+8, text, sheet.FontNote, draw.Grey).Aligned(draw.End))
	}
	edges := t.edges(x)
	g.Add(draw.NewText(edges.name, y+8, "mark", sheet.FontNote, draw.Grey))
	title(edges.first, t.firstTitle())
	if c.ring > 0 {
		title(edges.ring, "ring")
	}
	if c.hand > 0 {
		title(edges.hand, t.handTitle())
	}
	g.Line(x, y+tableHead-0.4, x+width, y+tableHead-0.4, draw.Solid(draw.Black, draw.RulerWidth))
	return g
}

// edges returns where the columns begin that begin left, and end that end right.
func (t *Table) edges(x float64) columns {
	c := t.columns
	var e columns
	at := x
	step := func(w float64) float64 {
		from := at
		if w > 0 {
			at += w + columnGap
		}
		return from
	}
	e.numbers = step(c.numbers)
	e.letters = step(c.letters)
	e.name = step(c.name)
	e.first = step(c.first) + c.first
	e.second = step(c.second) + c.second
	e.ring = step(c.ring) + c.ring
	e.hand = step(c.hand) + c.hand
	return e
}

// drawRow writes a row, with its top at y.
func (t *Table) drawRow(g *draw.Group, r setRow, x, y float64) {
	e, base := t.edges(x), y+rowTop
	t.drawNumbers(g, r.Row, e.numbers, base-fontRow.Middle())
	ink, name, hand := draw.Black, fontRow, fontHand
	if r.Aside || r.Lens {
		ink = draw.Grey
	}
	if r.Lens {
		name, hand = fontFigure, fontFigure
	}
	if r.Letter != "" {
		g.Add(draw.NewText(e.letters, base, r.Letter, fontRow, ink))
	}
	for i, line := range r.names {
		g.Add(draw.NewText(e.name, base+float64(i)*fontRow.Height(), line, name, ink))
	}
	end := func(right float64, text string, f draw.Font, ink draw.Ink) {
		if text != "" {
			g.Add(draw.NewText(right, base, text, f, ink).Aligned(draw.End))
		}
	}
	end(e.first, r.First, fontFigure, ink)
	end(e.second, r.Second, sheet.FontNote, draw.Grey)
	end(e.ring, r.Ring, fontFigure, ink)
	end(e.hand, r.Hand, hand, ink)
	base += float64(len(r.names)-1)*fontRow.Height() + rowBelow
	if r.BelowEnd != "" {
		g.Add(draw.NewText(x+t.width, base, r.BelowEnd, fontBelow, draw.Grey).Aligned(draw.End))
	}
	for i, line := range r.below {
		g.Add(draw.NewText(e.name, base+LinePitch(fontBelow)*float64(i), line, fontBelow, draw.Grey))
	}
}

// drawNumbers draws the signs of what starts or lands at a row's mark; many are written out
// under the name.
func (t *Table) drawNumbers(g *draw.Group, r *Row, x, y float64) {
	if r.Signs() > SignsMost {
		return
	}
	if r.Start {
		signs.DrawStart(g, x+signWide-1, y)
		x += signWide
	}
	for _, number := range r.Pulls {
		wide := discWide(number)
		signs.DrawPull(g, x+wide/2, y, number, t.follows(number))
		x += wide
	}
}

// follows reports whether a pull is a follow.
func (t *Table) follows(number int) bool {
	return slices.ContainsFunc(t.shot.Pulls, func(p *plan.Pull) bool { return p.Number == number && p.Kind == "follow" })
}
