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

// What there is to have of light. Common practice, no source: filters in steps
// of a stop stacked to 3.9, two stops of iso either way before the picture
// suffers, a shutter between a sixteenth of a turn and a whole one.
const (
	ndStep      = 0.3
	ndMost      = 3.9
	isoReach    = 2.0 // stops
	narrowest   = 22.5
	wholeTurn   = 360.0
	LightSlack  = 0.25 // stops that the picture may be off
	halfAFilter = 0.5  // stops: as near as filters in whole stops come
	halfAThird  = 1.0 / 6
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
}

// stopDigits are the decimals of stops that are told: what lies behind them is
// only how computers round.
const stopDigits = 6

// Expose returns how light is had at an f-number: with the filter that is on
// where that will do, else with another, and what filters leave with iso and
// shutter, where the camera says them. Filters come in whole stops; of a camera
// that says neither iso nor shutter up to half a stop is left to trim. It is
// nil without a meter.
func Expose(l plan.Light, number float64) *Exposure {
	if math.IsNaN(l.Meter) {
		return nil
	}
	e := &Exposure{Over: plan.Number(roundTo(l.Over(number, 0), stopDigits)), ND: plan.Number(l.ND), ISO: plan.None(), Shutter: plan.None(), Meter: plan.None()}
	left, slack := l.Over(number, l.ND), slackOf(l)
	if math.Abs(left) > slack {
		e.ND = plan.Number(filter(float64(e.Over)))
		left = l.Over(number, float64(e.ND))
	}
	gained := 0.0 // by iso and shutter
	if iso := isoFor(l.ISO, left); math.Abs(left) > slack && iso != l.ISO {
		e.ISO = plan.Number(iso)
		gained = math.Log2(iso / l.ISO)
	}
	if a := shutterFor(l.Shutter, left+gained); math.Abs(left+gained) > slack && a != l.Shutter {
		e.Shutter = plan.Number(a)
		gained += math.Log2(a / l.Shutter)
	}
	if gained != 0 {
		e.Meter = plan.Number(math.Round(l.Meter*math.Exp2(gained/2)*10) / 10)
	}
	e.Left = plan.Number(roundTo(left+gained, stopDigits))
	if l.ISO == 0 && l.Shutter == 0 {
		slack = halfAFilter
	}
	e.Enough = math.Abs(float64(e.Left)) <= slack
	return e
}

// filter returns the density nearest to what takes that many stops.
func filter(over float64) float64 {
	steps := math.Round(optics.NDDensity(over) / ndStep)
	return math.Round(min(max(steps*ndStep, 0), ndMost)*10) / 10
}

// isoFor returns the iso, a third-stop within reach of the one set, that comes
// nearest to making up for too much light; 0 where none is set.
func isoFor(set, over float64) float64 {
	if !(set > 0) {
		return 0
	}
	return NearestISO(set * math.Exp2(-min(max(over, -isoReach), isoReach)))
}

// shutterFor does the same with the shutter's angle, in whole degrees.
func shutterFor(set, over float64) float64 {
	if !(set > 0) {
		return 0
	}
	a := math.Round(set * math.Exp2(-over))
	return min(max(a, min(narrowest, set)), wholeTurn)
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
