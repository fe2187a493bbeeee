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
	keyHeight   = 6.5 // of the key at the foot
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

// A Leaf is one page of a score.
type Leaf struct {
	*Chart
	Window *Window // nil: no time axis
	Strips []placed

	Plumbs *draw.Group // under all bands
	PlumbX []float64   // where they fall
}

// Lay puts sections on new sheets, or on what is left of the last one where
// they need no time axis.
func (sc *Chart) Lay(w *Window, sections []Section) {
	var sh *Leaf
	if w == nil && len(sc.Sheets) > 0 && sc.Sheets[len(sc.Sheets)-1].takesAll(sections) {
		sh = sc.Sheets[len(sc.Sheets)-1]
	}
	for i, s := range sections {
		if sh == nil || !sh.takes(s, sections[i+1:]) || sh.tears(sections[i:]) {
			sh = &Leaf{Chart: sc, Window: w}
			sc.Sheets = append(sc.Sheets, sh)
		}
		sh.add(s)
	}
}

// AddHere puts sections on the last sheet where it has room for all of them.
func (sc *Chart) AddHere(sections []Section) bool {
	sh := sc.Sheets[len(sc.Sheets)-1]
	if !sh.takesAll(sections) {
		return false
	}
	for _, s := range sections {
		sh.add(s)
	}
	return true
}

// add puts a section on the sheet, under its head where it opens a kind.
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

// takesAll reports whether there is room for all of the sections: what stands
// below the bands is not torn apart where it can be had on one page.
func (sh *Leaf) takesAll(sections []Section) bool {
	trial := &Leaf{Chart: sh.Chart, Window: sh.Window, Strips: slices.Clone(sh.Strips)}
	for _, s := range sections {
		trial.add(s)
	}
	return trial.used() <= trial.room()+1e-9
}

// used returns the least height of what is on the sheet.
func (sh *Leaf) used() float64 {
	used := 0.0
	for _, p := range sh.Strips {
		used += p.Least
	}
	return used
}

// takes reports whether there is room for a section, its head and what belongs
// with it. A head is not left with one section alone: the head of a kind goes
// where at least two of its sections fit.
func (sh *Leaf) takes(s Section, next []Section) bool {
	need, along := s.Least, s.Together
	if s.Head != nil && sh.lastName() != s.Name {
		need += s.Head.Least
		along = max(along, 1)
	}
	for _, n := range next[:min(along, len(next))] {
		if n.Name == s.Name {
			need += n.Least
		}
	}
	return len(sh.Strips) == 0 || sh.used()+need <= sh.room()+1e-9
}

// tears reports whether the kind that the first of the sections opens would be
// torn apart on what is left of the sheet, where all of them fit on a new one.
func (sh *Leaf) tears(sections []Section) bool {
	name := sections[0].Name
	if len(sh.Strips) == 0 || sections[0].Head == nil || sh.lastName() == name {
		return false
	}
	kind := slices.IndexFunc(sections, func(s Section) bool { return s.Name != name })
	if kind < 0 || sh.takesAll(sections[:kind]) {
		return false
	}
	fresh := &Leaf{Chart: sh.Chart, Window: sh.Window}
	return fresh.takesAll(sections)
}

// room returns the height that a sheet has for sections.
func (sh *Leaf) room() float64 {
	h := sh.Paper.H - 2*sheet.Edge - sheet.HeadHeight
	if sh.Window != nil {
		h -= sh.rulers() + keyHeight
	}
	return h
}

// top returns where the sections start.
func (sh *Leaf) top() float64 {
	if sh.Window != nil {
		return sheet.Edge + sheet.HeadHeight + sh.rulers()
	}
	return sheet.Edge + sheet.HeadHeight
}

// arrange gives every section its place; free room goes to the sections in
// proportion to what they can use.
func (sh *Leaf) arrange() {
	free, wish := sh.room(), 0.0
	for _, p := range sh.Strips {
		free -= p.Least
		wish += max(0, p.Most-p.Least)
	}
	share := 0.0
	if wish > 0 {
		share = min(1, max(0, free)/wish)
	}
	y := sh.top()
	for i := range sh.Strips {
		p := &sh.Strips[i]
		p.Top, p.Height = y, p.Least+share*max(0, p.Most-p.Least)
		y += p.Height
	}
}

// span returns the top of the first and the bottom of the last section on the
// time axis, the lines left out where anything else is there.
func (sh *Leaf) span() (top, bottom float64) {
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

// Draw makes the pages; name says which drawing they are, and around draws what
// stands round the sections of each.
func (sc *Chart) Draw(name, desc string, around func(sh *Leaf, root *draw.Group, number int)) []*draw.Page {
	pages := make([]*draw.Page, len(sc.Sheets))
	for i, sh := range sc.Sheets {
		sh.arrange()
		title := sheet.ShotName(sc.Shot) + ": " + name
		if len(sc.Sheets) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(sc.Sheets))
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(desc), W: sc.Paper.W, H: sc.Paper.H}
		around(sh, &p.Root, i+1)
		sh.draw(&p.Root)
		if w := sh.Window; w != nil {
			_, bottom := sh.span()
			p.Spans = []draw.Span{{From: w.from, To: w.to, Left: w.Left, Right: w.Right, Top: sh.top() - sh.rulers(), Bottom: bottom}}
		}
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

// Open writes a band's heading and its lane of flags.
func (sh *Leaf) Open(g *draw.Group, top float64, row, title string) {
	sh.Heading(g, top, title)
	sh.drawLane(g.Group("flags"), top, row)
}

// Heading writes the name of a band in the gutter.
func (sh *Leaf) Heading(g *draw.Group, top float64, text string) {
	g.Add(draw.NewText(sheet.Margin, top+LaneAir+FlagLane/2+sheet.FontHeading.Middle(), text, sheet.FontHeading, draw.Black))
}

// DrawCaution draws at the foot of a score the cautions that apply, and where the angles
// of the ring come from.
func (sh *Leaf) DrawCaution(g *draw.Group) { sheet.DrawFoot(g, sh.Paper, sh.Shot) }
