// Sheets: sections stacked on pages, with the free room given to those that
// can use it.

package bands

import (
	"fmt"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	rulerHeight = 8.2 // of the ruler of time
	systemAir   = 2.6 // above it where another system stands over it
)

// A Section is a strip of the page over its whole width.
type Section struct {
	Name     string
	Least    float64  // height in millimetres
	Most     float64  // height that it can make use of
	Head     *Section // stands above it where it opens a page or follows another kind
	Together int      // how many of those that follow belong on the same sheet
	Flags    []int    // the numbers of the findings that it tells
	OverTime bool     // drawn on the time axis
	Draw     func(sh *Leaf, g *draw.Group, top, height float64)
}

// A placed section is one with its place on a sheet.
type placed struct {
	Section
	Top, Height float64
}

// A Leaf is the part of a sheet that shows one window, or what needs no time.
type Leaf struct {
	*Chart
	Window *Window // nil: no time axis
	Strips []placed
	Edge   float64 // its upper end on the sheet, millimetres
	air    float64 // above that

	Plumbs *draw.Group // under all bands
	PlumbX []float64   // where they fall
	plumbs []plumb
	joins  []plumb    // likewise, of the pieces of a cut
	discs  []draw.Box // in the lane of a band of the hand alone
}

// A Sheet is one page of a score.
type Sheet struct {
	*Chart
	Leaves []*Leaf
	Paper  sheet.Paper // its own: on a screen a sheet is as high as what is on it
}

// Lay puts sections on new sheets, or on what is left of the last one where
// they need no time axis, or are another window of those that it may show.
func (sc *Chart) Lay(w *Window, sections []Section) {
	lf := sc.goesOn(w, sections)
	for i, s := range sections {
		if lf == nil || !sc.last().takes(lf, s, sections[i+1:]) || sc.last().tears(lf, sections[i:]) {
			lf = &Leaf{Chart: sc, Window: w}
			sc.Sheets = append(sc.Sheets, &Sheet{Chart: sc, Leaves: []*Leaf{lf}, Paper: sc.Paper})
		}
		lf.add(s)
	}
}

// Begin has what is laid next begin a new sheet, with so many windows on each.
func (sc *Chart) Begin(systems int) { sc.Systems, sc.begin = systems, true }

// goesOn returns a new leaf on the last sheet if that takes all of the sections, else nil.
func (sc *Chart) goesOn(w *Window, sections []Section) *Leaf {
	if begin := sc.begin; begin || len(sc.Sheets) == 0 || len(sections) == 0 {
		sc.begin = false
		return nil
	}
	sh, lf := sc.last(), &Leaf{Chart: sc, Window: w}
	if w != nil && sh.systems() > 0 {
		lf.air = systemAir
	}
	if w != nil && sh.systems() >= sc.Systems || !sh.takesAll(lf, sections) {
		return nil
	}
	sh.Leaves = append(sh.Leaves, lf)
	return lf
}

func (sc *Chart) last() *Sheet { return sc.Sheets[len(sc.Sheets)-1] }

// systems returns how many windows the sheet shows.
func (sh *Sheet) systems() (n int) {
	for _, lf := range sh.Leaves {
		if lf.Window != nil {
			n++
		}
	}
	return n
}

// AddHere puts sections on the last sheet where it has room for all of them.
func (sc *Chart) AddHere(sections []Section) bool {
	lf := sc.goesOn(nil, sections)
	if lf == nil {
		return len(sections) == 0
	}
	for _, s := range sections {
		lf.add(s)
	}
	return true
}

// add puts a section on the leaf, under its head where it opens a kind.
func (sh *Leaf) add(s Section) {
	if s.Head != nil && sh.lastName() != s.Name {
		sh.Strips = append(sh.Strips, placed{Section: *s.Head})
	}
	sh.Strips = append(sh.Strips, placed{Section: s})
}

// lastName returns the kind of the sheet's last section.
func (sh *Leaf) lastName() string {
	if len(sh.Strips) == 0 {
		return ""
	}
	return sh.Strips[len(sh.Strips)-1].Name
}

// takesAll reports whether the sheet has room for all of the sections on a leaf: what
// stands below the bands is not torn apart where it can be had on one page.
func (sh *Sheet) takesAll(lf *Leaf, sections []Section) bool {
	trial := &Leaf{Chart: lf.Chart, Window: lf.Window, Strips: slices.Clone(lf.Strips), air: lf.air}
	for _, s := range sections {
		trial.add(s)
	}
	return sh.usedBut(lf)+trial.used() <= sh.room()+1e-9
}

// used returns the least height of what is on the leaf.
func (sh *Leaf) used() float64 {
	used := sh.air + sh.rulers()
	for _, p := range sh.Strips {
		used += p.Least
	}
	return used
}

// usedBut returns the least height of what is on the sheet, but for one of its leaves.
func (sh *Sheet) usedBut(but *Leaf) (used float64) {
	for _, lf := range sh.Leaves {
		if lf != but {
			used += lf.used()
		}
	}
	return used
}

