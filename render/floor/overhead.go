// The overhead: the floor of a shot seen from above, to scale. The camera
// looks to the right; what is right of it is below on the page.

package floor

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/render/draw"
	"pullscore/render/sheet"
)

// Overhead draws the floor of the shot: places and paths, the camera with its
// field of view, and what is sharp at every landing. Where the nearest and the
// farthest are too far apart for one scale, the floor is drawn twice. A shot
// with more landings than a sheet has room for goes on over more pages.
func Overhead(shot *plan.Shot, opt sheet.Options) []*draw.Page {
	o := newOverhead(shot, opt.Size())
	pages := make([]*draw.Page, 0, 1)
	total := max(1, (len(o.foci)+o.rows-1)/o.rows)
	for i := range total {
		o.shown = o.foci[i*o.rows : min((i+1)*o.rows, len(o.foci))]
		pages = append(pages, o.page(i+1, total))
	}
	return pages
}

// An overhead is a shot's overhead in the making.
type overhead struct {
	shot   *plan.Shot
	paper  sheet.Paper
	people []person
	foci   []focus
	split  float64 // metres: the near floor ends here; 0 for one floor
	rows   int     // of sharp zones on a sheet
	shown  []focus // on the sheet being drawn
}

const (
	floorGutter = 44.0
	floorTop    = sheet.Edge + 17.5
	floorFoot   = 17.5 // from the sheet's lower edge: the key and the cautions
	zoneRow     = 3.6
	rowsOne     = 9 // sharp zones under a floor alone on its sheet
	rowsTwo     = 5 // and under each of two
	tagLane     = 4.2
	rulerRoom   = 9.0
	floorsApart = 5.0
)

func newOverhead(s *plan.Shot, paper sheet.Paper) *overhead {
	o := &overhead{shot: s, paper: paper, people: peopleOf(s), foci: fociOf(s), rows: rowsOne}
	if o.split = splitFloors(o.people); o.split > 0 {
		o.rows = rowsTwo
	}
	return o
}

func (o *overhead) page(number, total int) *draw.Page {
	floors := o.floors()
	title, which := sheet.ShotName(o.shot)+": overhead", "overhead · "+floors[0].scaleText()
	for _, f := range floors[1:] {
		which += " and " + f.scaleText()
	}
	right := []string{which}
	if total > 1 {
		title += fmt.Sprintf(", page %d of %d", number, total)
		right = append(right, fmt.Sprintf("page %d of %d", number, total))
	}
	p := &draw.Page{Title: draw.Clean(title), Desc: draw.Clean(o.describe(floors)), W: o.paper.W, H: o.paper.H}
	sheet.DrawPageHead(p.Root.Group("head"), o.shot, o.paper, right...)
	for i, f := range floors {
		f.draw(p.Root.Group([]string{"floor", "far-floor"}[i]))
	}
	o.drawKey(p.Root.Group("key"))
	o.drawCautions(p.Root.Group("cautions"))
	return p
}

// floors returns the floors of a sheet with their room.
func (o *overhead) floors() []*floor {
	top, bottom := floorTop, o.paper.H-floorFoot
	if o.split == 0 {
		return []*floor{newFloor(o, top, bottom, 0, math.Inf(1))}
	}
	middle := top + 0.56*(bottom-top)
	return []*floor{
		newFloor(o, top, middle-floorsApart/2, 0, o.split),
		newFloor(o, middle+floorsApart/2, bottom, o.split, math.Inf(1)),
	}
}

func (o *overhead) describe(floors []*floor) string {
	text := fmt.Sprintf("The floor of shot %s from above at %s", sheet.ShotName(o.shot), floors[0].scaleText())
	if len(floors) > 1 {
		text += " near and " + floors[1].scaleText() + " far"
	}
	return fmt.Sprintf("%s: the camera with its field of view, %s with their paths, and what is sharp at %s of the focus.",
		text, units.Count(len(o.shot.Subjects), "subject"), units.Count(len(o.foci), "place"))
}

// tooFar is the share of the farthest distance under which the nearest would
// not be told from the camera on one floor.
const tooFar = 1.0 / 12

// splitFloors returns where the near floor ends, 0 where one floor shows all:
// between the two places that leave both floors the most alike within
// themselves.
func splitFloors(people []person) float64 {
	var all []float64
	for _, p := range people {
		for _, at := range p.places {
			if at.x > 0 && sheet.Finite(at.x) {
				all = append(all, at.x)
			}
		}
	}
	all = sortedUnique(all)
	if len(all) < 2 || all[0] >= tooFar*all[len(all)-1] {
		return 0
	}
	best, split := 0.0, 0.0
	for i := 1; i < len(all); i++ {
		even := min(all[0]/all[i-1], all[i]/all[len(all)-1])
		if apart := all[i] / all[i-1]; apart > 1.5 && even > best {
			best, split = even, math.Sqrt(all[i-1]*all[i])
		}
	}
	return split
}
