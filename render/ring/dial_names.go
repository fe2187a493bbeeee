// Naming the marks of a dial: by their pulls, names and distances where all have
// room near their marks, else without the distances; on a crowded disc by
// letters, which the table explains, and as much of the names as fits.

package ring

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/marks"
	"pullscore/render/sheet"
)

// A dialLabel is what stands on the disc for a mark.
type dialLabel struct {
	mark   marks.Mark
	letter string     // on a crowded disc; else the numbers of the pulls stand there
	text   string     // with or without the distance
	at     draw.Point // the inner end of the mark's line
	box    draw.Box   // of the letter, where no width means no room; else of numbers and name
	name   draw.Box   // of the name beside a letter; no width where there is no room
}

// ground is what the label covers: its letter and the name beside it as one.
func (l *dialLabel) ground() draw.Box {
	if l.name.W == 0 {
		return l.box
	}
	left := min(l.box.X, l.name.X)
	return draw.Box{X: left, Y: l.box.Y, W: max(l.box.Right(), l.name.Right()) - left, H: l.box.H}
}

const (
	dialLead    = 12.0 // the longest line to a name on a disc that is not crowded
	letterGap   = 0.8  // from a letter to its name
	leastOfName = 14.0 // what of a name is worth to be shown beside its letter
)

// A wording is what of a mark is written beside it.
type wording func(marks.Mark) string

func withDistance(m marks.Mark) string { return m.Label }

func withoutDistance(m marks.Mark) string { return m.Name }

// place finds places for all labels, with the disc's centre at the origin; ok
// is false where not all can be had whole and near.
func (d *dial) place(words wording) (labels []dialLabel, ok bool) {
	c := d.clearing()
	for _, m := range d.byWeight() {
		l := dialLabel{mark: m, at: d.end(m), text: words(m)}
		width := numbersWidth(m) + min(sheet.FontNote.Room(draw.Clean(l.text)), dialNames)
		if l.box, ok = c.Anywhere(l.at, width, sheet.FontNote.Height(), d.within); !ok {
			return nil, false
		}
		if !d.clear(l) {
			return nil, false
		}
		c.Taken = append(c.Taken, draw.Box{X: l.box.X - 1, Y: l.box.Y, W: l.box.W + 2, H: l.box.H}) // two names are not read as one
		labels = append(labels, l)
	}
	return labels, true
}

// clear reports whether a label stands near its mark, and nearer than any
// other.
func (d *dial) clear(l dialLabel) bool {
	_, lead := sheet.Nearest(l.at, l.box)
	return lead <= dialLead && !slices.ContainsFunc(d.marks, func(m marks.Mark) bool {
		end := d.end(m)
		_, off := sheet.Nearest(end, l.box)
		return end != l.at && off < lead
	})
}

// placeLetters does the same on a crowded disc: every letter comes first, and
// then names beside them.
func (d *dial) placeLetters() (labels []dialLabel) {
	c := d.clearing()
	for _, m := range d.byWeight() {
		i := slices.IndexFunc(d.marks, func(o marks.Mark) bool { return o.Name == m.Name && o.Deg == m.Deg })
		l := dialLabel{mark: m, letter: letter(i), at: d.end(m)}
		if box, ok := c.Anywhere(l.at, sheet.FontNumber.Room(l.letter), sheet.FontNote.Height(), d.within); ok {
			l.box = box
		}
		labels = append(labels, l)
	}
	for i := range labels {
		if l := &labels[i]; l.box.W > 0 {
			d.putBeside(c, l)
		}
	}
	return labels
}

// unnamed counts the marks that have neither a name nor a letter.
func (d *dial) unnamed() (n int) {
	for _, l := range d.labels {
		if l.box.W == 0 {
			n++
		}
	}
	return n
}

// putBeside finds a place beside a letter for name and distance, else for as
// much of the name as there is room for.
func (d *dial) putBeside(c *sheet.Clearing, l *dialLabel) {
	for _, words := range []wording{withDistance, withoutDistance} {
		l.text = words(l.mark)
		if full := sheet.FontNote.Room(draw.Clean(l.text)); full <= dialNames && d.beside(c, l, full) {
			return
		}
	}
	full := sheet.FontNote.Room(draw.Clean(l.text))
	for w := min(full, dialNames); w >= min(full, leastOfName); w *= 0.8 {
		if d.beside(c, l, w) {
			return
		}
	}
}

