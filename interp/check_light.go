// light: the stop against what the meter asks for.

package interp

import (
	"fmt"
	"math"

	"pullscore/interp/plan"
	"pullscore/lang"
	"pullscore/optics"
)

// lightSlack is how far the stop may be from the light, stops.
const lightSlack = 0.25

func checkLight(b *builder) {
	if math.IsNaN(b.set.meter) {
		return
	}
	over := b.overexposure(b.set.nd)
	if math.Abs(over) <= lightSlack {
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
func (b *builder) overexposure(nd float64) float64 {
	light := b.shot.Optics.Light
	if b.set.stop.dim == dimTStop { // says the light itself
		light.PerT = math.NaN()
		return light.Over(b.set.stop.v, nd)
	}
	return light.Over(b.set.number, nd)
}

// lightTries offers nd in steps of a stop, and with the light that is left the
// camera's iso or shutter. These change what the meter reads, so the new
// reading stands with them.
func (b *builder) lightTries(over float64) []try {
	var tries []try
	nd := math.Round((b.set.nd+optics.NDDensity(over))/0.3) * 0.3
	if nd >= 0 && nd <= 3.9 && math.Abs(nd-b.set.nd) > 0.01 {
		nd = math.Round(nd*10) / 10
		tries = append(tries, try{lang.Cure{Text: "nd " + plan.Decimal(nd, 1), Value: nd, Unit: "nd"}, change{ND: &nd}})
	}
	c := b.set.camera
	if iso := nearestISO(c.iso / math.Exp2(over)); c.iso > 0 && iso != c.iso {
		left := b.set.meter * math.Sqrt(iso/c.iso)
		tries = append(tries, try{lang.Cure{Text: fmt.Sprintf("iso %s, which makes it meter f/%s", plan.Decimal(iso, 0), plan.Decimal(left, 1)), Value: iso, Unit: "iso"}, change{Meter: roundTo(left, 1)}})
	}
	if a := c.shutter / math.Exp2(over); c.shutter > 0 && a >= 1 && a <= 360 {
		a = math.Round(a)
		left := b.set.meter * math.Sqrt(a/c.shutter)
		tries = append(tries, try{lang.Cure{Text: fmt.Sprintf("shutter %s deg, which makes it meter f/%s", plan.Decimal(a, 0), plan.Decimal(left, 1)), Value: a, Unit: "deg"}, change{Meter: roundTo(left, 1)}})
	}
	return tries
}

func roundTo(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k) / k
}

// nearestISO is the nearest iso of the usual third-stop scale.
func nearestISO(v float64) float64 {
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
