// Bands: between what the chances lie.
//
// Two things are not known: how well the hand sets a mark, and how wide the window truly
// is, since nobody has read the ring between its marks. Three hands, as moments of package
// hand have it, and three windows make nine landings. Their least and their most are the
// one range that is printed. It is computed for what is printed alone.

package built

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// fillBands says between what the chance and the ceiling of every pull lie. What a rest
// comes to does not hang on the hand.
func (b *Shot) fillBands() {
	for _, p := range b.Pulls {
		if !p.Plan.Chance.Known() {
			continue
		}
		own, chance, ceiling := b.Setup.Hand, nothing(), nothing()
		chanceOf := b.chanceOf(p)
		for _, by := range factors(p) {
			asks := widened(p.Plan.Asks, by)
			ceiling = over(ceiling, between(own.Range(func(h hand.Hand) float64 { return h.Land(asks).Ceiling })))
			chance = over(chance, between(own.Range(func(h hand.Hand) float64 { return chanceOf(h, by) })))
		}
		b.lies(p, chance, ceiling)
	}
}

// lies writes between what the chance and the ceiling of a pull lie, and whether what is
// wanted lies outside.
func (b *Shot) lies(p *Pull, chance, ceiling plan.Interval) {
	p.Plan.ChanceBand, p.Plan.CeilingBand = chance, ceiling
	p.Plan.Firm = chance[0] >= b.Plan.Wanted || chance[1] < b.Plan.Wanted
}

// chanceOf returns the chance of a pull by the hand, and by how much wider its window is
// than computed.
func (b *Shot) chanceOf(p *Pull) func(h hand.Hand, by float64) float64 {
	asks, own := p.Plan.Asks, b.Setup.Hand
	if !p.Rack.Follow {
		return func(h hand.Hand, by float64) float64 { return h.Land(widened(asks, by)).Chance }
	}
	w := b.Stage.Way(b.sight(), &p.Rack.Aim, p.Rack.StartS-1, p.Rack.LandS+1)
	course, last := b.course(p, &w), p.Moments[len(p.Moments)-1]
	lo, hi := course.Room(last.T)
	return func(h hand.Hand, by float64) float64 {
		c := course
		c.Room = func(float64) (float64, float64) { return wider(lo, by), wider(hi, by) }
		return min(own.SharpWith(c, last, h)*(1-h.Slips), h.Land(widened(asks, by)).Ceiling)
	}
}

// between returns an interval of two figures.
func between(least, most float64) plan.Interval {
	return plan.Interval{plan.Number(least), plan.Number(most)}
}

// nothing is the interval that every other widens.
func nothing() plan.Interval {
	return plan.Interval{plan.Number(math.Inf(1)), plan.Number(math.Inf(-1))}
}

// over returns the least and the most of two intervals.
func over(a, b plan.Interval) plan.Interval {
	return plan.Interval{min(a[0], b[0]), max(a[1], b[1])}
}
