package fit

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"pullscore/interp/hand"
)

// generate makes a log by the model itself: travels and times such as racks
// have, landings spread as the maker's hand spreads them.
func generate(rng *rand.Rand, maker theta, n int) []Landing {
	list := make([]Landing, n)
	for i := range list {
		travel := 20 + 95*rng.Float64()
		time := 0.4 + 1.1*rng.Float64()
		spread := math.Hypot(hand.MotorSpread(travel, time, math.Exp(maker[throughput])), math.Exp(maker[rim]))
		list[i] = Landing{Travel: travel, Moving: time, Error: maker[bias] + spread*rng.NormFloat64()}
	}
	return list
}

// Of 200 generated logs the intervals hold their makers as often as they
// promise, nine times in ten: with makers as the priors have them, and with
// one maker away from their middle and a log long enough to say so. Three
// standard deviations of a rate of 200 are 0.064.
func TestIntervalsHoldTheirMakers(t *testing.T) {
	const logs, promised, slack = 200, 0.9, 0.064
	tests := []struct {
		name  string
		takes int
		maker func(*rand.Rand) theta
		fit   func(*Log) Fit
	}{
		{"makers as known beforehand, 36 takes", 36, fromPriors, (*Log).Fit},
		{"makers as known beforehand, 12 takes", 12, fromPriors, (*Log).Fit},
		{"the maker of the worked log, 36 takes", 36, workedMaker, (*Log).Fit},
		{"one maker, likelihood alone, 36 takes", 36, workedMaker, (*Log).Likeliest},
		{"one maker, likelihood alone, 80 takes", 80, oddMaker, (*Log).Likeliest},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(20, 26))
			var held [parameters]float64
			for range logs {
				maker := tt.maker(rng)
				f := tt.fit(logOf(generate(rng, maker, tt.takes)))
				for i, e := range []Estimate{f.Bias, f.Throughput, f.Rim} {
					v := maker[i]
					if i != bias {
						v = math.Exp(v)
					}
					if e.Lo <= v && v <= e.Hi {
						held[i]++
					}
					if !(e.Lo <= e.Value && e.Value <= e.Hi) {
						t.Fatalf("parameter %d: %v outside its own interval", i, e)
					}
				}
			}
			for i, n := range held {
				t.Logf("parameter %d: %v", i, n/logs)
				if rate := n / logs; math.Abs(rate-promised) > slack {
					t.Errorf("parameter %d: the interval holds %v of the makers, promised %v", i, rate, promised)
				}
			}
		})
	}
}

func fromPriors(rng *rand.Rand) (th theta) {
	for i, p := range priors {
		th[i] = p.mean + p.sd*rng.NormFloat64()
	}
	return th
}

// workedMaker is the maker of LOG36 in testdata/published-motion.tsv.
func workedMaker(*rand.Rand) theta { return theta{0.6, math.Log(4.6), math.Log(0.9)} }

func oddMaker(*rand.Rand) theta { return theta{-1.5, math.Log(6), math.Log(0.5)} }

func TestGradient(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	l := newLikelihood(logOf(generate(rng, workedMaker(nil), 40)).cells.sorted(), true)
	for range 50 {
		th := fromPriors(rng)
		var g theta
		l.objective(th, &g, &matrix{})
		for i := range th {
			const h = 1e-5
			a, b := th, th
			a[i] -= h
			b[i] += h
			want := (l.objective(b, nil, nil) - l.objective(a, nil, nil)) / (2 * h)
			if math.Abs(g[i]-want) > 1e-4*(1+math.Abs(want)) {
				t.Fatalf("at %v parameter %d: %v, by differences %v", th, i, g[i], want)
			}
		}
	}
}

// Sorted into cells, a long log fits as it does take by take.
func TestCoarseCellsFitAlike(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	list := generate(rng, workedMaker(nil), 6000)
	coarse := logOf(list)
	exact := &Log{cells: &cells{most: 1 << 20, coarse: 1 << 20, apart: true, held: map[key]*cell{}}}
	for i := range list {
		exact.Add(list[i])
	}
	if coarse.cells.width == 0 || exact.cells.width != 0 {
		t.Fatalf("cells of width %v and %v: the test compares nothing", coarse.cells.width, exact.cells.width)
	}
	a, b := coarse.Fit(), exact.Fit()
	for i, pair := range [][2]Estimate{{a.Bias, b.Bias}, {a.Throughput, b.Throughput}, {a.Rim, b.Rim}} {
		width := pair[1].Hi - pair[1].Lo
		for _, d := range []float64{pair[0].Value - pair[1].Value, pair[0].Lo - pair[1].Lo, pair[0].Hi - pair[1].Hi} {
			if math.Abs(d) > 0.02*width {
				t.Errorf("parameter %d: %v in cells, %v exactly", i, pair[0], pair[1])
			}
		}
	}
}

// A fit of next to nothing, or of takes that no hand makes, ends and gives
// numbers.
func TestFitOfOddLogs(t *testing.T) {
	same := Landing{Travel: 60, Moving: 1, Error: 1}
	tests := map[string][]Landing{
		"no takes":           nil,
		"one take":           {same},
		"one take a hundred": repeat(same, 100),
		"no errors at all":   repeat(Landing{Travel: 60, Moving: 1}, 40),
		"no travel":          repeat(Landing{Moving: 1, Error: 2}, 40),
		"huge errors":        repeat(Landing{Travel: 60, Moving: 0.5, Error: 3000}, 40),
		"no time to move":    repeat(Landing{Travel: 900, Moving: 0.1, Error: 1}, 40),
		"a very slow hand":   repeat(Landing{Travel: 60, Moving: 500, Error: 1}, 40),
		"a tiny time":        repeat(Landing{Travel: 60, Moving: 1e-4, Error: 1}, 40),
	}
	for name, list := range tests {
		t.Run(name, func(t *testing.T) {
			started := time.Now()
			s := logOf(list)
			f := s.Fit()
			for _, e := range []Estimate{f.Bias, f.Throughput, f.Rim} {
				if math.IsNaN(e.Value+e.Lo+e.Hi) || e.Lo > e.Value || e.Hi < e.Value {
					t.Errorf("%+v", e)
				}
			}
			g := s.Likeliest()
			if math.IsNaN(g.Bias.Value + g.Throughput.Value + g.Rim.Value) {
				t.Errorf("%+v", g)
			}
			t.Logf("%v %+v %+v", time.Since(started), f, g)
		})
	}
}

func repeat(t Landing, n int) []Landing {
	list := make([]Landing, n)
	for i := range list {
		list[i] = t
	}
	return list
}

func logOf(list []Landing) *Log {
	l := NewLog()
	for i := range list {
		l.Add(list[i])
	}
	return l
}
