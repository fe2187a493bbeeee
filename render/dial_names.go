// Naming the marks of a dial: by their pulls and names where all have room near
// their marks; on a crowded disc by letters, which the table explains, and as
// much of the names as fits.

package render

import (
	"math"
	"slices"

	"pullscore/render/draw"
)

// A dialLabel is what stands on the disc for a mark.
type dialLabel struct {
	mark   ringMark
	letter string     // on a crowded disc; else the numbers of the pulls stand there
	at     draw.Point // the inner end of the mark's line
	box    draw.Box   // of the letter, where no width means no room; else of numbers and name
	name   draw.Box   // of the name beside a letter; no width where there is no room
}

const (
	dialLead    = 12.0 // the longest line to a name on a disc that is not crowded
	letterGap   = 0.8  // from a letter to its name
	leastOfName = 14.0 // what of a name is worth to be shown beside its letter
)

// place finds places for all labels, with the disc's centre at the origin; ok
// is false where not all can be had whole and near.
func (d *dial) place() (labels []dialLabel, ok bool) {
	c := d.clearing()
	for _, m := range d.byWeight() {
		l := dialLabel{mark: m, at: d.end(m)}
		width := numbersWidth(m) + min(fontNote.Width(draw.Clean(m.name)), dialNames)
		if l.box, ok = c.anywhere(l.at, width, fontNote.Height(), d.within); !ok {
			return nil, false
		}
		if _, lead := nearest(l.at, l.box); lead > dialLead {
			return nil, false
		}
		c.taken = append(c.taken, draw.Box{X: l.box.X - 1, Y: l.box.Y, W: l.box.W + 2, H: l.box.H}) // two names are not read as one
		labels = append(labels, l)
	}
	return labels, true
}

// placeLetters does the same on a crowded disc: every letter comes first, and
// then names beside them.
func (d *dial) placeLetters() (labels []dialLabel) {
	c := d.clearing()
	for _, m := range d.byWeight() {
		i := slices.IndexFunc(d.marks, func(o ringMark) bool { return o.name == m.name && o.deg == m.deg })
		l := dialLabel{mark: m, letter: letter(i), at: d.end(m)}
		if box, ok := c.anywhere(l.at, fontNumber.Width(l.letter), fontNote.Height(), d.within); ok {
			l.box = box
		}
		labels = append(labels, l)
	}
	for i := range labels {
		if l := &labels[i]; l.box.W > 0 {
			l.name = d.beside(c, l)
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

// beside finds a place for a name right or left of its letter.
func (d *dial) beside(c *clearing, l *dialLabel) draw.Box {
	full := fontNote.Width(draw.Clean(l.mark.name))
	for w := min(full, dialNames); w >= min(full, leastOfName); w *= 0.8 {
		for _, x := range []float64{l.box.Right() + letterGap, l.box.X - letterGap - w} {
			b := draw.Box{X: x, Y: l.box.Y, W: w, H: l.box.H}
			if d.within(b) && c.free(b.Grow(0.3), c.taken) {
				c.taken = append(c.taken, b)
				return b
			}
		}
	}
	return draw.Box{}
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
func (d *dial) clearing() *clearing {
	c := &clearing{bounds: draw.Box{X: d.centre.X - d.outer, Y: d.centre.Y - d.outer, W: 2 * d.outer, H: 2 * d.outer}}
	d.keepClear(c)
	for _, m := range d.marks {
		c.block(d.line(m), 0.6)
		if m.sharp() {
			c.block(d.arc(d.hand(m.window[0]), d.hand(m.window[1]), d.size(1.4)), d.size(dialBar)+0.4)
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
func (d *dial) byWeight() []ringMark {
	landed := func(m ringMark) int {
		if m.start || len(m.pulls) > 0 {
			return 0
		}
		return 1
	}
	marks := slices.Clone(d.marks)
	slices.SortStableFunc(marks, func(a, b ringMark) int { return landed(a) - landed(b) })
	return marks
}

// line is the line of a mark, from the track inwards.
func (d *dial) line(m ringMark) []draw.Point {
	deg := d.hand(m.deg)
	return []draw.Point{d.point(deg, d.track(deg)), d.point(deg, d.track(deg)-d.size(dialTick))}
}

// end is where the line of a mark ends.
func (d *dial) end(m ringMark) draw.Point { return d.line(m)[1] }

// drawLabels draws the labels that have been placed.
func (d *dial) drawLabels(g *draw.Group) {
	for _, l := range d.labels {
		if l.box.W == 0 {
			continue
		}
		l.at.X, l.box.X, l.name.X = l.at.X+d.centre.X, l.box.X+d.centre.X, l.name.X+d.centre.X
		l.at.Y, l.box.Y, l.name.Y = l.at.Y+d.centre.Y, l.box.Y+d.centre.Y, l.name.Y+d.centre.Y
		mg := g.Group("mark")
		mg.Title = l.mark.title(d.shot)
		leadTo(mg, l.at, l.box)
		mg.Add(halo(l.box))
		base := l.box.Y + 0.8*fontNote.Size*draw.MM
		if l.letter == "" {
			writeMark(mg, l.mark, l.box.X, base, l.box.W)
			continue
		}
		mg.Add(draw.NewText(l.box.X, base, l.letter, fontNumber, draw.Black))
		if l.name.W > 0 {
			mg.Add(halo(l.name), draw.NewText(l.name.X, base, l.mark.name, fontNote, draw.Black).Shortened(l.name.W+1e-9))
		}
	}
}
