// How a floor is shared out among sheets.

package floor

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// Draw draws the floor of a shot from above: places and ways, the camera with its field of
// view, what is sharp at every landing, and all tapes. Where the nearest and the farthest
// are too far apart for one scale, each part has a sheet of its own.
func Draw(s *plan.Shot, opt sheet.Options) []*draw.Page {
	head := func(g *draw.Group, f sheet.Folio) { sheet.DrawHead(g, s, opt.Size(), f) }
	return (&Floor{*layout.Of(s)}).Pages(opt.Size(), head)
}

// A Floor is a floor to be drawn.
type Floor struct{ layout.Floor }

// A part is what one sheet shows of a floor.
type part struct {
	places []int
	zones  []camZone
}

// A camZone is a zone with the index of its camera.
type camZone struct {
	camera int
	layout.Zone
}

// A layer is what is drawn of a floor on one sheet.
type layer struct {
	ground
	part
	floor   *Floor
	pins    []seek.Pin
	keepOut []seek.Circle // round discs, where no line goes
	crowded []int         // places without room for a disc
}

const (
	mostPlaces = 16 // on a sheet
	sheetTop   = 27.0
	footRoom   = sheet.FootRule + 3
)

// Pages draws a floor. head draws the head of a sheet.
func (f *Floor) Pages(paper sheet.Paper, head func(*draw.Group, sheet.Folio)) []*draw.Page {
	box := draw.Box{X: sheet.Margin, Y: sheetTop, W: paper.W - 2*sheet.Margin - tableWide - tableGap, H: paper.H - footRoom - sheetTop}
	var pages []*draw.Page
	var scales []string
	var rest []line
	all := f.roomy(box, f.parts(rowsFor(box.H)))
	homes := homesOf(all)
	for _, sheets := range all {
		lines := f.tapeLines(sheets[0].places)
		for i, p := range sheets {
			next := len(pages) + 2 // where its tapes go on
			if i == len(sheets)-1 {
				next = slices.Max(homes) + 1
			}
			page, scale, left := f.page(paper, box, p, lines, f.elsewhere(homes, p.places), next)
			pages, scales, lines = append(pages, page), append(scales, scale), left
		}
		rest = append(rest, lines...)
	}
	for len(rest) > 0 {
		page, left := tapePage(paper, rest)
		pages, scales, rest = append(pages, page), append(scales, ""), left
	}
	for i, p := range pages {
		folio := sheet.Folio{Paper: "floor", Number: i + 1, Of: len(pages), Scale: scales[i]}
		p.Title, p.Desc = draw.Clean(fmt.Sprintf("%s: %s", f.Name, folio)), draw.Clean(f.describe(scales[i]))
		head(p.Root.Group("head"), folio)
	}
	return pages
}

// said returns the words that found no place as one sentence, and after it other sentences.
func said(unplaced, sentences []string) []string {
	if len(unplaced) == 0 {
		return sentences
	}
	return append([]string{"Camera: " + strings.Join(unplaced, "; ") + "."}, sentences...)
}

// homesOf returns the number of the page of each place, and last that of the last sheet.
func homesOf(all [][]part) []int {
	var homes []int
	number := 1
	for _, sheets := range all {
		for _, i := range sheets[0].places {
			for len(homes) <= i {
				homes = append(homes, 0)
			}
			homes[i] = number
		}
		number += len(sheets)
	}
	return append(homes, number-1)
}

// elsewhere says on which pages the places are that a sheet does not show.
func (f *Floor) elsewhere(homes []int, places []int) (sentences []string) {
	for page := 1; page <= homes[len(homes)-1]; page++ {
		var letters []string
		for i, home := range homes[:len(homes)-1] {
			if home == page && !slices.Contains(places, i) {
				letters = append(letters, f.Places[i].Letter)
			}
		}
		if len(letters) > 0 {
			sentences = append(sentences, fmt.Sprintf("On page %d: %s.", page, strings.Join(letters, ", ")))
		}
	}
	return sentences
}

func (f *Floor) describe(scale string) string {
	if scale == "" {
		return "More tapes of the floor of " + f.Name + "."
	}
	zones := 0
	for _, c := range f.Cameras {
		zones += len(c.Zones)
	}
	return fmt.Sprintf("The floor of %s from above at %s: the camera with its field of view, %s, ways, what is sharp at %s of the focus, and all tapes.",
		f.Name, scale, units.Count(len(f.Places), "place"), units.Count(zones, "place"))
}

