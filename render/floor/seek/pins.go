// The search for the places of discs.
//
// A disc lies on its place. Where discs would cover each other, or something else, a dot
// lies on the place, and the disc beside it with a leader.

package seek

import (
	"math"
	"slices"

	"pullscore/render/draw"
	"pullscore/render/signs"
)

// An Obstacle is a part of the page that no disc may cover. Where it is solid, no leader of a
// disc may cross it either.
type Obstacle struct {
	Parts []Circle
	Solid bool
}

// A Pin is a place on the page.
type Pin struct {
	Place int        // its index
	At    draw.Point // the place itself
	Disc  draw.Point // where its disc is
	Ring  float64    // how wide a ring lies round the disc, millimetres
}

// radius returns the radius of the disc with its ring.
func (p Pin) radius() float64 { return signs.PlaceRadius + p.Ring }

// Aside reports whether the disc is not on its place.
func (p Pin) Aside() bool { return p.Disc != p.At }

const (
	DotRadius  = 0.6                       // of the dot on a place whose disc is beside it
	DiscPitch  = 2*signs.PlaceRadius + 0.4 // between the middles of two discs
	LeaderMost = 12.0                      // how long a leader is at most
)

// Pins places the discs of pins, which lie on their places, within a box. taken are parts of
// the page that discs keep off. It returns which places have no room for a disc.
func Pins(pins []Pin, box draw.Box, taken Obstacle) (laid []Pin, failed []int) {
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
		trial, none, cost := moveAside(pins, box, order, fixed, taken)
		if cost < least {
			best, least, without = trial, cost, none
		}
		if len(none) == 0 {
			break
		}
		order = append(slices.Clone(none), slices.DeleteFunc(order, func(i int) bool { return slices.Contains(none, i) })...)
	}
	for _, i := range without {
		failed = append(failed, best[i].Place)
	}
	return best, failed
}

// staysPut reports whether the disc of a pin can lie on its place: no other place is under
// it, nor a disc that stays, nor anything else.
func staysPut(pins []Pin, i int, fixed []int, taken Obstacle) bool {
	for k := range pins {
		d := Distance(pins[i].At, pins[k].At)
		if k != i && (d < pins[i].radius()+DotRadius+0.5 || slices.Contains(fixed, k) && d < DiscPitch+pins[i].Ring+pins[k].Ring) {
			return false
		}
	}
	return !slices.ContainsFunc(taken.Parts, func(c Circle) bool { return Distance(c.At, pins[i].At) < c.Radius+pins[i].radius() })
}

// moveAside finds places for the discs of the pins in order, beside those that are fixed.
// It returns which found none; these lie on their places. The cost is how far all are off.
func moveAside(pins []Pin, box draw.Box, order, fixed []int, taken Obstacle) (trial []Pin, failed []int, cost float64) {
	trial = slices.Clone(pins)
	laid := slices.Clone(fixed)
	for _, i := range order {
		if p, d, ok := discFor(trial, box, i, laid, taken); ok {
			trial[i].Disc = p
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
func discFor(pins []Pin, box draw.Box, i int, laid []int, taken Obstacle) (best draw.Point, least float64, ok bool) {
	at := pins[i].At
	crowd := 0
	for _, p := range pins {
		if Distance(p.At, at) < DiscPitch {
			crowd++
		}
	}
	const angles = 120
	first := max(DiscPitch, float64(crowd)*(DiscPitch+0.3)/(2*math.Pi)) + 2*pins[i].Ring
	for r := first; r <= LeaderMost+pins[i].radius(); r += 1.2 {
		for k := range angles {
			turn := float64((k+1)/2) * (1 - 2*float64(k%2)) // up first, then to either side
			sin, cos := math.Sincos((-90 + turn*360/angles) * math.Pi / 180)
			p := draw.Point{X: at.X + r*cos, Y: at.Y + r*sin}
			if box.Grow(-pins[i].radius()).Holds(draw.Box{X: p.X, Y: p.Y}) && freeFor(pins, i, p, laid, taken) {
				return p, r, true
			}
		}
	}
	return at, 0, false
}

// freeFor reports whether the disc of a pin can lie at p: neither it nor its leader meets
// another place, disc or leader.
func freeFor(pins []Pin, i int, p draw.Point, laid []int, taken Obstacle) bool {
	leader := Segment{pins[i].At, p}
	for _, c := range taken.Parts {
		if Distance(c.At, p) < c.Radius+pins[i].radius() || taken.Solid && leader.Off(c.At) < c.Radius {
			return false
		}
	}
	for k, o := range pins {
		if k == i {
			continue
		}
		if Distance(o.At, p) < pins[i].radius()+DotRadius+0.5 || Distance(o.At, pins[i].At) > 2*DotRadius && leader.Off(o.At) < DotRadius+0.3 {
			return false
		}
	}
	for _, k := range laid {
		o := pins[k]
		if Distance(o.Disc, p) < DiscPitch+pins[i].Ring+o.Ring || leader.Off(o.Disc) < o.radius()+0.3 {
			return false
		}
		if other := (Segment{o.At, o.Disc}); o.Aside() && (leader.Crosses(other) || other.Off(p) < pins[i].radius()+0.3) {
			return false
		}
	}
	return true
}
