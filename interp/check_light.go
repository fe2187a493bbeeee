// light: the stop against what the meter asks for.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/interp/stops"
	"pullscore/lang"
	"pullscore/optics"
)

func checkLight(b run) {
	if math.IsNaN(b.set.meter) {
		return
	}
	over := b.overexposure(b.set.nd)
	if math.Abs(over) <= stops.LightSlack {
		return
	}
	more, word := over > 0, "too dark"
	if more {
		word = "too bright"
	}
	b.tell(finding{Diagnostic: lang.Diagnostic{
		Code: "light", Severity: lang.Warning, Range: b.set.stopAt,
		Message: fmt.Sprintf("at %s the picture is %s stops %s for the light", b.set.stopText, plan.Decimal(math.Abs(over), 1), word),
		Figures: []lang.Figure{figure("stops", over), figure("nd", b.set.nd)},
	}, tries: func() []try { return b.lightTries(over) }})
}

// overexposure is how many stops too much light falls on the sensor: what the
// meter asks for against the stop, on exact stops, less the nd.
func (b run) overexposure(nd float64) float64 {
	light := b.shot.Optics.Light
	if b.set.stop.dim == dimTStop { // says the light itself
		light.PerT = math.NaN()
		return light.Over(b.set.stop.v, nd)
	}
	return light.Over(b.set.number, nd)
}

// lightTries offers nd in steps of a stop, iso alone, the shutter alone, and a
// filter with what it leaves for iso and shutter. These two change what the
// meter reads, so the new reading stands with them.
func (b run) lightTries(over float64) []try {
	var tries []try
	nd := math.Round((b.set.nd+optics.NDDensity(over))/0.3) * 0.3
	if nd >= 0 && nd <= 3.9 && math.Abs(nd-b.set.nd) > 0.01 {
		nd = math.Round(nd*10) / 10
		tries = append(tries, try{lang.Cure{Text: "nd " + plan.Decimal(nd, 1), Value: nd, Unit: "nd"}, change{ND: &nd}})
	}
	c := b.set.camera
	if iso := stops.NearestISO(c.iso / math.Exp2(over)); c.iso > 0 && iso != c.iso {
		left := b.set.meter * math.Sqrt(iso/c.iso)
		tries = append(tries, try{lang.Cure{Text: fmt.Sprintf("iso %s, which makes it meter f/%s", plan.Decimal(iso, 0), plan.Decimal(left, 1)), Value: iso, Unit: "iso"}, change{Meter: roundTo(left, 1)}})
	}
	if a := c.shutter / math.Exp2(over); c.shutter > 0 && a >= 1 && a <= 360 {
		a = math.Round(a)
		left := b.set.meter * math.Sqrt(a/c.shutter)
		tries = append(tries, try{lang.Cure{Text: fmt.Sprintf("shutter %s deg, which makes it meter f/%s", plan.Decimal(a, 0), plan.Decimal(left, 1)), Value: a, Unit: "deg"}, change{Meter: roundTo(left, 1)}})
	}
	return append(tries, b.jointTry()...)
}

// jointTry offers a filter together with what it leaves for iso and shutter,
// where it takes both.
func (b run) jointTry() []try {
	e := stops.Expose(b.shot.Optics.Light, b.set.number)
	nd := float64(e.ND)
	if !e.Meter.Known() || math.Abs(nd-b.set.nd) < 0.01 {
		return nil
	}
	text := "nd " + plan.Decimal(nd, 1)
	if e.ISO.Known() {
		text += " and iso " + plan.Decimal(float64(e.ISO), 0)
	}
	if e.Shutter.Known() {
		text += " and shutter " + plan.Decimal(float64(e.Shutter), 0) + " deg"
	}
	text += ", which makes it meter f/" + plan.Decimal(float64(e.Meter), 1)
	return []try{{lang.Cure{Text: text, Value: nd, Unit: "nd"}, change{ND: &nd, Meter: float64(e.Meter)}}}
}

func roundTo(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k) / k
}
