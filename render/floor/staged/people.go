// Marks, places, ways and lines of action.

package staged

import (
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/seek"
	"pullscore/render/signs"
)

// block keeps names off lines.
func block(c *seek.Clearing, runs [][]draw.Point) {
	for _, run := range runs {
		c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
	}
}

// drawMarks draws the marks on the floor, and the zero point.
func (l *layer) drawMarks(g *draw.Group, c *seek.Clearing) {
	for _, m := range l.floor.Marks {
		if p := l.at(m.At); l.holds(p, 0) {
			sub := g.Group("mark")
			sub.Title = draw.Clean("mark " + m.Name)
			signs.DrawFloorMark(sub, p.X, p.Y)
			block(c, signs.MarkLines(p.X, p.Y))
		}
	}
	if l.holds(l.zero, zeroUp) {
		signs.DrawZero(g, l.zero.X, l.zero.Y, zeroUp)
		block(c, signs.ZeroLines(l.zero.X, l.zero.Y, zeroUp))
	}
}

const zeroUp = 4.2 // of the cross of the zero point, millimetres

const beyond = 6.0 // how far a line of action goes on behind both people, millimetres

// lineOn returns a line of action on the page.
func (l *layer) lineOn(line Line) (seek.Segment, bool) {
	s := seek.Between(l.at(line.From), l.at(line.To))
	if extra := len(l.cameras) == 0 && len(l.floor.Setups) > 0; extra || s.Length() < 0.1 { // the other sheets have it
		return s, false
	}
	more := beyond / s.Length()
	return seek.Between(s.At(-more), s.At(1+more)).Clipped(l.box)
}

// drawLines draws the lines of action.
func (l *layer) drawLines(g *draw.Group, c *seek.Clearing) {
	for _, line := range l.floor.Lines {
		s, ok := l.lineOn(line)
		if !ok {
			continue
		}
		sub := g.Group(signs.LineOf)
		sub.Title = draw.Clean(line.Names)
		for _, part := range s.Outside(l.keepOut) {
			sub.Line(part.A.X, part.A.Y, part.B.X, part.B.Y, draw.Solid(draw.Grey, draw.RulerWidth))
			c.Lines = append(c.Lines, part)
		}
	}
}

// lineWords returns the words of the lines of action, at the ends that are upstage.
func (l *layer) lineWords() (words []seek.Label) {
	for _, line := range l.floor.Lines {
		if s, ok := l.lineOn(line); ok {
			end := s.A
			if s.B.Y < s.A.Y {
				end = s.B
			}
			if end, ok = l.open(end); ok {
				w := wordAt("line", end, 0.3)
				w.Lines[0].Ink = draw.Grey
				words = append(words, w)
			}
		}
	}
	return words
}

// drawWays draws the ways of people, and returns the words that start them.
func (l *layer) drawWays(g *draw.Group, c *seek.Clearing) (words []seek.Label) {
	told := map[string]bool{}
	for _, w := range l.floor.Ways {
		s, ok := seek.Between(l.at(w.From), l.at(w.To)).Clipped(l.box)
		if !ok || s.Length() < 0.5 || !l.shows(w) {
			continue
		}
		sub := g.Group("goes")
		sub.Title = draw.Clean(w.Who + " goes, " + w.Word)
		signs.DrawWay(sub, []draw.Point{s.A, s.B}, 0.6)
		c.Lines = append(c.Lines, s)
		at, ok := l.open(s.At(0.45), s.At(0.35), s.At(0.6), s.At(0.25), s.At(0.75))
		if ok && !told[w.Who+w.Word] {
			words = append(words, wordAt(w.Word, at, 0.6))
			told[w.Who+w.Word] = true
		}
	}
	return words
}

// open returns the first of some points that no disc and no camera covers.
func (l *layer) open(points ...draw.Point) (draw.Point, bool) {
	for _, p := range points {
		if !slices.ContainsFunc(l.keepOut, func(c seek.Circle) bool { return seek.Distance(c.At, p) < c.Radius }) {
			return p, true
		}
	}
	return draw.Point{}, false
}

// shows reports whether an end of a way is a place of the sheet.
func (l *layer) shows(w Way) bool {
	for _, p := range l.pins {
		place := l.floor.Places[p.Place]
		if place.Name == w.Who && (apart(place.At, w.From) < sameSpot || apart(place.At, w.To) < sameSpot) {
			return true
		}
	}
	return false
}

// drawPins draws the discs of the places, with the rings of people.
func (l *layer) drawPins(g *draw.Group, c *seek.Clearing) {
	for _, p := range l.pins {
		place := l.floor.Places[p.Place]
		sub := g.Group("spot")
		sub.Title = draw.Clean(place.Letter + ": " + place.Name)
		radius := l.radius(p)
		c.Discs = append(c.Discs, seek.Round(p.Disc, radius))
		if p.Aside() {
			sub.Add(draw.Disc{Centre: p.At, Radius: seek.DotRadius, Fill: draw.Black})
			s := seek.Between(p.At, p.Disc)
			end := s.At(1 - radius/s.Length())
			sub.Group(signs.Leader).Line(p.At.X, p.At.Y, end.X, end.Y, draw.Solid(draw.Black, draw.FineWidth))
			c.Lines, c.Leads = append(c.Lines, s), append(c.Leads, s)
			c.Discs = append(c.Discs, seek.Round(p.At, seek.DotRadius))
		}
		if radius > signs.PlaceRadius {
			sub.Add(draw.Disc{Centre: p.Disc, Radius: radius, Fill: draw.Paper})
			signs.DrawPerson(sub, p.Disc.X, p.Disc.Y)
		}
		signs.DrawPlace(sub, p.Disc.X, p.Disc.Y, place.Letter, place.Later)
	}
}
