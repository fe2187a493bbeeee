// Light: what has to be done about it at a stop.

package stops

import (
	"fmt"
	"math"
	"strings"

	"pullscore/interp/plan"
	"pullscore/interp/units"
	"pullscore/optics"
)

// What there is to have of light, where the camera does not say: filters in steps
// of a stop stacked to 3.9, and two stops of iso either way before the picture
// suffers (common practice, no source). A shutter changes motion as much as light,
// so only a camera that says how far it may go has another.
const (
	ndStep      = 0.3
	ndMost      = 3.9
	isoReach    = 2.0    // stops
	LightSlack  = 0.25   // stops that the picture may be off
	halfAFilter = 0.5    // stops: as near as filters in whole stops come
	halfAThird  = 0.1781 // stops: half the widest step of the iso scale, from 1250 to 1600
)

// What a change of light costs beside others, in stops of iso raised: that is noise
// in the picture, a filter is a moment of work, an iso that is lowered is light
// thrown away. Our own choice.
const (
	filterCost = 0.1 // a filter put on, taken off or changed for another
	lowerCost  = 0.15
)

// LostNear says how much light is lost near the lens, and where the most.
func LostNear(l plan.Loss, u units.Style) string {
	are := "are"
	if text := u.Stops(l.Most); !strings.HasSuffix(text, "s") {
		are = "is"
	}
	return fmt.Sprintf("%s %s lost at %s, near the lens", u.Stops(l.Most), are, l.At)
}

// slackOf returns by how many stops the picture may be off half-way between where
// the most and where the least light is lost near the lens, so that no place is off
// by more than LightSlack. Where they lie too far apart for that, what remains is
// as near as an iso in thirds comes.
func slackOf(l plan.Light) float64 { return max(LightSlack-l.Loss.Spread(), halfAThird) }

// An Exposure is how light is had at a stop. Iso and shutter are given where
// they are to change; the meter then reads Meter.
type Exposure struct {
	Over    plan.Number `json:"over_stops"` // too much light, without a filter, between where the most and the least is lost near the lens
	ND      plan.Number `json:"nd"`
	ISO     plan.Number `json:"iso,omitzero"`
	Shutter plan.Number `json:"shutter_deg,omitzero"`
	Meter   plan.Number `json:"meter,omitzero"` // f-number
	Left    plan.Number `json:"left_stops"`     // what remains, above 0 too much
	Enough  bool        `json:"holds"`

	raised  float64 // stops of iso, below 0 lowered
	changes int     // filter, iso and shutter that are not as they were
	filter  bool    // another one
}

// stopDigits are the decimals of stops that are told: what lies behind them is
// only how computers round.
const stopDigits = 6

// Expose returns how light is had at an f-number at the least cost: as it is where
// that will do, else with another filter, another iso or, as far as the camera says,
// another shutter. Filters come in whole stops; of a camera that says nothing that
// may change up to half a stop is left to trim. It is nil without a meter.
func Expose(l plan.Light, number float64) *Exposure {
	if math.IsNaN(l.Meter) {
		return nil
	}
	var best *Exposure
	for _, nd := range filtersFor(l, number) {
		for _, c := range []struct{ shutter, iso bool }{{false, false}, {true, false}, {false, true}, {true, true}} {
			if e := exposed(l, number, nd, c.shutter, c.iso); best == nil || e.beats(best) {
				best = e
			}
		}
	}
	if l.ISO == 0 && l.ShutterTo == 0 {
		best.Enough = math.Abs(float64(best.Left)) <= halfAFilter
	}
	return best
}

// filtersFor lists the filters that may do: the one that is on, and the two that
// take a little less and a little more than there is too much.
func filtersFor(l plan.Light, number float64) []float64 {
	steps := optics.NDDensity(l.Over(number, 0)) / ndStep
	held := func(n float64) float64 { return math.Round(min(max(n*ndStep, 0), ndMost)*10) / 10 }
	return []float64{l.ND, held(math.Floor(steps)), held(math.Ceil(steps))}
}

