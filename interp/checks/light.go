// light: the stop against what the meter asks for.

package checks

import (
	"fmt"
	"math"

	"pullscore/interp/change"
	"pullscore/interp/inwords"
	"pullscore/interp/names"
	"pullscore/interp/plan"
	"pullscore/interp/shot"
	"pullscore/interp/stops"
	"pullscore/lang"
	"pullscore/optics"
)

func checkLight(b Run) {
	if math.IsNaN(b.Set.Meter) {
		return
	}
	over := b.overexposure(b.Set.ND)
	if math.Abs(over) <= stops.LightSlack {
		return
	}
	more, word := over > 0, "too dark"
	if more {
		word = "too bright"
	}
	b.Tell(shot.Finding{Diagnostic: lang.Diagnostic{
		Code: "light", Severity: lang.Warning, Range: b.Set.StopAt,
		Message: fmt.Sprintf("at %s the picture is %s stops %s for the light", b.Set.StopText, plan.Decimal(math.Abs(over), 1), word),
		Figures: []lang.Figure{shot.Figure("stops", over), shot.Figure("nd", b.Set.ND)},
	}, Tries: func() []change.Change { return b.lightTries(over) }})
}

// overexposure is how many stops too much light falls on the sensor: what the
// meter asks for against the stop, on exact stops, less the nd.
func (b Run) overexposure(nd float64) float64 {
	light := b.Shot.Optics.Light
	if b.Set.Stop.Dim == names.DimTStop { // says the light itself
		light.PerT = math.NaN()
		return light.Over(b.Set.Stop.V, nd)
	}
	return light.Over(b.Set.Number, nd)
}

// lightTries offers nd in steps of a stop, iso alone, the shutter alone, and a
// filter with what it leaves for iso and shutter. These two change what the
// meter reads, so the new reading stands with them.
func (b Run) lightTries(over float64) []change.Change {
	var tries []change.Change
	nd := math.Round((b.Set.ND+optics.NDDensity(over))/0.3) * 0.3
	if nd >= 0 && nd <= 3.9 && math.Abs(nd-b.Set.ND) > 0.01 {
		nd = math.Round(nd*10) / 10
		tries = append(tries, change.Change{ND: &nd})
	}
	c := b.Set.Camera
	if iso := stops.NearestISO(c.ISO / math.Exp2(over)); c.ISO > 0 && iso != c.ISO {
		left := b.Set.Meter * math.Sqrt(iso/c.ISO)
		tries = append(tries, change.Change{ISO: iso, Meter: inwords.RoundTo(left, 1)})
	}
	if a := c.Shutter / math.Exp2(over); c.Shutter > 0 && a >= 1 && a <= 360 {
		a = math.Round(a)
		left := b.Set.Meter * math.Sqrt(a/c.Shutter)
		tries = append(tries, change.Change{Shutter: a, Meter: inwords.RoundTo(left, 1)})
	}
	return append(tries, b.jointTry()...)
}

// jointTry offers a filter together with what it leaves for iso and shutter,
// where it takes both.
func (b Run) jointTry() []change.Change {
	e := stops.Expose(b.Shot.Optics.Light, b.Set.Number)
	nd := float64(e.ND)
	if !e.Meter.Known() || math.Abs(nd-b.Set.ND) < 0.01 {
		return nil
	}
	ch := change.Change{ND: &nd, Meter: float64(e.Meter)}
	if e.ISO.Known() {
		ch.ISO = float64(e.ISO)
	}
	if e.Shutter.Known() {
		ch.Shutter = float64(e.Shutter)
	}
	return []change.Change{ch}
}
