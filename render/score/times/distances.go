// The round distances that a scale shows.

package times

import (
	"math"

	"pullscore/interp/plan"
)

// Round distances, the roundest first, in metres or in feet; and the steps of
// those that are tried where a narrow range has hardly any of them.
var (
	round  = []float64{1, 2, 5, 0.5, 10, 3, 1.5, 0.7, 0.3, 20, 0.2, 50, 100, 4, 0.8, 0.6, 0.4, 2.5, 7, 1.2, 0.25, 0.1, 0.15, 200, 500}
	finer  = []float64{0.1, 0.05, 0.02, 0.01, 0.005}
	finerF = []float64{1. / 2, 1. / 4, 1. / 12, 1. / 24}
)

// Distances returns the round distances from far to near, both in 1/m, that fit beside
// those already taken: the roundest, in metres, infinity first.
func Distances(imperial bool, far, near float64, fits func(m float64, taken []float64) bool) []float64 {
	unit, steps := 1.0, finer
	if imperial {
		unit, steps = plan.InchesPerFoot*plan.Inch, finerF
	}
	var ticks []float64
	try := func(m float64) {
		if inv := 1 / m; inv >= far && inv <= near && fits(m, ticks) {
			ticks = append(ticks, m)
		}
	}
	try(math.Inf(1))
	for _, r := range round {
		try(r * unit)
	}
	for _, step := range steps {
		if len(ticks) >= 3 || far <= 0 {
			break
		}
		from, to := math.Ceil(1/near/unit/step), math.Floor(1/far/unit/step)
		for n := from; n <= min(to, from+200); n++ {
			try(n * step * unit)
		}
	}
	return ticks
}