// beside takes a place of that width right or left of a letter, where one is
// free.
func (d *dial) beside(c *sheet.Clearing, l *dialLabel, w float64) bool {
	for _, x := range []float64{l.box.Right() + letterGap, l.box.X - letterGap - w} {
		b := draw.Box{X: x, Y: l.box.Y, W: w, H: l.box.H}
		if d.within(b) && c.Free(b.Grow(0.3), c.Taken) {
			c.Taken = append(c.Taken, b)
			l.name = b
			return true
		}
	}
	return false
}

// letter names the mark with an index: a to z, then aa and so on.
func letter(i int) string {
	name := string(rune('a' + i%26))
	if i >= 26 {
		return letter(i/26-1) + name
	}
	return name
}

// clearing is the disc with all that names keep off.
func (d *dial) clearing() *sheet.Clearing {
	c := &sheet.Clearing{Bounds: draw.Box{X: d.centre.X - d.outer, Y: d.centre.Y - d.outer, W: 2 * d.outer, H: 2 * d.outer}}
	d.keepClear(c)
	for _, m := range d.marks {
		if d.two(m) {
			d.keepSidesClear(c, m)
		} else {
			c.Block(d.line(m.Deg, dialTick), 0.6)
		}
		if m.Sharp() {
			c.Block(d.arc(d.hand(m.Window[0]), d.hand(m.Window[1]), d.size(1.4)), d.size(dialBar)+0.4)
		}
	}
	return c
}

// within reports whether a box lies on the disc.
func (d *dial) within(b draw.Box) bool {
	far := math.Hypot(max(d.centre.X-b.X, b.Right()-d.centre.X), max(d.centre.Y-b.Y, b.Bottom()-d.centre.Y))
	return far <= d.outer-0.5
}

// byWeight returns the marks, those that something lands on first.
func (d *dial) byWeight() []marks.Mark {
	weight := func(m marks.Mark) int {
		if m.Aside() {
			return 1
		}
		return 0
	}
	list := slices.Clone(d.marks)
	slices.SortStableFunc(list, func(a, b marks.Mark) int { return weight(a) - weight(b) })
	return list
}

// line is the line of a mark at an angle of the ring, from the track inwards.
func (d *dial) line(ring, long float64) []draw.Point {
	deg := d.hand(ring)
	return []draw.Point{d.point(deg, d.track(deg)), d.point(deg, d.track(deg)-d.size(long))}
}

// end is where the line of a mark ends, or between its two.
func (d *dial) end(m marks.Mark) draw.Point {
	if d.two(m) {
		return d.line(m.Deg, sideTick)[1]
	}
	return d.line(m.Deg, dialTick)[1]
}

// drawLabels draws the labels that have been placed.
func (d *dial) drawLabels(g *draw.Group) {
	for _, l := range d.labels {
		if l.box.W == 0 {
			continue
		}
		l.at.X, l.box.X, l.name.X = l.at.X+d.centre.X, l.box.X+d.centre.X, l.name.X+d.centre.X
		l.at.Y, l.box.Y, l.name.Y = l.at.Y+d.centre.Y, l.box.Y+d.centre.Y, l.name.Y+d.centre.Y
		mg := g.Group("mark")
		mg.Title = l.mark.Title(d.shot)
		sheet.LeadTo(mg, l.at, l.box)
		mg.Add(sheet.Halo(l.ground()))
		base := l.box.Y + 0.8*sheet.FontNote.Size*draw.MM
		if l.letter == "" {
			marks.Write(mg, l.mark, l.text, l.box.X, base, l.box.W)
			continue
		}
		mg.Add(draw.NewText(l.box.X, base, l.letter, sheet.FontNumber, l.mark.Ink()))
		if l.name.W > 0 {
			mg.Add(draw.NewText(l.name.X, base, l.text, sheet.FontNote, l.mark.Ink()).Shortened(l.name.W + 1e-9))
		}
	}
}
