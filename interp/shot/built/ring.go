// The ring of the shot's lens: what is known of it, and how well.

package built

import (
	"math"

	"pullscore/interp/hand"
	"pullscore/interp/plan"
)

// doubt says how well the law of the ring knows the mark on which a pull lands, and how
// wide its window may truly be.
func (b *Shot) doubt(p *Pull) {
	law := b.Plan.Optics.Ring
	if law == nil || !p.Plan.ToDeg.Known() {
		return
	}
	d := b.Plan.RingTape(p.Plan.ToLens, p.Rack.LandS)
	p.Plan.LawSigma, p.Plan.LawBound = plan.Number(b.Plan.LawSigma(p.Plan.ToLens, p.Rack.LandS)), plan.None()
	if law.Measured() {
		p.Plan.LawBound = plan.Number(law.Bound(d))
	}
	least, most := law.Factors(d)
	p.Plan.Factor = plan.Interval{plan.Number(least), plan.Number(most)}
}

// onPaper returns the chance of a pull with its mark taken from a printed tape or disc,
// which is off by as much as the law of the ring may be; NaN without marks.
func (b *Shot) onPaper(p *Pull) plan.Number {
	if !p.Plan.LawSigma.Known() || p.Rack.Follow {
		return plan.None()
	}
	asks := p.Plan.Asks
	asks.SigmaX = math.Hypot(asks.SigmaX, float64(p.Plan.LawSigma)*b.Setup.Gear)
	return plan.Number(b.Setup.Hand.Land(asks).Chance)
}

// factors are those by which the width of the window of a pull is taken: as computed, and
// the least and the most that it may truly be.
func factors(p *Pull) []float64 {
	if !p.Plan.Factor[0].Known() {
		return []float64{1}
	}
	return []float64{1, float64(p.Plan.Factor[0]), float64(p.Plan.Factor[1])}
}

// wider returns an edge of a window, from its mark, by a factor: an open one stays open.
func wider(edge, by float64) float64 {
	if math.IsInf(edge, 0) {
		return edge
	}
	return edge * by
}

// widened returns what a pull asks of the hand if its window is wider by a factor.
func widened(asks hand.Pull, by float64) hand.Pull {
	asks.Lo, asks.Hi = wider(asks.Lo, by), wider(asks.Hi, by)
	return asks
}
