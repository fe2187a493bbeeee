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

package floor

import (
	"cmp"
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A clearing is what labels keep clear of.
type clearing struct {
	bounds draw.Box
	boxes  []draw.Box // texts, and cameras
	discs  []circle
	lines  []segment      // lines that may not cross a text
	tints  [][]draw.Point // zones, which a halo may cover
	leads  []segment      // leaders that no other may cross
}

// A label is a text of one or more lines for a point.
type label struct {
	at      draw.Point
	radius  float64     // of what lies at the point
	lines   []draw.Text // without their places
	told    bool        // the table says it too
	spare   int         // how many lines are enough where there is little room
	index   int         // of what it names
	assumed bool        // its second line says something that nobody said
}

// A laid is a label with a place.
type laid struct {
	label
	box   draw.Box // with the slack of its lines
	align draw.Align
	off   float64 // from the edge of what it names
}

const (
	clear      = 0.65 // between a text and a line
	lineLead   = 0.5  // between the lines of a label
	leadFrom   = 1.7  // labels that are nearer need no leader
	directions = 16
)

// size returns the room of the first n lines of a label.
func (t label) size(n int) (w, h float64) {
	for i, line := range t.lines[:n] {
		w = max(w, line.Room().W)
		if h += line.Room().H; i > 0 {
			h += lineLead
		}
	}
	return w, h
}

// layLabels finds places for the labels; those without one are left out.
func layLabels(c *clearing, labels []label) []laid {
	order := make([]*candidates, len(labels))
	for i, t := range labels {
		order[i] = c.candidatesFor(t)
	}
	byX := slices.Clone(order)
	slices.SortStableFunc(byX, func(a, b *candidates) int { return cmp.Compare(a.at.X, b.at.X) })
	back := slices.Clone(byX)
	slices.Reverse(back)
	var best []laid
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
func attempt(labels []*candidates) (done []laid, failed []*candidates, cost float64) {
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

func (c *clearing) candidatesFor(t label) *candidates {
	short := t
	short.lines = t.lines[:t.spare]
	return &candidates{at: t.at, full: c.seriesOf(t), short: c.seriesOf(short)}
}

// A series yields the places of a label that are clear of its surroundings, the nearest
// first. It remembers them, as every attempt asks for them again.
type series struct {
	label label
	w, h  float64
	near  *clearing // what lies in reach
	tried int
	found []laid
}

func (c *clearing) seriesOf(t label) *series {
	w, h := t.size(len(t.lines))
	far := t.radius + leaderMost + clear
	reach := draw.Box{X: t.at.X - w, Y: t.at.Y - h, W: 2 * w, H: 2 * h}.Grow(far)
	return &series{label: t, w: w, h: h, near: c.within(reach)}
}

// within returns what of the surroundings comes into a box.
func (c *clearing) within(box draw.Box) *clearing {
	near := &clearing{bounds: c.bounds, leads: c.leads}
	for _, b := range c.boxes {
		if b.Overlaps(box) {
			near.boxes = append(near.boxes, b)
		}
	}
	for _, d := range c.discs {
		if d.touches(box) {
			near.discs = append(near.discs, d)
		}
	}
	for _, s := range c.lines {
		if hits(s, box) {
			near.lines = append(near.lines, s)
		}
	}
	return near
}

// turns are the directions of labels in the order in which they are tried: to the right, to
// the left, then up and down.
var turns = [directions]int{0, 8, 15, 1, 14, 2, 13, 3, 12, 4, 7, 9, 6, 10, 5, 11}

const (
	ringPitch = 0.8
	rings     = int(leaderMost / ringPitch)
)

// place returns the place with that index; ok is false if there are no more.
func (s *series) place(i int) (l laid, ok bool) {
	for len(s.found) <= i {
		if s.tried == rings*directions {
			return laid{}, false
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
func (s *series) nearest(done []laid) (laid, bool) {
	for i := 0; ; i++ {
		l, ok := s.place(i)
		if !ok {
			return laid{}, false
		}
		if l.beside(done) {
			return l, true
		}
	}
}

// toward returns the label in a direction from its point, so far off.
func (t label) toward(cos, sin, off, w, h float64) laid {
	x, y := t.at.X+(t.radius+off)*cos, t.at.Y+(t.radius+off)*sin
	l := laid{label: t, box: draw.Box{X: x - w/2, Y: y - h/2, W: w, H: h}, align: draw.Middle, off: off}
	switch {
	case cos > 0.3:
		l.box.X, l.align = x, draw.Start
	case cos < -0.3:
		l.box.X, l.align = x-w, draw.End
	}
	switch {
	case sin > 0.3:
		l.box.Y = y
	case sin < -0.3:
		l.box.Y = y - h
	}
	return l
}

// leader returns the leader of a label: from the edge of what it names to the text.
func (t laid) leader() (segment, bool) {
	near := draw.Point{X: min(max(t.at.X, t.box.X), t.box.Right()), Y: min(max(t.at.Y, t.box.Y), t.box.Bottom())}
	s := segment{t.at, near}
	long := s.length()
	if long-t.radius < leadFrom {
		return segment{}, false
	}
	return segment{s.at(t.radius / long), s.at(1 - 0.6/long)}, true
}

// free reports whether a label can lie where it is, as far as its surroundings go.
func (c *clearing) free(t laid) bool {
	if !c.bounds.Holds(t.box) {
		return false
	}
	wide := t.box.Grow(clear)
	for _, b := range c.boxes {
		if b.Overlaps(wide) {
			return false
		}
	}
	for _, s := range c.lines {
		if hits(s, wide) {
			return false
		}
	}
	for _, d := range c.discs {
		if d.touches(wide) {
			return false
		}
	}
	leader, leads := t.leader()
	return !leads || c.reaches(leader, t)
}

// beside reports whether a label can lie where it is beside those that are done.
func (t laid) beside(done []laid) bool {
	wide := t.box.Grow(clear)
	leader, leads := t.leader()
	for _, o := range done {
		if o.box.Overlaps(wide) || swapped(t, o) {
			return false
		}
		other, has := o.leader()
		if has && hits(other, wide) || leads && hits(leader, o.box.Grow(0.3)) || leads && has && leader.crosses(other) {
			return false
		}
	}
	return true
}

func hits(s segment, b draw.Box) bool {
	from, to := b.Share(s.a, s.b)
	return from < to
}

// touches reports whether a box comes into the circle.
func (c circle) touches(b draw.Box) bool {
	x, y := min(max(c.at.X, b.X), b.Right())-c.at.X, min(max(c.at.Y, b.Y), b.Bottom())-c.at.Y
	return x*x+y*y < c.radius*c.radius
}

// reaches reports whether a leader crosses no text and no disc on its way.
func (c *clearing) reaches(leader segment, t laid) bool {
	for _, b := range c.boxes {
		if hits(leader, b.Grow(0.3)) {
			return false
		}
	}
	if slices.ContainsFunc(c.leads, leader.crosses) {
		return false
	}
	for _, d := range c.discs {
		if distance(d.at, t.at) > 0.01 && leader.off(d.at) < d.radius {
			return false
		}
	}
	return true
}

// swapped reports whether two labels lie the other way round than what they name.
func swapped(t, o laid) bool {
	const same = 0.5
	other := func(at, atO, mid, midO float64) bool { return math.Abs(at-atO) > same && (at < atO) != (mid < midO) }
	if beside := t.box.Y < o.box.Bottom()+1 && o.box.Y < t.box.Bottom()+1; beside &&
		other(t.at.X, o.at.X, t.box.X+t.box.W/2, o.box.X+o.box.W/2) {
		return true
	}
	above := t.box.X < o.box.Right()+1 && o.box.X < t.box.Right()+1
	return above && other(t.at.Y, o.at.Y, t.box.Y+t.box.H/2, o.box.Y+o.box.H/2)
}

// tinted reports whether a label lies on a zone.
func (c *clearing) tinted(t laid) bool {
	return slices.ContainsFunc(c.tints, func(zone []draw.Point) bool { return area(cropped(zone, corners(t.box))) > 0 })
}

// draw draws a label with its leader, and a halo if it lies on a zone.
func (t laid) draw(g *draw.Group, halo bool) {
	if halo {
		g.Add(sheet.Halo(t.box))
	}
	if s, ok := t.leader(); ok {
		g.Group(signs.Leader).Line(s.a.X, s.a.Y, s.b.X, s.b.Y, draw.Solid(draw.Black, draw.FineWidth))
	}
	x := t.box.X
	switch t.align {
	case draw.Middle:
		x += t.box.W / 2
	case draw.End:
		x = t.box.Right()
	}
	y := t.box.Y
	for i, line := range t.lines {
		line.Align = t.align
		line.At = draw.Point{X: x, Y: y - line.Box().Y + line.At.Y}
		to := g
		if t.assumed && i == 1 {
			to = g.Group(signs.Assumed)
		}
		to.Add(line)
		y += line.Room().H + lineLead
	}
}
