// Lettered places, and the ways of people.

package floor

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/floor/seek"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// layPins places the discs of the places on a sheet. taken are parts of the page that no
// disc may cover. It returns which places have no room for a disc.
func layPins(f *Floor, g ground, places []int, taken []seek.Circle) (pins []seek.Pin, failed []int) {
	for _, i := range places {
		if at := g.at(f.Places[i].At); g.holds(at, 0) {
			pins = append(pins, seek.Pin{Place: i, At: at, Disc: at})
		}
	}
	return seek.Pins(pins, g.box, seek.Obstacle{Parts: taken})
}

// discRoom returns the seek.Circle round a disc in which no line goes: its letter keeps clear of
// all of them.
func discRoom(letter string, at draw.Point) seek.Circle {
	if len(letter) > 1 {
		return seek.Round(at, 3.3)
	}
	return seek.Round(at, 2.8)
}

// drawWays draws the ways of those whose places are on the sheet.
func (l *layer) drawWays(g *draw.Group, c *seek.Clearing) {
	for _, w := range l.floor.Ways {
		run := l.run(w.Run)
		if run == nil || !l.ends(w) || seek.LengthOf(run) < 0.5 {
			continue
		}
		sub := g.Group("goes")
		sub.Title = draw.Clean(w.Who + " goes")
		signs.DrawWay(sub, run, 0.6)
		c.Lines = append(c.Lines, seek.SegmentsOf(run)...)
	}
}

// ends reports whether an end of a way is a place of the sheet.
func (l *layer) ends(w layout.Way) bool {
	return slices.ContainsFunc(l.pins, func(p seek.Pin) bool {
		at := l.floor.Places[p.Place].At
		return layout.Apart(at, w.Run[0]) < layout.SameSpot || layout.Apart(at, w.Run[len(w.Run)-1]) < layout.SameSpot
	})
}

// drawDepths draws how deep everybody is, and from the axis of the first camera to each
// place the way to its side.
func (l *layer) drawDepths(g *draw.Group, c *seek.Clearing) {
	rigged := len(l.floor.Cameras[0].Path)+len(l.floor.Cameras[0].Turns) > 0
	for _, p := range l.pins {
		place := l.floor.Places[p.Place]
		if half := place.Deep / 2 * l.perMetre; half > 0.3 && sheet.Finite(half) {
			l.drawDepth(g, p, half)
		}
		foot := draw.Point{X: p.At.X, Y: l.origin.Y}
		if math.Abs(p.At.Y-foot.Y) < signs.PlaceRadius+0.5 || place.Later && rigged || !l.holds(foot, 0) {
			continue
		}
		sub := g.Group("aside")
		for _, part := range seek.Between(p.At, foot).Outside(l.keepOut) {
			sub.Line(part.A.X, part.A.Y, part.B.X, part.B.Y, draw.Solid(draw.Grey, draw.FineWidth))
		}
		sub.Line(foot.X-0.8, foot.Y, foot.X+0.8, foot.Y, draw.Solid(draw.Grey, draw.RulerWidth))
		c.Lines = append(c.Lines, seek.Between(p.At, foot))
	}
}

func (l *layer) drawDepth(g *draw.Group, p seek.Pin, half float64) {
	from, to := max(p.At.X-half, l.box.X), min(p.At.X+half, l.box.Right())
	if to-from < 2*signs.PlaceRadius+0.4 && !p.Aside() || to <= from {
		return
	}
	sub := g.Group(signs.Subject)
	sub.Add(draw.Rect{Box: draw.Box{X: from, Y: p.At.Y - 1, W: to - from, H: 2}, Fill: draw.Body})
	sub.Line(from, p.At.Y, to, p.At.Y, draw.Solid(draw.Grey, draw.SubjectWidth))
}

// drawPins draws the discs.
func (l *layer) drawPins(g *draw.Group) {
	for _, p := range l.pins {
		place := l.floor.Places[p.Place]
		sub := g.Group("spot")
		sub.Title = draw.Clean(place.Letter + ": " + place.Name)
		if p.Aside() {
			sub.Add(draw.Disc{Centre: p.At, Radius: seek.DotRadius, Fill: draw.Black})
			lead(sub, p.At, draw.Point{X: p.Disc.X, Y: p.Disc.Y}, signs.PlaceRadius)
		}
		signs.DrawPlace(sub, p.Disc.X, p.Disc.Y, place.Letter, place.Later)
	}
}

// lead draws a leader from a point towards another, and ends so far before it.
func lead(g *draw.Group, from, to draw.Point, before float64) {
	s := seek.Between(from, to)
	if s.Length() <= before {
		return
	}
	end := s.At(1 - before/s.Length())
	g.Group(signs.Leader).Line(from.X, from.Y, end.X, end.Y, draw.Solid(draw.Black, draw.FineWidth))
}
