// Bands: between what the chances lie.

package shot

import (
	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// fillBands says between what the chance and the ceiling of every pull lie. What a
// rest comes to does not hang on the hand.
func (b *Built) fillBands() {
	for _, p := range b.Pulls {
		if !p.Plan.Chance.Known() {
			continue
		}
		asks, own := p.Plan.Asks, b.Setup.Hand
		p.Plan.CeilingBand = between(own.Range(func(h hand.Hand) float64 { return h.Land(asks).Ceiling }))
		p.Plan.ChanceBand = between(own.Range(b.chanceOf(p)))
		lo, hi, wanted := float64(p.Plan.ChanceBand[0]), float64(p.Plan.ChanceBand[1]), b.Setup.View.Wanted
		p.Plan.Firm = lo >= wanted || hi < wanted
	}
}

// chanceOf returns the chance of a pull by the hand.
func (b *Built) chanceOf(p *Pull) func(hand.Hand) float64 {
	asks, own := p.Plan.Asks, b.Setup.Hand
	if !p.Rack.Follow {
		return func(h hand.Hand) float64 { return h.Land(asks).Chance }
	}
	w := b.wayOf(&p.Rack.Aim, p.Rack.StartS-1, p.Rack.LandS+1)
	course, last := b.course(p, &w), p.Moments[len(p.Moments)-1]
	return func(h hand.Hand) float64 {
		return min(own.SharpWith(course, last, h)*(1-h.Slips), h.Land(asks).Ceiling)
	}
}

// between returns an interval of two figures.
func between(least, most float64) plan.Interval {
	return plan.Interval{plan.Number(least), plan.Number(most)}
}
