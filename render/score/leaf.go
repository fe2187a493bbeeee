// Sheets: sections stacked on pages, with the free room given to those that
// can use it.

package score

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

// A section is a strip of the page over its whole width.
type section struct {
	name     string
	least    float64  // height in millimetres
	most     float64  // height that it can make use of
	head     *section // stands above it where it opens a page or follows another kind
	together int      // how many of those that follow belong on the same sheet
	flags    []int    // the numbers of the findings that it tells
	overTime bool     // drawn on the time axis
	draw     func(sh *leaf, g *draw.Group, top, height float64)
}

// A placed section is one with its place on a sheet.
type placed struct {
	section
	top, height float64
}

// A leaf is one page of a score.
type leaf struct {
	*score
	window *window // nil: no time axis
	strips []placed

	plumbs *draw.Group // under all bands
	plumbX []float64   // where they fall
}

// lay puts sections on new sheets, or on what is left of the last one where
// they need no time axis.
func (sc *score) lay(w *window, sections []section) {
	var sh *leaf
	if w == nil && len(sc.sheets) > 0 && sc.sheets[len(sc.sheets)-1].takesAll(sections) {
		sh = sc.sheets[len(sc.sheets)-1]
	}
	for i, s := range sections {
		if sh == nil || !sh.takes(s, sections[i+1:]) || sh.tears(sections[i:]) {
			sh = &leaf{score: sc, window: w}
			sc.sheets = append(sc.sheets, sh)
		}
		sh.add(s)
	}
}

// addHere puts sections on the last sheet where it has room for all of them.
func (sc *score) addHere(sections []section) bool {
	sh := sc.sheets[len(sc.sheets)-1]
	if !sh.takesAll(sections) {
		return false
	}
	for _, s := range sections {
		sh.add(s)
	}
	return true
}

// add puts a section on the sheet, under its head where it opens a kind.
func (sh *leaf) add(s section) {
	if s.head != nil && sh.lastName() != s.name {
		sh.strips = append(sh.strips, placed{section: *s.head})
	}
	sh.strips = append(sh.strips, placed{section: s})
}

// lastName returns the kind of the sheet's last section.
func (sh *leaf) lastName() string {
	if len(sh.strips) == 0 {
		return ""
	}
	return sh.strips[len(sh.strips)-1].name
}

// takesAll reports whether there is room for all of the sections: what stands
// below the bands is not torn apart where it can be had on one page.
func (sh *leaf) takesAll(sections []section) bool {
	trial := &leaf{score: sh.score, window: sh.window, strips: slices.Clone(sh.strips)}
	for _, s := range sections {
		trial.add(s)
	}
	return trial.used() <= trial.room()+1e-9
}

// used returns the least height of what is on the sheet.
func (sh *leaf) used() float64 {
	used := 0.0
	for _, p := range sh.strips {
		used += p.least
	}
	return used
}

// takes reports whether there is room for a section, its head and what belongs
// with it. A head is not left with one section alone: the head of a kind goes
// where at least two of its sections fit.
func (sh *leaf) takes(s section, next []section) bool {
	need, along := s.least, s.together
	if s.head != nil && sh.lastName() != s.name {
		need += s.head.least
		along = max(along, 1)
	}
	for _, n := range next[:min(along, len(next))] {
		if n.name == s.name {
			need += n.least
		}
	}
	return len(sh.strips) == 0 || sh.used()+need <= sh.room()+1e-9
}

// tears reports whether the kind that the first of the sections opens would be
// torn apart on what is left of the sheet, where all of them fit on a new one.
func (sh *leaf) tears(sections []section) bool {
	name := sections[0].name
	if len(sh.strips) == 0 || sections[0].head == nil || sh.lastName() == name {
		return false
	}
	kind := slices.IndexFunc(sections, func(s section) bool { return s.name != name })
	if kind < 0 || sh.takesAll(sections[:kind]) {
		return false
	}
	fresh := &leaf{score: sh.score, window: sh.window}
	return fresh.takesAll(sections)
}