// parts shares a floor out: by distance where one scale does not do, then so many places
// to a sheet. Each has as many sheets as its rows need.
func (f *Floor) parts(rows int) [][]part {
	var all [][]part
	spans := f.spans()
	for i, span := range spans {
		var zones []camZone
		for k, c := range f.Cameras {
			for _, z := range c.Zones {
				if at := z.Seen.Pose.Y + z.At; spanOf(spans, at) == i {
					zones = append(zones, camZone{k, z})
				}
			}
		}
		var places []int
		for k, p := range f.Places {
			if p.At.Y >= span[0] && p.At.Y < span[1] && sheet.Finite(p.At.X) {
				places = append(places, k)
			}
		}
		if len(places) == 0 {
			places = []int{}
		}
		groups := slices.Collect(slices.Chunk(places, mostPlaces))
		if len(groups) == 0 {
			groups = [][]int{{}}
		}
		for k, group := range groups {
			var sheets []part
			if k == 0 {
				for _, some := range chunked(zones, rows) {
					sheets = append(sheets, part{group, some})
				}
			} else {
				sheets = []part{{group, nil}}
			}
			all = append(all, sheets)
		}
	}
	return all
}

// chunked cuts zones into groups of at most n; one empty group if there are none.
func chunked(zones []camZone, n int) [][]camZone {
	if len(zones) == 0 {
		return [][]camZone{nil}
	}
	return slices.Collect(slices.Chunk(zones, n))
}

// spanOf returns the index of the span in which something lies that far ahead.
func spanOf(spans [][2]float64, at float64) int {
	for i, s := range spans {
		if at < s[1] {
			return i
		}
	}
	return len(spans) - 1
}

// tooFar is the share of the farthest distance under which the nearest would not be told
// from the camera on one floor.
const tooFar = 1.0 / 12

// spans returns the stretches ahead of the first camera that have a sheet of their own, the
// nearest first, in metres.
func (f *Floor) spans() [][2]float64 {
	var all []float64
	for _, p := range f.Places {
		if p.At.Y > 0 && sheet.Finite(p.At.Y) {
			all = append(all, p.At.Y)
		}
	}
	slices.Sort(all)
	spans := [][2]float64{}
	from := math.Inf(-1)
	for {
		split := splitAt(all)
		if split == 0 {
			return append(spans, [2]float64{from, math.Inf(1)})
		}
		spans = append(spans, [2]float64{from, split})
		from = split
		all = all[slices.IndexFunc(all, func(v float64) bool { return v >= split }):]
	}
}

// splitAt returns where distances, the nearest first, are parted: between the two
// neighbours that are the farthest apart by their ratio. It returns 0 where one floor
// shows all.
func splitAt(all []float64) float64 {
	if len(all) < 2 || all[0] >= tooFar*all[len(all)-1] {
		return 0
	}
	best, split := 1.5, 0.0
	for i := 1; i < len(all); i++ {
		if ratio := all[i] / all[i-1]; ratio > best {
			best, split = ratio, math.Sqrt(all[i-1]*all[i])
		}
	}
	return split
}

// page draws a sheet with sentences below its table. It returns its scale and the lines of
// the table that found no room, which go on the page with the number next.
func (f *Floor) page(paper sheet.Paper, box draw.Box, p part, lines []line, sentences []string, next int) (page *draw.Page, scale string, left []line) {
	l := f.layer(box, p)
	page = &draw.Page{W: paper.W, H: paper.H}
	unplaced, letters := l.draw(page.Root.Group("floor"))
	x := paper.W - sheet.Margin - tableWide
	left = f.drawTable(page.Root.Group("tapes"), x, paper.H-footRoom, lines, said(unplaced, sentences), next)
	var notes []string
	if letters {
		notes = append(notes, "no room for a name: its letter is in the table")
	}
	sheet.DrawLegend(&page.Root, paper, notes...)
	return page, l.text(), left
}

// roomy takes the places off their sheets whose discs have no room there, and gives them
// sheets of their own.
func (f *Floor) roomy(box draw.Box, all [][]part) (roomy [][]part) {
	for len(all) > 0 {
		sheets := all[0]
		all = all[1:]
		var crowded []int
		for i := 0; i < len(sheets); i++ {
			more := f.layer(box, sheets[i]).crowded
			if len(more) == 0 || len(more) == len(sheets[i].places) {
				continue
			}
			crowded = append(crowded, more...)
			rest := slices.DeleteFunc(slices.Clone(sheets[i].places), func(k int) bool { return slices.Contains(more, k) })
			for k := range sheets {
				sheets[k].places = rest
			}
			i = -1 // on another scale others may be crowded
		}
		roomy = append(roomy, sheets)
		if len(crowded) > 0 {
			slices.Sort(crowded)
			all = append([][]part{{{places: crowded}}}, all...)
		}
	}
	return roomy
}

// layer lays what a sheet shows into a box.
func (f *Floor) layer(box draw.Box, p part) *layer {
	box.H -= rulerRoom + rowPitch*float64(len(p.zones))
	g := newGround(box, f.reach(p.places))
	pins, crowded := layPins(f, g, p.places, f.bodies(g))
	l := &layer{ground: g, part: p, floor: f, pins: pins, crowded: crowded}
	for _, q := range l.pins {
		l.keepOut = append(l.keepOut, discRoom(f.Places[q.Place].Letter, q.Disc))
		if q.Aside() {
			l.keepOut = append(l.keepOut, seek.Round(q.At, seek.DotRadius+0.3))
		}
	}
	for _, c := range f.Cameras {
		ahead, right := headed(c.States[0])
		middle := moved(g.at(c.States[0].Apex()), ahead, right, -(bodyBack+bodyFront)/2, 0)
		l.keepOut = append(l.keepOut, seek.Round(middle, bodyRoom))
	}
	return l
}

