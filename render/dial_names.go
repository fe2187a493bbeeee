// Naming the marks of a dial: by their pulls, names and distances where all have
// room near their marks, else without the distances; on a crowded disc by
// letters, which the table explains, and as much of the names as fits.

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
type wording func(ringMark) string

func withDistance(m ringMark) string    { return m.label }
func withoutDistance(m ringMark) string { return m.name }

// place finds places for all labels, with the disc's centre at the origin; ok
// is false where not all can be had whole and near.
func (d *dial) place(words wording) (labels []dialLabel, ok bool) {
	c := d.clearing()
	for _, m := range d.byWeight() {
		l := dialLabel{mark: m, at: d.end(m), text: words(m)}
		width := numbersWidth(m) + min(fontNote.Width(draw.Clean(l.text)), dialNames)
		if l.box, ok = c.anywhere(l.at, width, fontNote.Height(), d.within); !ok {
			return nil, false
		}
		if !d.clear(l) {
			return nil, false
		}
		c.taken = append(c.taken, draw.Box{X: l.box.X - 1, Y: l.box.Y, W: l.box.W + 2, H: l.box.H}) // two names are not read as one
		labels = append(labels, l)
	}
	return labels, true
}

// clear reports whether a label stands near its mark, and nearer than any
// other.
func (d *dial) clear(l dialLabel) bool {
	_, lead := nearest(l.at, l.box)
	return lead <= dialLead && !slices.ContainsFunc(d.marks, func(m ringMark) bool {
		end := d.end(m)
		_, off := nearest(end, l.box)
		return end != l.at && off < lead
	})
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
func (d *dial) putBeside(c *clearing, l *dialLabel) {
	for _, words := range []wording{withDistance, withoutDistance} {
		l.text = words(l.mark)
		if full := fontNote.Width(draw.Clean(l.text)); full <= dialNames && d.beside(c, l, full) {
			return
		}
	}
	full := fontNote.Width(draw.Clean(l.text))
	for w := min(full, dialNames); w >= min(full, leastOfName); w *= 0.8 {
		if d.beside(c, l, w) {
			return
		}
	}
}

// beside takes a place of that width right or left of a letter, where one is
// free.
func (d *dial) beside(c *clearing, l *dialLabel, w float64) bool {
	for _, x := range []float64{l.box.Right() + letterGap, l.box.X - letterGap - w} {
		b := draw.Box{X: x, Y: l.box.Y, W: w, H: l.box.H}
		if d.within(b) && c.free(b.Grow(0.3), c.taken) {
			c.taken = append(c.taken, b)
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
	weight := func(m ringMark) int {
		if m.aside() {
			return 1
		}
		return 0
	}
	marks := slices.Clone(d.marks)
	slices.SortStableFunc(marks, func(a, b ringMark) int { return weight(a) - weight(b) })
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
		mg.Add(halo(l.ground()))
		base := l.box.Y + 0.8*fontNote.Size*draw.MM
		if l.letter == "" {
			writeMark(mg, l.mark, l.text, l.box.X, base, l.box.W)
			continue
		}
		mg.Add(draw.NewText(l.box.X, base, l.letter, fontNumber, l.mark.ink()))
		if l.name.W > 0 {
			mg.Add(draw.NewText(l.name.X, base, l.text, fontNote, l.mark.ink()).Shortened(l.name.W + 1e-9))
		}
	}
}
