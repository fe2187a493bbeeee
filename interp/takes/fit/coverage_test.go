// How often the ranges of a fit hold the hand that made the takes.

package fit

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"pullscore/interp/hand"
)

// A world is a way in which takes come about that the fit may not know.
type world struct {
	name   string
	spoilt bool // landings are not what the model has
	told   bool // rates are told and not held to anything
	make   func(rng *rand.Rand, maker theta, n int) []Landing
}

var worlds = []world{
	{"clean", false, false, generate},
	{"5 % slips", true, false, func(rng *rand.Rand, maker theta, n int) []Landing {
		list := generate(rng, maker, n)
		for i := range list {
			if rng.Float64() < 0.05 {
				list[i].Error += math.Copysign(15, rng.Float64()-0.5)
			}
		}
		return list
	}},
	{"t3 tails", true, false, func(rng *rand.Rand, maker theta, n int) []Landing {
		return landed3(rng, maker, n, middle3)
	}},
	{"t3 tails, wider", true, true, func(rng *rand.Rand, maker theta, n int) []Landing {
		return landed3(rng, maker, n, 1)
	}},
	{"cut off by a stop", true, false, func(rng *rand.Rand, maker theta, n int) []Landing {
		list := generate(rng, maker, n)
		for i := range list {
			if end := 0.5 + 2*rng.Float64(); list[i].Error > end {
				list[i].Error, list[i].AtEnd = end, true
			}
		}
		return list
	}},
}

// middle3 is by what landings of t with 3 degrees of freedom are to be multiplied
// so that 68.3 % lie within the spread, as of normal ones: 1 over the quantile
// 0.8413, which is 1.1969. By its plain scale such a t has 1.7 times the standard
// deviation, and no fit can know which of the two is meant.
const middle3 = 1 / 1.1969

// landed3 makes takes whose errors have the tails of t with 3 degrees of
// freedom, at so many times the spread of the model.
func landed3(rng *rand.Rand, maker theta, n int, times float64) []Landing {
	list := generate(rng, maker, n)
	for i := range list {
		t := &list[i]
		spread := math.Hypot(hand.MotorSpread(t.Travel, t.Moving, math.Exp(maker[throughput])), math.Exp(maker[rim]))
		squares := 0.0
		for range 3 {
			squares += math.Pow(rng.NormFloat64(), 2)
		}
		t.Error = maker[bias] + times*spread*rng.NormFloat64()/math.Sqrt(squares/3)
	}
	return list
}

// coverage returns the share of so many logs whose ranges hold their maker, a
// parameter each.
func coverage(w world, logs, n int) (held [parameters]float64) {
	rng := rand.New(rand.NewPCG(uint64(n), 90))
	for range logs {
		maker := fromPriors(rng)
		f := logOf(w.make(rng, maker, n)).Fit()
		for i, e := range []Estimate{f.Bias, f.Throughput, f.Rim} {
			v := maker[i]
			if i != bias {
				v = math.Exp(v)
			}
			if e.Lo <= v && v <= e.Hi {
				held[i] += 1 / float64(logs)
			}
		}
	}
	return held
}

// logs is how many logs a rate is taken over. Where it is not said, few do, and
// only the worst worlds fail.
var logs = flag.Int("logs", 0, "logs for each rate of TestCoverage; 300 for the figures")

// The ranges of a fit hold the hand that made the takes about as often as they
// promise, nine times in ten, with hands as the priors have them: 0.85 to 0.95
// of clean logs, and at least 0.8 where landings are not what the model has. Of
// five takes the rates are only told. The few logs of a run without -logs hold
// rates to three standard deviations of theirs besides.
func TestCoverage(t *testing.T) {
	n, slack := *logs, 0.0
	if n == 0 {
		n = 40
		slack = 3 * math.Sqrt(0.9*0.1/float64(n))
	}
	for _, w := range worlds {
		for _, takes := range []int{5, 36, 80} {
			if *logs == 0 && takes != 36 {
				continue
			}
			held := coverage(w, n, takes)
			t.Logf("%-18s %3d takes: bias %.3f, throughput %.3f, spread %.3f", w.name, takes, held[bias], held[throughput], held[rim])
			lo, hi := 0.85, 0.95
			if w.spoilt {
				lo, hi = 0.8, 1
			}
			for i, rate := range held {
				if takes > 5 && !w.told && (rate < lo-slack || rate > hi+slack) {
					t.Errorf("%s, %d takes, parameter %d: the ranges hold %.3f of the hands, wanted %.2f to %.2f", w.name, takes, i, rate, lo, hi)
				}
			}
		}
	}
}
