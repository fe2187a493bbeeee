// How a floor is shared out among sheets.

package staged

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

const (
	mostCameras = 4 // on a sheet
	sheetTop    = 24.6
	footRoom    = sheet.FootRule + 1
	tableGap    = 8.5 // with the bars, between the floor and the table
)

// Draw draws the floor of a scene of a plan, by its index: four cameras a sheet. Its tapes
// go on after these sheets where they find no room beside the floors.
func Draw(p *plan.Plan, scene int, opt sheet.Options) []*draw.Page {
	return Of(p, scene).Pages(opt.Size())
}

// A part is what one sheet shows of a floor.
type part struct {
	setups []Setup
	places []int
}

// parts shares the set-ups out, and puts places that find no room for their discs onto a
// sheet of their own.
func (f *Floor) parts(box draw.Box) []part {
	all := make([]int, len(f.Places))
	for i := range all {
		all[i] = i
	}
	groups := slices.Collect(slices.Chunk(f.Setups, mostCameras))
	if len(groups) == 0 {
		groups = [][]Setup{nil}
	}
	var parts []part
	left := all
	for _, setups := range groups {
		shown, crowded := f.roomy(box, setups, all)
		parts = append(parts, part{setups, shown})
		left = slices.DeleteFunc(slices.Clone(left), func(i int) bool { return !slices.Contains(crowded, i) })
	}
	for len(left) > 0 {
		shown, crowded := f.roomy(box, nil, left)
		if len(shown) == 0 { // all in one spot, and no room round it
			shown, crowded = left[:1], left[1:]
		}
		parts, left = append(parts, part{nil, shown}), crowded
	}
	return parts
}

// roomy returns which of some places have room for their discs on a sheet, and which have not.
func (f *Floor) roomy(box draw.Box, setups []Setup, places []int) (shown, crowded []int) {
	shown = places
	for {
		more := f.layer(box, setups, shown).crowded
		if len(more) == 0 {
			return shown, crowded
		}
		shown, crowded = without(shown, more), append(crowded, more...) // without them others may be crowded
		slices.Sort(crowded)
	}
}

// without returns a list without some of its values.
func without(list, some []int) []int {
	return slices.DeleteFunc(slices.Clone(list), func(i int) bool { return slices.Contains(some, i) })
}

// Pages draws a floor.
func (f *Floor) Pages(paper sheet.Paper) []*draw.Page {
	box := draw.Box{X: sheet.Margin, Y: sheetTop, W: paper.W - 2*sheet.Margin - tableWide - tableGap, H: paper.H - footRoom - sheetTop}
	parts := f.parts(box)
	var pages []*draw.Page
	var scales []string
	var rest []tableLine
	for _, p := range parts {
		page, scale, left := f.page(paper, box, p, len(parts)+1)
		pages, scales, rest = append(pages, page), append(scales, scale), append(rest, left...)
	}
	for len(rest) > 0 {
		page, left := f.tapePage(paper, rest)
		pages, scales, rest = append(pages, page), append(scales, ""), left
	}
	for i, p := range pages {
		folio := sheet.Folio{Paper: "floor", Number: i + 1, Of: len(pages), Scale: scales[i]}
		p.Title, p.Desc = draw.Clean(fmt.Sprintf("%s: %s", f.Title, folio)), draw.Clean(f.describe(scales[i]))
		p.Root.ID = f.pageID(i + 1)
		sheet.DrawHeadOf(p.Root.Group("head"), f.heading(), paper, folio)
	}
	return pages
}

// heading returns the head of the sheets.
func (f *Floor) heading() sheet.Heading {
	words := []string{f.PlanName}
	if len(f.Setups) > 0 {
		words = append(words, units.Count(len(f.Setups), "set-up"))
	}
	return sheet.Heading{Name: f.Title, Line: sheet.Joined(words)}
}

// pageID returns the ID of a sheet, by its number from 1.
func (f *Floor) pageID(number int) string {
	return draw.ID("scene", strconv.Itoa(f.number), "floor", strconv.Itoa(number))
}

// wedgeID and blockID return the IDs of a set-up on the floor and in the table.
func (f *Floor) wedgeID(s *Setup) string {
	return draw.ID("scene", strconv.Itoa(f.number), "camera", s.ID)
}

func (f *Floor) blockID(s *Setup) string {
	return draw.ID("scene", strconv.Itoa(f.number), "tapes", s.ID)
}

func (f *Floor) describe(scale string) string {
	if scale == "" {
		return "More tapes of the floor of " + f.Title + "."
	}
	return fmt.Sprintf("The floor of %s from above at %s: %s, their ways, %s with their fields of view, and all tapes.",
		f.Title, scale, units.Count(len(f.Places), "place"), units.Count(len(f.Setups), "set-up"))
}

// page draws a sheet. It returns its scale, and the lines of the table that found no room,
// which go on from the page with the number next.
func (f *Floor) page(paper sheet.Paper, box draw.Box, p part, next int) (page *draw.Page, scale string, left []tableLine) {
	l := f.layer(box, p.setups, p.places)
	page = &draw.Page{W: paper.W, H: paper.H}
	unplaced, letters := l.draw(page.Root.Group("floor"))
	l.drawBars(page.Root.Group("bars"))
	left = f.drawTable(page.Root.Group("tapes"), draw.Box{X: box.Right() + tableGap, Y: box.Y, W: tableWide, H: paper.H - footRoom - box.Y}, p, f.sentences(p, unplaced, letters), next)
	sheet.DrawLegend(&page.Root, paper, "grid "+sheet.Figures.Number(l.gridStep(), 0)+" m", f.zeroWords(l))
	sheet.DrawSentences(page.Root.Group("cautions"), paper, paper.H-cautionBase, f.Cautions)
	return page, l.text(), left
}

const cautionBase = 6.4

// zeroWords says what the zero point is.
func (f *Floor) zeroWords(l *layer) string {
	switch {
	case f.Origin == "":
		return ""
	case l.holds(l.zero, zeroUp):
		return "zero point: " + f.Origin
	}
	return "zero point, off this sheet: " + f.Origin
}

// sentences returns what a sheet says below its table.
func (f *Floor) sentences(p part, unplaced []string, letters bool) (list []string) {
	for _, c := range p.setups {
		for _, t := range c.Tapes {
			if t.Measured {
				list = append(list, fmt.Sprintf("* %s to %s was read; the floor gives %s.", c.ID, t.Name, f.Style.Tape(t.ByFloor)))
			}
		}
	}
	if len(unplaced) > 0 {
		list = append(list, "Without room for a name on the floor: "+strings.Join(unplaced, ", ")+".")
	}
	if letters {
		list = append(list, "Where a name has no room, its letter is in the table.")
	}
	var elsewhere []string
	for i, place := range f.Places {
		if !slices.Contains(p.places, i) {
			elsewhere = append(elsewhere, place.Letter)
		}
	}
	if len(elsewhere) > 0 {
		list = append(list, "On another sheet, as there is no room here: "+strings.Join(elsewhere, ", ")+".")
	}
	if len(p.setups) == 0 {
		return list
	}
	return append(list, "Tapes run from the sensor mark to the eyes, heights included, as each shot starts. The focus is the part along the lens's axis: set that.")
}
