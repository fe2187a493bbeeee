// Lettered places, and the ways of people.
//
// A disc lies on its place. Where discs would cover each other, or a camera, a dot lies on
// the place, and the disc beside it with a leader.

package floor

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/floor/layout"
	"pullscore/render/sheet"
	"pullscore/render/signs"
)

// A pin is a place on the page.
type pin struct {
	place int
	at    draw.Point // the place itself
	disc  draw.Point // where its disc is
}

// aside reports whether the disc is not on its place.
func (p pin) aside() bool { return p.disc != p.at }

const (
	dotRadius  = 0.6
	discPitch  = 2*signs.PlaceRadius + 0.4 // between the middles of two discs
	leaderMost = 12.0
)

// layPins places the discs of the places on a sheet. taken are parts of the page that no
// disc may cover. It returns which places have no room for a disc.
func layPins(f *Floor, g ground, places []int, taken []circle) (pins []pin, failed []int) {
	for _, i := range places {
		if at := g.at(f.Places[i].At); g.holds(at, 0) {
			pins = append(pins, pin{place: i, at: at, disc: at})
		}
	}
	var fixed, rest []int
	for i := range pins {
		if staysPut(pins, i, fixed, taken) {
			fixed = append(fixed, i)
		} else {
			rest = append(rest, i)
		}
	}
	best, least, without := slices.Clone(pins), math.Inf(1), rest
	order := slices.Clone(rest)
	for range 6 { // what found no place goes first next time
		trial, none, cost := moveAside(pins, g, order, fixed, taken)
		if cost < least {
			best, least, without = trial, cost, none
		}
		if len(none) == 0 {
			break
		}
		order = append(slices.Clone(none), slices.DeleteFunc(order, func(i int) bool { return slices.Contains(none, i) })...)
	}
	for _, i := range without {
		failed = append(failed, best[i].place)
	}
	return best, failed
}

// staysPut reports whether the disc of a pin can lie on its place: no other place is under
// it, nor a disc that stays, nor anything else.
func staysPut(pins []pin, i int, fixed []int, taken []circle) bool {
	for k := range pins {
		d := distance(pins[i].at, pins[k].at)
		if k != i && (d < signs.PlaceRadius+dotRadius+0.5 || slices.Contains(fixed, k) && d < discPitch) {
			return false
		}
	}
	return !slices.ContainsFunc(taken, func(c circle) bool { return distance(c.at, pins[i].at) < c.radius+signs.PlaceRadius })
}

// moveAside finds places for the discs of the pins in order, beside those that are fixed.
// It returns which found none; these lie on their places. The cost is how far all are off.
func moveAside(pins []pin, g ground, order, fixed []int, taken []circle) (trial []pin, failed []int, cost float64) {
	trial = slices.Clone(pins)
	laid := slices.Clone(fixed)
	for _, i := range order {
		if p, d, ok := discFor(trial, g, i, laid, taken); ok {
			trial[i].disc = p
			laid = append(laid, i)
			cost += d
			continue
		}
		failed = append(failed, i)
		cost += 1000
	}
	return trial, failed, cost
}

// discFor returns the nearest free place for a disc whose place is crowded, beside those
// that are laid.
func discFor(pins []pin, g ground, i int, laid []int, taken []circle) (best draw.Point, least float64, ok bool) {
	at := pins[i].at
	crowd := 0
	for _, p := range pins {
		if distance(p.at, at) < discPitch {
			crowd++
		}
	}
	const angles = 120
	first := max(discPitch, float64(crowd)*(discPitch+0.3)/(2*math.Pi))
	for r := first; r <= leaderMost+signs.PlaceRadius; r += 1.2 {
		for k := range angles {
			turn := float64((k+1)/2) * (1 - 2*float64(k%2)) // up first, then to either side
			sin, cos := math.Sincos((-90 + turn*360/angles) * math.Pi / 180)
			p := draw.Point{X: at.X + r*cos, Y: at.Y + r*sin}
			if g.holds(p, signs.PlaceRadius) && freeFor(pins, i, p, laid, taken) {
				return p, r, true
			}
		}
	}
	return at, 0, false
}