// takes reports whether there is room on a leaf for a section, its head and what belongs
// with it. A head is not left with one section alone: the head of a kind goes
// where at least two of its sections fit.
func (sh *Sheet) takes(lf *Leaf, s Section, next []Section) bool {
	need, along := s.Least, s.Together
	if s.Head != nil && lf.lastName() != s.Name {
		need += s.Head.Least
		along = max(along, 1)
	}
	for _, n := range next[:min(along, len(next))] {
		if n.Name == s.Name {
			need += n.Least
		}
	}
	return len(lf.Strips) == 0 || sh.usedBut(lf)+lf.used()+need <= sh.room()+1e-9
}

// tears reports whether the kind that the first of the sections opens would be
// torn apart on what is left of the sheet, where all of them fit on a new one.
func (sh *Sheet) tears(lf *Leaf, sections []Section) bool {
	name := sections[0].Name
	if len(lf.Strips) == 0 || sections[0].Head == nil || lf.lastName() == name {
		return false
	}
	kind := slices.IndexFunc(sections, func(s Section) bool { return s.Name != name })
	if kind < 0 || sh.takesAll(lf, sections[:kind]) {
		return false
	}
	fresh := &Leaf{Chart: lf.Chart, Window: lf.Window}
	return (&Sheet{Chart: sh.Chart, Paper: sh.Chart.Paper}).takesAll(fresh, sections)
}

// room returns the height that a sheet has for its leaves.
func (sh *Sheet) room() float64 {
	if sh.screen != nil {
		return endless
	}
	return sh.Paper.H - top - foot
}

// Where the leaves of a sheet start, and where they end above its lower edge, millimetres.
const (
	top  = sheet.Edge + sheet.HeadHeight
	foot = 20.0
)

// arrange gives every section its place; free room goes to the sections in
// proportion to what they can use.
func (sh *Sheet) arrange() {
	free, wish := sh.spare(), 0.0
	for _, lf := range sh.Leaves {
		for _, p := range lf.Strips {
			wish += max(0, p.Most-p.Least)
		}
	}
	share := 0.0
	if wish > 0 {
		share = min(1, max(0, free)/wish)
	}
	y := top
	for _, lf := range sh.Leaves {
		lf.Edge = y + lf.air
		y = lf.Edge + lf.rulers()
		for i := range lf.Strips {
			p := &lf.Strips[i]
			p.Top, p.Height = y, p.Least+share*max(0, p.Most-p.Least)
			y += p.Height
		}
	}
	if sh.screen != nil {
		sh.Paper.H = y + foot
	}
}

// Span returns the top of the first and the bottom of the last section on the
// time axis, the lines left out where anything else is there.
func (sh *Leaf) Span() (top, bottom float64) {
	for _, p := range sh.Strips {
		if !p.OverTime {
			continue
		}
		if bottom == 0 || p.Name == "distance" {
			top = p.Top
		}
		bottom = p.Top + p.Height
	}
	return top, bottom
}

// Reach returns the top of the first and the bottom of the last section of that name on
// the sheet, in millimetres, and whether there is any.
func (sh *Leaf) Reach(name string) (top, bottom float64, ok bool) {
	for _, p := range sh.Strips {
		if p.Name != name {
			continue
		}
		if !ok {
			top, ok = p.Top, true
		}
		bottom = p.Top + p.Height
	}
	return top, bottom, ok
}

// Draw makes the pages; name says which drawing they are, around draws what
// stands round the sections of each before them, and legend what explains them after.
func (sc *Chart) Draw(name, desc string, around func(sh *Sheet, root *draw.Group, number int), legend func(sh *Sheet, root *draw.Group)) []*draw.Page {
	pages := make([]*draw.Page, len(sc.Sheets))
	for i, sh := range sc.Sheets {
		sh.arrange()
		title := sheet.ShotName(sc.Shot) + ": " + name
		number, all := i+1+sc.Ahead, len(sc.Sheets)+sc.Ahead
		if all > 1 {
			title += fmt.Sprintf(", page %d of %d", number, all)
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(desc), W: sh.Paper.W, H: sh.Paper.H, Trim: sc.screen.Trim()}
		p.Root.ID = sheet.PageID(sc.Shot, name, number)
		around(sh, &p.Root, number)
		for _, lf := range sh.Leaves {
			lf.draw(&p.Root)
			if w := lf.Window; w != nil {
				_, bottom := lf.Span()
				p.Spans = append(p.Spans, w.spans(lf.Edge, bottom)...)
			}
		}
		texts := lying(&p.Root, nil)
		for _, lf := range sh.Leaves {
			lf.drawPlumbs(texts)
		}
		legend(sh, &p.Root)
		p.H = sh.Paper.H
		pages[i] = p
	}
	return pages
}

// draw draws the sections.
func (sh *Leaf) draw(root *draw.Group) {
	var g *draw.Group
	for _, p := range sh.Strips {
		if g == nil || g.Name != p.Name {
			g = root.Group(p.Name)
		}
		p.Draw(sh, g, p.Top, p.Height)
	}
}

// Heading writes the name of a band in the gutter.
func (sh *Leaf) Heading(g *draw.Group, top float64, text string) {
	g.Add(draw.NewText(sheet.Margin, top+LaneAir+FlagLane/2+sheet.FontHeading.Middle(), text, sheet.FontHeading, draw.Black))
}

// DrawCaution draws at the foot of a score the cautions that apply, and where the angles
// of the ring come from.
func (sh *Sheet) DrawCaution(g *draw.Group) { sheet.DrawFoot(g, sh.Paper, sh.Shot) }