// draw draws the floor of a sheet. It returns the words of the camera that found no place,
// and whether some name found none.
func (l *layer) draw(g *draw.Group) (unplaced []string, letters bool) {
	c := &seek.Clearing{Bounds: l.box}
	l.drawSlabs(g.Group("zones"), c)
	l.drawSights(g.Group("views"), c)
	l.drawDepths(g.Group("depths"), c)
	l.drawWays(g.Group("ways"), c)
	words := l.drawCameras(g.Group("cameras"), c)
	l.drawPins(g.Group("places"))
	l.drawRuler(g.Group("ruler"))
	l.drawRows(g.Group("rows"))
	unplaced, letters = l.drawLabels(g.Group("names"), c, words)
	return unplaced, letters
}

// drawLabels names the places, then writes what the cameras do.
func (l *layer) drawLabels(g *draw.Group, c *seek.Clearing, words []seek.Label) (unplaced []string, letters bool) {
	for _, p := range l.pins {
		c.Discs = append(c.Discs, seek.Round(p.Disc, signs.PlaceRadius))
		if p.Aside() {
			c.Lines, c.Leads = append(c.Lines, seek.Between(p.At, p.Disc)), append(c.Leads, seek.Between(p.At, p.Disc))
		}
	}
	var names []seek.Label
	for i, p := range l.pins {
		names = append(names, l.nameOf(i, p))
	}
	for i := range words {
		words[i].Index = len(names) + i
	}
	done := seek.Lay(c, append(names, words...))
	found := map[int]bool{}
	for _, t := range done {
		found[t.Index] = true
		sub := g.Group("name")
		if t.Index < len(names) {
			sub.Title = draw.Clean(l.floor.Places[l.pins[t.Index].Place].Name)
		}
		t.Draw(sub, c.Tinted(t))
	}
	for _, w := range words {
		if !found[w.Index] && !w.Told {
			unplaced = append(unplaced, w.Lines[0].String)
		}
	}
	return unplaced, slices.ContainsFunc(names, func(n seek.Label) bool { return !found[n.Index] })
}

const widestName = 46.0

// nameOf returns the label of a pin: the name, and below it the side and the time.
func (l *layer) nameOf(i int, p seek.Pin) seek.Label {
	place := l.floor.Places[p.Place]
	t := seek.Label{At: p.Disc, Radius: signs.PlaceRadius, Index: i, Spare: 1, Assumed: place.Unsaid}
	t.Lines = append(t.Lines, draw.NewText(0, 0, place.Name, fontName, draw.Black).Shortened(widestName))
	side := ""
	switch {
	case place.Unsaid:
		side = "≈ aside not said"
	case math.Abs(place.At.X) >= onAxis:
		side = l.floor.sideWords(place.At.X)
	}
	if figures := sheet.Joined([]string{side, place.When}); figures != "" {
		t.Lines = append(t.Lines, draw.NewText(0, 0, figures, fontValue, draw.Grey))
	}
	return t
}

// drawTable draws the table beside a floor: as many lines as have room, then sentences and
// cautions, which always have.
func (f *Floor) drawTable(g *draw.Group, x, bottom float64, lines []line, sentences []string, next int) (left []line) {
	more := wordLines([]string{fmt.Sprintf("More tapes on page %d.", next)}, sheet.FontNote, draw.Black)
	foot := append([]line{gapLine(2)}, wordLines(sentences, fontValue, draw.Black)...)
	foot = append(append(foot, gapLine(1)), wordLines(f.Notes, fontValue, draw.Grey)...)
	foot = append(append(foot, gapLine(2)), wordLines(f.Cautions, fontValue, draw.Black)...)
	n := fitting(lines, bottom-sheetTop-tableHead-heightOf(foot))
	if n < len(lines) {
		foot = slices.Concat([]line{gapLine(1)}, more, foot)
		n = fitting(lines, bottom-sheetTop-tableHead-heightOf(foot))
	}
	drawColumn(g, x, sheetTop-1, append(slices.Clone(lines[:n]), foot...))
	return lines[n:]
}

// tapePage draws a sheet of tapes that found no room beside the floor.
func tapePage(paper sheet.Paper, lines []line) (page *draw.Page, left []line) {
	page = &draw.Page{W: paper.W, H: paper.H}
	g := page.Root.Group("tapes")
	for x := sheet.Margin; x+tableWide <= paper.W-sheet.Margin+1e-9 && len(lines) > 0; x += tableWide + tableGap {
		n := max(fitting(lines, paper.H-footRoom-sheetTop-tableHead), 1)
		drawColumn(g, x, sheetTop-1, lines[:n])
		lines = lines[n:]
	}
	sheet.DrawLegend(&page.Root, paper)
	return page, lines
}
