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
	order := slices.Clone(labels)
	byX := slices.Clone(labels)
	slices.SortStableFunc(byX, func(a, b label) int { return cmp.Compare(a.at.X, b.at.X) })
	back := slices.Clone(byX)
	slices.Reverse(back)
	var best []laid
	least := math.Inf(1)
	for _, next := range [][]label{order, byX, back} {
		for range 3 {
			done, failed, cost := c.attempt(next)
			if cost < least {
				best, least = done, cost
			}
			if len(failed) == 0 {
				break
			}
			next = append(failed, slices.DeleteFunc(slices.Clone(next), func(t label) bool {
				return slices.ContainsFunc(failed, func(f label) bool { return f.index == t.index })
			})...)
		}
	}
	return best
}

// attempt lays the labels in that order.
func (c *clearing) attempt(labels []label) (done []laid, failed []label, cost float64) {
	for _, t := range labels {
		if l, ok := c.nearest(t, len(t.lines), done); ok {
			done, cost = append(done, l), cost+l.off
			continue
		}
		if l, ok := c.nearest(t, t.spare, done); ok && t.spare < len(t.lines) {
			done, cost = append(done, l), cost+l.off+20
			continue
		}
		failed, cost = append(failed, t), cost+1000
	}
	return done, failed, cost
}

// nearest returns the nearest free place for the first n lines of a label.
func (c *clearing) nearest(t label, n int, done []laid) (laid, bool) {
	w, h := t.size(n)
	few := t
	few.lines = t.lines[:n]
	for off := 0.8; off <= leaderMost; off += 0.8 {
		for _, k := range [directions]int{0, 8, 15, 1, 14, 2, 13, 3, 12, 4, 7, 9, 6, 10, 5, 11} {
			sin, cos := math.Sincos(float64(k) * 2 * math.Pi / directions)
			l := few.toward(cos, sin, off, w, h)
			if c.free(l, done) {
				return l, true
			}
		}
	}
	return laid{}, false
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

// free reports whether a label can lie where it is.
func (c *clearing) free(t laid, done []laid) bool {
	if !c.bounds.Holds(t.box) {
		return false
	}
	wide := t.box.Grow(clear)
	for _, b := range c.boxes {
		if b.Overlaps(wide) {
			return false
		}
	}
	for _, d := range c.discs {
		if d.touches(wide) {
			return false
		}
	}
	for _, s := range c.lines {
		if _, _, ok := s.inBox(wide); ok {
			return false
		}
	}
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
	return !leads || c.reaches(leader, t)
}

func hits(s segment, b draw.Box) bool { _, _, ok := s.inBox(b); return ok }

// touches reports whether a box comes into the circle.
func (c circle) touches(b draw.Box) bool {
	return math.Hypot(min(max(c.at.X, b.X), b.Right())-c.at.X, min(max(c.at.Y, b.Y), b.Bottom())-c.at.Y) < c.radius
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
