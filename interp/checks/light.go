// light: the stop against what the meter asks for.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/checks/check"

	"pullscore/interp/change"
	"pullscore/interp/stops"
	"pullscore/interp/units"
	"pullscore/lang"
	"pullscore/lang/rule"
	"pullscore/optics"
)

var light = Check{Codes: []rule.Code{rule.Light}, Run: exposes}

func exposes(b *Shot) []Finding {
	if math.IsNaN(b.Setup.Meter) {
		return nil
	}
	loss := b.Plan.Optics.Light.Loss
	middle := b.overexposure(b.Setup.ND)
	over := middle - loss.Spread() // where the most is lost
	if at := middle + loss.Spread(); at > -over+1e-9 {
		over = at // where the least is
	}
	if math.Abs(over) <= stops.LightSlack {
		return nil
	}
	more, word := over > 0, "too dark"
	if more {
		word = "too bright"
	}
	detail := ""
	if loss.Tells() {
		detail = stops.LostNear(loss, b.Units) + "."
	}
	return []Finding{{Diagnostic: lang.Diagnostic{
		Code: "light", Severity: lang.Warning, Range: b.Setup.StopAt,
		Message: fmt.Sprintf("at %s the picture is %s %s for the light", b.Setup.StopText, b.Units.Stops(math.Abs(over)), word),
		Detail:  detail,
		Figures: []lang.Figure{check.Figure("stops", over), check.Figure("nd", b.Setup.ND), check.Figure("near_loss_stops", loss.Most)},
	}, Tries: func() []change.Change { return b.lightTries(middle) }}}
}

// overexposure is how many stops too much light falls on the sensor: what the
// meter asks for against the stop, on exact stops, less the nd, and half-way
// between where the most and where the least is lost near the lens.
func (b *Shot) overexposure(nd float64) float64 {
	return b.Plan.Optics.Light.Over(b.Setup.Number, nd)
}

// lightTries offers nd in steps of a stop, iso alone, the shutter alone as far as the
// camera lets it, and what all of them together come to. Iso and shutter change what
// the meter reads, so the new reading stands with them.
func (b *Shot) lightTries(over float64) []change.Change {
	var tries []change.Change
	nd := math.Round((b.Setup.ND+optics.NDDensity(over))/0.3) * 0.3
	if nd >= 0 && nd <= 3.9 && math.Abs(nd-b.Setup.ND) > 0.01 {
		nd = math.Round(nd*10) / 10
		tries = append(tries, change.Change{ND: &nd})
	}
	c := b.Setup.Camera
	least, most := stops.ISORange(b.Plan.Optics.Light)
	if iso := stops.NearestISO(c.ISO / math.Exp2(over)); c.ISO > 0 && iso != c.ISO && iso >= least && iso <= most {
		left := b.Setup.Meter * math.Sqrt(iso/c.ISO)
		tries = append(tries, change.Change{ISO: iso, Meter: units.Nearest(left, 10), MeterT: b.Setup.MeterT})
	}
	if a := math.Round(c.Shutter / math.Exp2(over)); c.ShutterTo > 0 && a >= min(c.Shutter, c.ShutterTo) && a <= max(c.Shutter, c.ShutterTo) {
		left := b.Setup.Meter * math.Sqrt(a/c.Shutter)
		tries = append(tries, change.Change{Shutter: a, Meter: units.Nearest(left, 10), MeterT: b.Setup.MeterT})
	}
	return append(tries, b.jointTry()...)
}

// jointTry offers what costs the least at this stop, where that takes more than one
// thing.
func (b *Shot) jointTry() []change.Change {
	e := stops.Expose(b.Plan.Optics.Light, b.Setup.Number)
	nd := float64(e.ND)
	if !e.Meter.Known() || e.One() {
		return nil
	}
	ch := change.Change{Meter: float64(e.Meter), MeterT: b.Setup.MeterT}
	if nd != b.Setup.ND {
		ch.ND = &nd
	}
	if e.ISO.Known() {
		ch.ISO = float64(e.ISO)
	}
	if e.Shutter.Known() {
		ch.Shutter = float64(e.Shutter)
	}
	return []change.Change{ch}
}
