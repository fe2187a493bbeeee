// Light lost near: a lens that focuses as a unit moves away from the sensor as it
// focuses nearer, and the same light is spread over more of it.

package built

import (
	"math"

	"pullscore/interp/plan"
)

// nearLoss returns the light lost at the places where the focus rests: where it is
// as the shot starts, and where every pull ends.
func (b *Shot) nearLoss() plan.Loss {
	loss := plan.Loss{Least: math.Inf(1), Most: math.Inf(-1)}
	add := func(stops float64, at string) {
		if math.IsNaN(stops) || math.IsInf(stops, 0) { // inside the closest, which is told
			return
		}
		loss.Least = min(loss.Least, stops)
		if stops > loss.Most {
			loss.Most, loss.At = stops, at
		}
	}
	if b.Start.Ok {
		add(b.Plan.NearLoss(b.Plan.Optics.Start.Distance, 0), b.Plan.Optics.Start.Text)
	}
	for _, p := range b.Pulls {
		if !p.Rack.Failed {
			add(float64(p.Plan.NearLoss), p.Plan.Target)
		}
	}
	if loss.At == "" {
		return plan.Loss{}
	}
	return loss
}