// exposed returns what comes of a filter, with another shutter and another iso where
// these may be.
func exposed(l plan.Light, number, nd float64, shutter, iso bool) *Exposure {
	e := &Exposure{
		Over: plan.Number(roundTo(l.Over(number, 0), stopDigits)), ND: plan.Number(nd),
		ISO: plan.None(), Shutter: plan.None(), Meter: plan.None(), filter: nd != l.ND,
	}
	left, gained := l.Over(number, nd), 0.0
	if e.filter {
		e.changes++
	}
	if a := shutterFor(l, left); shutter && a != l.Shutter {
		e.Shutter, gained = plan.Number(a), math.Log2(a/l.Shutter)
		e.changes++
	}
	if v := isoFor(l, left+gained); iso && v != l.ISO {
		e.ISO, e.raised = plan.Number(v), math.Log2(v/l.ISO)
		gained += e.raised
		e.changes++
	}
	if gained != 0 {
		e.Meter = plan.Number(math.Round(l.Meter*math.Exp2(gained/2)*10) / 10)
	}
	e.Left = plan.Number(roundTo(left+gained, stopDigits))
	e.Enough = math.Abs(float64(e.Left)) <= slackOf(l)
	return e
}

// beats reports whether an exposure is to be had rather than another: one that will
// do, or comes nearer to it, then the one that costs less.
func (e *Exposure) beats(o *Exposure) bool {
	left, other := math.Abs(float64(e.Left)), math.Abs(float64(o.Left))
	if e.Enough != o.Enough {
		return e.Enough
	}
	if !e.Enough && math.Abs(left-other) > slack {
		return left < other
	}
	if d := e.cost() - o.cost(); math.Abs(d) > slack {
		return d < 0
	}
	if e.changes != o.changes {
		return e.changes < o.changes
	}
	return left < other-slack
}

// cost is what an exposure costs: stops of iso raised or lowered, and a filter. One
// stop is compared with another by the same cost: if a lowered iso were free there, a
// smaller stop at a lower iso would be preferred to the stop that is set and a filter.
func (e *Exposure) cost() float64 {
	c := max(e.raised, 0) + lowerCost*max(-e.raised, 0)
	if e.filter {
		c += filterCost
	}
	return c
}

// One reports whether one thing alone is changed, or nothing.
func (e *Exposure) One() bool { return e.changes <= 1 }

// ISORange returns the least and the most that the iso may be set to: what the
// camera says, else two stops either way; 0 where none is set.
func ISORange(l plan.Light) (least, most float64) {
	switch {
	case !(l.ISO > 0):
		return 0, 0
	case l.ISOTo > 0:
		return min(l.ISO, l.ISOTo), max(l.ISO, l.ISOTo)
	}
	return l.ISO / math.Exp2(isoReach), l.ISO * math.Exp2(isoReach)
}

// isoFor returns the iso, a third-stop or an end of its range, that comes nearest to
// making up for too much light; 0 where none is set.
func isoFor(l plan.Light, over float64) float64 {
	least, most := ISORange(l)
	if least == 0 {
		return 0
	}
	want := l.ISO * math.Exp2(-over)
	best := l.ISO
	for _, v := range []float64{least, NearestISO(want), most} {
		if v >= least && v <= most && math.Abs(math.Log(v/want)) < math.Abs(math.Log(best/want))-slack {
			best = v
		}
	}
	return best
}

// shutterFor does the same with the shutter's angle, in whole degrees or at the ends
// of the range that the camera says; without one it stays.
func shutterFor(l plan.Light, over float64) float64 {
	if !(l.Shutter > 0) || l.ShutterTo == 0 {
		return l.Shutter
	}
	least, most := min(l.Shutter, l.ShutterTo), max(l.Shutter, l.ShutterTo)
	return min(max(math.Round(l.Shutter*math.Exp2(-over)), least), most)
}

// NearestISO returns the nearest iso of the usual third-stop scale.
func NearestISO(v float64) float64 {
	if !(v > 0) {
		return v
	}
	best := 100.0
	for decade := 10.0; decade <= 1e6; decade *= 10 {
		for _, m := range []float64{1, 1.25, 1.6, 2, 2.5, 3.2, 4, 5, 6.4, 8} {
			if math.Abs(math.Log(decade*m/v)) < math.Abs(math.Log(best/v)) {
				best = decade * m
			}
		}
	}
	return math.Round(best)
}