// room returns the height that a sheet has for sections.
func (sh *leaf) room() float64 {
	h := sh.paper.H - 2*sheet.Edge - sheet.HeadHeight
	if sh.window != nil {
		h -= sh.rulers() + keyHeight
	}
	return h
}

// top returns where the sections start.
func (sh *leaf) top() float64 {
	if sh.window != nil {
		return sheet.Edge + sheet.HeadHeight + sh.rulers()
	}
	return sheet.Edge + sheet.HeadHeight
}

// arrange gives every section its place; free room goes to the sections in
// proportion to what they can use.
func (sh *leaf) arrange() {
	free, wish := sh.room(), 0.0
	for _, p := range sh.strips {
		free -= p.least
		wish += max(0, p.most-p.least)
	}
	share := 0.0
	if wish > 0 {
		share = min(1, max(0, free)/wish)
	}
	y := sh.top()
	for i := range sh.strips {
		p := &sh.strips[i]
		p.top, p.height = y, p.least+share*max(0, p.most-p.least)
		y += p.height
	}
}

// span returns the top of the first and the bottom of the last section on the
// time axis, the lines left out where anything else is there.
func (sh *leaf) span() (top, bottom float64) {
	for _, p := range sh.strips {
		if !p.overTime {
			continue
		}
		if bottom == 0 || p.name == "distance" {
			top = p.top
		}
		bottom = p.top + p.height
	}
	return top, bottom
}

// draw makes the pages; name says which drawing they are, and around draws what
// stands round the sections of each.
func (sc *score) draw(name, desc string, around func(sh *leaf, root *draw.Group, number int)) []*draw.Page {
	pages := make([]*draw.Page, len(sc.sheets))
	for i, sh := range sc.sheets {
		sh.arrange()
		title := sheet.ShotName(sc.shot) + ": " + name
		if len(sc.sheets) > 1 {
			title += fmt.Sprintf(", page %d of %d", i+1, len(sc.sheets))
		}
		p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(desc), W: sc.paper.W, H: sc.paper.H}
		around(sh, &p.Root, i+1)
		sh.draw(&p.Root)
		if w := sh.window; w != nil {
			_, bottom := sh.span()
			p.Spans = []draw.Span{{From: w.from, To: w.to, Left: w.left, Right: w.right, Top: sh.top() - sh.rulers(), Bottom: bottom}}
		}
		pages[i] = p
	}
	return pages
}

// drawAround draws what stands round the bands of a score.
func (sh *leaf) drawAround(root *draw.Group, number int) {
	sh.drawHead(root.Group("head"), number)
	if sh.window != nil {
		sh.drawMoves(root.Group("moves"))
		sh.plumbs = root.Group("plumb-lines")
		sh.drawRuler(root.Group("ruler"))
		sh.drawKey(root.Group("key"))
		sh.drawCaution(root.Group("caution"))
	}
}

// draw draws the sections.
func (sh *leaf) draw(root *draw.Group) {
	var g *draw.Group
	for _, p := range sh.strips {
		if g == nil || g.Name != p.name {
			g = root.Group(p.name)
		}
		p.draw(sh, g, p.top, p.height)
	}
}

// open writes a band's heading and its lane of flags.
func (sh *leaf) open(g *draw.Group, top float64, row, title string) {
	sh.heading(g, top, title)
	sh.drawLane(g.Group("flags"), top, row)
}

// heading writes the name of a band in the gutter.
func (sh *leaf) heading(g *draw.Group, top float64, text string) {
	g.Add(draw.NewText(sheet.Margin, top+laneAir+flagLane/2+sheet.FontHeading.Middle(), text, sheet.FontHeading, draw.Black))
}

// drawCaution draws at the foot of a score the cautions that apply, and where the angles
// of the ring come from.
func (sh *leaf) drawCaution(g *draw.Group) { sheet.DrawFoot(g, sh.paper, sh.shot) }