// freeFor reports whether the disc of a pin can lie at p: neither it nor its leader meets
// another place, disc or leader.
func freeFor(pins []pin, i int, p draw.Point, laid []int, taken []circle) bool {
	leader := segment{pins[i].at, p}
	for _, c := range taken {
		if distance(c.at, p) < c.radius+signs.PlaceRadius {
			return false
		}
	}
	for k, o := range pins {
		if k == i {
			continue
		}
		if distance(o.at, p) < signs.PlaceRadius+dotRadius+0.5 || distance(o.at, pins[i].at) > 2*dotRadius && leader.off(o.at) < dotRadius+0.3 {
			return false
		}
	}
	for _, k := range laid {
		o := pins[k]
		if distance(o.disc, p) < discPitch || leader.off(o.disc) < signs.PlaceRadius+0.3 {
			return false
		}
		if other := (segment{o.at, o.disc}); o.aside() && (leader.crosses(other) || other.off(p) < signs.PlaceRadius+0.3) {
			return false
		}
	}
	return true
}

// discRoom returns the circle round a disc in which no line goes: its letter keeps clear of
// all of them.
func discRoom(letter string, at draw.Point) circle {
	if len(letter) > 1 {
		return circle{at, 3.3}
	}
	return circle{at, 2.8}
}

// drawWays draws the ways of those whose places are on the sheet.
func (l *layer) drawWays(g *draw.Group, c *clearing) {
	for _, w := range l.floor.Ways {
		run := l.run(w.Run)
		if run == nil || !l.ends(w) || lengthOf(run) < 0.5 {
			continue
		}
		sub := g.Group("goes")
		sub.Title = draw.Clean(w.Who + " goes")
		signs.DrawWay(sub, run, 0.6)
		c.lines = append(c.lines, segmentsOf(run)...)
	}
}

// ends reports whether an end of a way is a place of the sheet.
func (l *layer) ends(w layout.Way) bool {
	return slices.ContainsFunc(l.pins, func(p pin) bool {
		at := l.floor.Places[p.place].At
		return layout.Apart(at, w.Run[0]) < layout.SameSpot || layout.Apart(at, w.Run[len(w.Run)-1]) < layout.SameSpot
	})
}

// drawDepths draws how deep everybody is, and from the axis of the first camera to each
// place the way to its side.
func (l *layer) drawDepths(g *draw.Group, c *clearing) {
	rigged := len(l.floor.Cameras[0].Path)+len(l.floor.Cameras[0].Turns) > 0
	for _, p := range l.pins {
		place := l.floor.Places[p.place]
		if half := place.Deep / 2 * l.perMetre; half > 0.3 && sheet.Finite(half) {
			l.drawDepth(g, p, half)
		}
		foot := draw.Point{X: p.at.X, Y: l.origin.Y}
		if math.Abs(p.at.Y-foot.Y) < signs.PlaceRadius+0.5 || place.Later && rigged || !l.holds(foot, 0) {
			continue
		}
		sub := g.Group("aside")
		for _, part := range (segment{p.at, foot}).outside(l.keepOut) {
			sub.Line(part.a.X, part.a.Y, part.b.X, part.b.Y, draw.Solid(draw.Grey, draw.FineWidth))
		}
		sub.Line(foot.X-0.8, foot.Y, foot.X+0.8, foot.Y, draw.Solid(draw.Grey, draw.RulerWidth))
		c.lines = append(c.lines, segment{p.at, foot})
	}
}

func (l *layer) drawDepth(g *draw.Group, p pin, half float64) {
	from, to := max(p.at.X-half, l.box.X), min(p.at.X+half, l.box.Right())
	if to-from < 2*signs.PlaceRadius+0.4 && !p.aside() || to <= from {
		return
	}
	sub := g.Group(signs.Subject)
	sub.Add(draw.Rect{Box: draw.Box{X: from, Y: p.at.Y - 1, W: to - from, H: 2}, Fill: draw.Body})
	sub.Line(from, p.at.Y, to, p.at.Y, draw.Solid(draw.Grey, draw.SubjectWidth))
}

// drawPins draws the discs.
func (l *layer) drawPins(g *draw.Group) {
	for _, p := range l.pins {
		place := l.floor.Places[p.place]
		sub := g.Group("spot")
		sub.Title = draw.Clean(place.Letter + ": " + place.Name)
		if p.aside() {
			sub.Add(draw.Disc{Centre: p.at, Radius: dotRadius, Fill: draw.Black})
			lead(sub, p.at, draw.Point{X: p.disc.X, Y: p.disc.Y}, signs.PlaceRadius)
		}
		signs.DrawPlace(sub, p.disc.X, p.disc.Y, place.Letter, place.Later)
	}
}

// lead draws a leader from a point towards another, and ends so far before it.
func lead(g *draw.Group, from, to draw.Point, before float64) {
	s := segment{from, to}
	if s.length() <= before {
		return
	}
	end := s.at(1 - before/s.length())
	g.Group(signs.Leader).Line(from.X, from.Y, end.X, end.Y, draw.Solid(draw.Black, draw.FineWidth))
}
