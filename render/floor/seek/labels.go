// The search for the places of names and words.
//
// A label may lie in sixteen directions from what it names, in ever wider rings. It keeps
// clear of texts, discs and lines, and its leader crosses nothing. Labels keep the order of
// what they name: of two that are beside each other, the left one belongs to what is
// farther left, and likewise of two above each other. So no reader takes one for the other,
// and leaders do not cross.
//
// Labels are laid one by one, each at its nearest free place, several times in different
// orders; what found no place goes first the next time. The attempt that leaves the fewest
// without a place wins, and of these the one whose labels are nearest.

package seek

import (
	"cmp"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A Clearing is what labels keep clear of.
type Clearing struct {
	Bounds draw.Box
	Boxes  []draw.Box // texts, and cameras
	Discs  []Circle
	Lines  []Segment      // lines that may not cross a text
	Tints  [][]draw.Point // zones, which a halo may cover
	Leads  []Segment      // leaders that no other may cross
	Apart  float64        // how much farther than from lines a text keeps from what it does not name, millimetres
}

// A Label is a text of one or more lines for a point.
type Label struct {
	At      draw.Point
	Radius  float64     // of what lies at the point
	Lines   []draw.Text // without their places
	Told    bool        // the table says it too
	Spare   int         // how many lines are enough where there is little room
	Index   int         // of what it names
	Assumed bool        // its second line says something that nobody said
}

// A Laid is a label with a place.
type Laid struct {
	Label
	Box   draw.Box // with the slack of its lines
	align draw.Align
	off   float64 // from the edge of what it names
}

const (
	clear      = 0.65 // between a text and a line
	lineLead   = 0.5  // between the lines of a Label
	leadFrom   = 1.7  // labels that are nearer need no leader
	directions = 16
)

// size returns the room of the first n lines of a label.
func (t Label) size(n int) (w, h float64) {
	for i, line := range t.Lines[:n] {
		w = max(w, line.Room().W)
		if h += line.Room().H; i > 0 {
			h += lineLead
		}
	}
	return w, h
}

// Lay finds places for the labels; those without one are left out.
func Lay(c *Clearing, labels []Label) []Laid {
	order := make([]*candidates, len(labels))
	for i, t := range labels {
		order[i] = c.candidatesFor(t)
	}
	byX := slices.Clone(order)
	slices.SortStableFunc(byX, func(a, b *candidates) int { return cmp.Compare(a.at.X, b.at.X) })
	back := slices.Clone(byX)
	slices.Reverse(back)
	var best []Laid
	least := math.Inf(1)
	for _, next := range [][]*candidates{order, byX, back} {
		for range 3 {
			done, failed, cost := attempt(next)
			if cost < least {
				best, least = done, cost
			}
			if len(failed) == 0 {
				break
			}
			next = append(slices.Clone(failed), slices.DeleteFunc(slices.Clone(next), func(t *candidates) bool { return slices.Contains(failed, t) })...)
		}
	}
	return best
}

// attempt lays the labels in that order.
func attempt(labels []*candidates) (done []Laid, failed []*candidates, cost float64) {
	for _, t := range labels {
		if l, ok := t.full.nearest(done); ok {
			done, cost = append(done, l), cost+l.off
			continue
		}
		if l, ok := t.short.nearest(done); ok {
			done, cost = append(done, l), cost+l.off+20
			continue
		}
		failed, cost = append(failed, t), cost+1000
	}
	return done, failed, cost
}

// candidates are where a label can lie, as far as its surroundings go: in full, and with
// the lines alone that are enough.
type candidates struct {
	at          draw.Point
	full, short *series
}

func (c *Clearing) candidatesFor(t Label) *candidates {
	short := t
	short.Lines = t.Lines[:t.Spare]
	return &candidates{at: t.At, full: c.seriesOf(t), short: c.seriesOf(short)}
}

// A series yields the places of a label that are clear of its surroundings, the nearest
// first. It remembers them, as every attempt asks for them again.
type series struct {
	label Label
	w, h  float64
	near  *Clearing // what lies in reach
	tried int
	found []Laid
}

func (c *Clearing) seriesOf(t Label) *series {
	w, h := t.size(len(t.Lines))
	far := t.Radius + LeaderMost + clear
	reach := draw.Box{X: t.At.X - w, Y: t.At.Y - h, W: 2 * w, H: 2 * h}.Grow(far)
	return &series{label: t, w: w, h: h, near: c.within(reach)}
}

// within returns what of the surroundings comes into a box.
func (c *Clearing) within(box draw.Box) *Clearing {
	near := &Clearing{Bounds: c.Bounds, Leads: c.Leads, Apart: c.Apart}
	for _, b := range c.Boxes {
		if b.Overlaps(box) {
			near.Boxes = append(near.Boxes, b)
		}
	}
	for _, d := range c.Discs {
		if d.Touches(box.Grow(c.Apart)) {
			near.Discs = append(near.Discs, d)
		}
	}
	for _, s := range c.Lines {
		if hits(s, box) {
			near.Lines = append(near.Lines, s)
		}
	}
	return near
}

// turns are the directions of labels in the order in which they are tried: to the right, to
// the left, then up and down.
var turns = [directions]int{0, 8, 15, 1, 14, 2, 13, 3, 12, 4, 7, 9, 6, 10, 5, 11}

const (
	ringPitch = 0.8
	rings     = int(LeaderMost / ringPitch)
)

// place returns the place with that index; ok is false if there are no more.
func (s *series) place(i int) (l Laid, ok bool) {
	for len(s.found) <= i {
		if s.tried == rings*directions {
			return Laid{}, false
		}
		off := ringPitch * float64(1+s.tried/directions)
		sin, cos := math.Sincos(float64(turns[s.tried%directions]) * 2 * math.Pi / directions)
		s.tried++
		if l := s.label.toward(cos, sin, off, s.w, s.h); s.near.free(l) {
			s.found = append(s.found, l)
		}
	}
	return s.found[i], true
}

// nearest returns the first place that is free beside the labels that are done.
func (s *series) nearest(done []Laid) (Laid, bool) {
	for i := 0; ; i++ {
		l, ok := s.place(i)
		if !ok {
			return Laid{}, false
		}
		if l.beside(done) {
			return l, true
		}
	}
}

// toward returns the label in a direction from its point, so far off.
func (t Label) toward(cos, sin, off, w, h float64) Laid {
	x, y := t.At.X+(t.Radius+off)*cos, t.At.Y+(t.Radius+off)*sin
	l := Laid{Label: t, Box: draw.Box{X: x - w/2, Y: y - h/2, W: w, H: h}, align: draw.Middle, off: off}
	switch {
	case cos > 0.3:
		l.Box.X, l.align = x, draw.Start
	case cos < -0.3:
		l.Box.X, l.align = x-w, draw.End
	}
	switch {
	case sin > 0.3:
		l.Box.Y = y
	case sin < -0.3:
		l.Box.Y = y - h
	}
	return l
}

// leader returns the leader of a label: from the edge of what it names to the text.
func (t Laid) leader() (Segment, bool) {
	near := draw.Point{X: min(max(t.At.X, t.Box.X), t.Box.Right()), Y: min(max(t.At.Y, t.Box.Y), t.Box.Bottom())}
	s := Segment{t.At, near}
	long := s.Length()
	if long-t.Radius < leadFrom {
		return Segment{}, false
	}
	return Segment{s.At(t.Radius / long), s.At(1 - 0.6/long)}, true
}

// free reports whether a label can lie where it is, as far as its surroundings go.
func (c *Clearing) free(t Laid) bool {
	if !c.Bounds.Holds(t.Box) {
		return false
	}
	wide := t.Box.Grow(clear)
	for _, b := range c.Boxes {
		if b.Overlaps(wide) {
			return false
		}
	}
	for _, s := range c.Lines {
		if hits(s, wide) {
			return false
		}
	}
	for _, d := range c.Discs {
		if d.Touches(wide) || Distance(d.At, t.At) > d.Radius+t.Radius && d.Touches(wide.Grow(c.Apart)) {
			return false
		}
	}
	leader, leads := t.leader()
	return !leads || c.reaches(leader, t)
}

// Clear reports whether a text can stand in a box as far as its surroundings go.
func (c *Clearing) Clear(box draw.Box) bool {
	wide := box.Grow(clear)
	return c.Bounds.Holds(box) && !slices.ContainsFunc(c.Boxes, wide.Overlaps) &&
		!slices.ContainsFunc(c.Lines, func(s Segment) bool { return hits(s, wide) }) &&
		!slices.ContainsFunc(c.Discs, func(d Circle) bool { return d.Touches(wide) })
}

// beside reports whether a label can lie where it is beside those that are done.
func (t Laid) beside(done []Laid) bool {
	wide := t.Box.Grow(clear)
	leader, leads := t.leader()
	for _, o := range done {
		if o.Box.Overlaps(wide) || swapped(t, o) {
			return false
		}
		other, has := o.leader()
		if has && hits(other, wide) || leads && hits(leader, o.Box.Grow(0.3)) || leads && has && leader.Crosses(other) {
			return false
		}
	}
	return true
}

func hits(s Segment, b draw.Box) bool {
	from, to := b.Share(s.A, s.B)
	return from < to
}

// Touches reports whether a box comes into the circle.
func (c Circle) Touches(b draw.Box) bool {
	x, y := min(max(c.At.X, b.X), b.Right())-c.At.X, min(max(c.At.Y, b.Y), b.Bottom())-c.At.Y
	return x*x+y*y < c.Radius*c.Radius
}

// reaches reports whether a leader crosses no text and no disc on its way.
func (c *Clearing) reaches(leader Segment, t Laid) bool {
	for _, b := range c.Boxes {
		if hits(leader, b.Grow(0.3)) {
			return false
		}
	}
	if slices.ContainsFunc(c.Leads, leader.Crosses) {
		return false
	}
	for _, d := range c.Discs {
		if Distance(d.At, t.At) > 0.01 && leader.Off(d.At) < d.Radius {
			return false
		}
	}
	return true
}

// swapped reports whether two labels lie the other way round than what they name.
func swapped(t, o Laid) bool {
	const same = 0.5
	other := func(at, atO, mid, midO float64) bool { return math.Abs(at-atO) > same && (at < atO) != (mid < midO) }
	if beside := t.Box.Y < o.Box.Bottom()+1 && o.Box.Y < t.Box.Bottom()+1; beside &&
		other(t.At.X, o.At.X, t.Box.X+t.Box.W/2, o.Box.X+o.Box.W/2) {
		return true
	}
	above := t.Box.X < o.Box.Right()+1 && o.Box.X < t.Box.Right()+1
	return above && other(t.At.Y, o.At.Y, t.Box.Y+t.Box.H/2, o.Box.Y+o.Box.H/2)
}

// Tinted reports whether a label lies on a zone.
func (c *Clearing) Tinted(t Laid) bool {
	return slices.ContainsFunc(c.Tints, func(zone []draw.Point) bool { return Area(Cropped(zone, Corners(t.Box))) > 0 })
}

// Draw draws a label with its leader, and a halo if it lies on a zone.
func (t Laid) Draw(g *draw.Group, halo bool) {
	if halo {
		g.Add(sheet.Halo(t.Box))
	}
	if s, ok := t.leader(); ok {
		g.Group(signs.Leader).Line(s.A.X, s.A.Y, s.B.X, s.B.Y, draw.Solid(draw.Black, draw.FineWidth))
	}
	x := t.Box.X
	switch t.align {
	case draw.Middle:
		x += t.Box.W / 2
	case draw.End:
		x = t.Box.Right()
	}
	y := t.Box.Y
	for i, line := range t.Lines {
		line.Align = t.align
		line.At = draw.Point{X: x, Y: y - line.Box().Y + line.At.Y}
		to := g
		if t.Assumed && i == 1 {
			to = g.Group(signs.Assumed)
		}
		to.Add(line)
		y += line.Room().H + lineLead
	}
}
