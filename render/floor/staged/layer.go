// The layers of a sheet, from the grid to the names.

package staged

import (
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

var (
	fontName  = draw.Font{Size: 8.5, Bold: true}
	fontValue = draw.Font{Size: 7}
)

// A layer is what is drawn of a floor on one sheet.
type layer struct {
	ground
	floor   *Floor
	cameras []camera
	places  []int // their indexes
	pins    []seek.Pin
	crowded []int         // places without room for a disc
	keepOut []seek.Circle // where no line goes
}

// layer lays places and cameras into a box.
func (f *Floor) layer(box draw.Box, setups []Setup, places []int) *layer {
	near, far := f.parted(setups)
	l := &layer{ground: newGround(box, f.taken(near)), floor: f, places: places}
	l.cameras = l.layCameras(setups, far)
	var taken []seek.Circle
	for _, c := range l.cameras {
		taken = append(taken, c.room()...)
	}
	var pins []seek.Pin
	for _, i := range places {
		if at := l.at(f.Places[i].At); l.holds(at, 0) {
			pin := seek.Pin{Place: i, At: at, Disc: at}
			pin.Ring = l.radius(pin) - signs.PlaceRadius
			pins = append(pins, pin)
		}
	}
	l.pins, l.crowded = seek.Pins(pins, l.box, seek.Obstacle{Parts: taken, Solid: true})
	for _, p := range l.pins {
		l.keepOut = append(l.keepOut, seek.Round(p.Disc, l.radius(p)+0.7))
		if p.Aside() {
			l.keepOut = append(l.keepOut, seek.Round(p.At, seek.DotRadius+0.3))
		}
	}
	l.keepOut = append(l.keepOut, taken...)
	for i := range l.cameras {
		l.tellFar(&l.cameras[i])
	}
	return l
}

// radius returns that of what is drawn for a pin: the disc, or the ring of a person.
func (l *layer) radius(p seek.Pin) float64 {
	if place := l.floor.Places[p.Place]; place.Person && !place.Later {
		return signs.PersonRadius
	}
	return signs.PlaceRadius
}

// draw draws the floor of a sheet. It returns what found no place: names of set-ups, and
// whether the name of a place did not.
func (l *layer) draw(g *draw.Group) (unplaced []string, letters bool) {
	c := &seek.Clearing{Bounds: l.box}
	l.drawGrid(g.Group("grid"), c)
	views, sides := g.Group("views"), l.sides() // which lie under all, and have gaps where names have no other room
	l.drawLines(g.Group("lines"), c)
	l.drawMarks(g.Group("marks"), c)
	words := l.drawWays(g.Group("ways"), c)
	words = append(words, l.drawCameras(g.Group("cameras"), c)...)
	l.drawPins(g.Group("places"), c)
	under := len(c.Lines)
	for _, s := range sides {
		c.Lines, c.Tints = append(c.Lines, s.parts...), append(c.Tints, s.strip)
	}
	l.drawEnds(g.Group("ends"), c)
	unplaced, letters, names := l.drawLabels(g.Group("names"), c, append(words, l.lineWords()...), under)
	l.drawSights(views, sides, names)
	return unplaced, letters
}

// gridLeast is how far apart the lines of the grid are at least, in millimetres.
const gridLeast = 10.0

// gridStep returns how many metres are between two lines of the grid.
func (l *layer) gridStep() float64 {
	for step := 1.0; ; step *= 10 {
		for _, by := range []float64{1, 2, 5} {
			if step*by*l.perMetre >= gridLeast {
				return step * by
			}
		}
	}
}

// drawGrid draws the frame of the floor, with lines each metre from the zero point.
func (l *layer) drawGrid(g *draw.Group, c *seek.Clearing) {
	step := l.gridStep() * l.perMetre
	guide := draw.Solid(draw.Guide, draw.GuideWidth)
	first := func(zero, from float64) float64 { return zero - float64(int((zero-from)/step))*step }
	for x := first(l.zero.X, l.box.X); x < l.box.Right(); x += step {
		if x > l.box.X {
			g.Line(x, l.box.Y, x, l.box.Bottom(), guide)
		}
	}
	for y := first(l.zero.Y, l.box.Y); y < l.box.Bottom(); y += step {
		if y > l.box.Y {
			g.Line(l.box.X, y, l.box.Right(), y, guide)
		}
	}
	g.Add(draw.Rect{Box: l.box, Stroke: draw.Solid(draw.Guide, draw.RulerWidth)})
}

// drawEnds writes which end of the floor is which, as far left as nothing is in the way.
func (l *layer) drawEnds(g *draw.Group, c *seek.Clearing) {
	const step = 4.0
	for _, t := range []draw.Text{
		draw.NewText(l.box.X+1.5, l.box.Y+3.6, "upstage", fontValue, draw.Grey),
		draw.NewText(l.box.X+1.5, l.box.Bottom()-1.6, "downstage (front)", fontValue, draw.Grey),
	} {
		for ; l.box.Holds(t.Room()); t.At.X += step {
			if c.Clear(t.Room()) {
				g.Add(sheet.Halo(t.Room()), t)
				c.Boxes = append(c.Boxes, t.Room())
				break
			}
		}
	}
}

// drawLabels names the places and marks, then writes what else has words. Of the lines to
// keep clear of, those after the first under are sides of fields of view. It also returns
// where the names lie.
func (l *layer) drawLabels(g *draw.Group, c *seek.Clearing, words []seek.Label, under int) (unplaced []string, letters bool, boxes []draw.Box) {
	names := l.names()
	places := len(l.pins)
	all := append(names, words...)
	for i := range all {
		all[i].Index = i
	}
	found := map[int]bool{}
	for _, t := range lay(c, all, under) {
		found[t.Index] = true
		boxes = append(boxes, t.Box)
		sub := g.Group("name")
		if t.Index < places {
			sub.Title = draw.Clean(l.floor.Places[l.pins[t.Index].Place].Name)
		}
		t.Draw(sub, c.Tinted(t))
	}
	for _, w := range all[places:] {
		if !found[w.Index] && !w.Told {
			unplaced = append(unplaced, w.Lines[0].String)
		}
	}
	return unplaced, slices.ContainsFunc(all[:places], func(n seek.Label) bool { return !found[n.Index] }), boxes
}

// lay finds places for labels: if it can, none of them nearer to something else than to what
// it names, and else none over the sides of fields of view, which are the lines after the
// first under.
func lay(c *seek.Clearing, labels []seek.Label, under int) []seek.Laid {
	const apart = 1.6
	wide, free := *c, *c
	wide.Apart = apart
	free.Lines = c.Lines[:under]
	var best []seek.Laid
	for _, try := range []*seek.Clearing{&wide, c, &free} {
		if laid := seek.Lay(try, labels); len(laid) > len(best) {
			best = laid
		}
		if len(best) == len(labels) {
			break
		}
	}
	return best
}

const widestName = 46.0

// names returns the labels of the places, and after them those of the marks on which nobody
// stands.
func (l *layer) names() (labels []seek.Label) {
	taken := map[string]bool{}
	for _, p := range l.pins {
		place := l.floor.Places[p.Place]
		taken[place.Mark] = true
		t := seek.Label{At: p.Disc, Radius: l.radius(p), Spare: 1}
		t.Lines = append(t.Lines, draw.NewText(0, 0, place.Name, fontName, draw.Black).Shortened(widestName))
		if notes := place.notes(l.floor.Style); notes != "" {
			t.Lines = append(t.Lines, draw.NewText(0, 0, notes, fontValue, draw.Grey).Shortened(widestName))
		}
		labels = append(labels, t)
	}
	for _, m := range l.floor.Marks {
		at := l.at(m.At)
		if taken[m.Name] || !l.holds(at, 0) {
			continue
		}
		for _, run := range signs.MarkLines(at.X, at.Y) { // where a disc lies on it, from an end of its bar
			if p, ok := l.open(at, run[0], run[1]); ok {
				at = p
				break
			}
		}
		if at, ok := l.open(at); ok {
			labels = append(labels, seek.Label{At: at, Radius: 1.5, Spare: 1, Told: true,
				Lines: []draw.Text{draw.NewText(0, 0, m.Name, sheet.FontStrong, draw.Black).Shortened(widestName)}})
		}
	}
	return labels
}

// wordAt returns a label of one line.
func wordAt(text string, at draw.Point, radius float64) seek.Label {
	return seek.Label{At: at, Radius: radius, Spare: 1, Told: true, Lines: []draw.Text{draw.NewText(0, 0, text, fontValue, draw.Black).Shortened(widestName)}}
}
