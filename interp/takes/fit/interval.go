// Intervals of the fit.

package fit

import "math"

// drop is by how much minus the logarithm of a density rises from its least to
// the ends of the interval that holds 90 % of it, where it is normal: half of
// the 0.9 quantile of chi-squared with one degree of freedom, 2.7055/2 (Wilks
// 1938, Ann Math Stat 9, 60-62).
const drop = 1.352772

// A marginal is what the takes say of one parameter, the others being whatever
// they are. Of a robust fit it is minus the logarithm of its density, by Laplace's
// method (Tierney & Kadane 1986, J Am Stat Assoc 81, 82-86); of one by the
// takes alone, minus the
// logarithm of the profile of the likelihood.
type marginal struct {
	l *likelihood
	i int
}

// A stop is a place on a marginal.
type stop struct {
	at    theta
	value float64
}

// stop returns the marginal where the parameter is v; the others are sought
// from where another stop has them.
func (m marginal) stop(v float64, from theta) stop {
	var held [parameters]bool
	held[m.i] = true
	from[m.i] = v
	at := m.l.least(from, held)
	var g theta
	var h matrix
	value := m.l.objective(at, &g, &h)
	if a, b := (m.i+1)%parameters, (m.i+2)%parameters; m.l.robust {
		value += 0.5 * math.Log(h[a][a]*h[b][b]-h[a][b]*h[b][a])
	}
	return stop{at, value}
}

// interval returns a parameter with its 90 % interval.
func (l *likelihood) interval(best theta, i int) Estimate {
	m := marginal{l, i}
	walk, least := m.walk(best)
	limit := least + drop
	e := Estimate{best[i], math.Inf(-1), math.Inf(1)}
	if first := walk[0]; first.value >= limit {
		e.Lo = m.crossing(walk, limit)
	}
	if last := walk[len(walk)-1]; last.value >= limit {
		back := make([]stop, len(walk))
		for k := range walk {
			back[len(walk)-1-k] = walk[k]
		}
		e.Hi = m.crossing(back, limit)
	}
	e.Lo, e.Hi = min(e.Lo, e.Value), max(e.Hi, e.Value)
	return e
}

// walk takes stops from the best place out to both sides until the marginal
// has risen by more than drop over its least, or a bound is reached. The stops
// are in order of the parameter.
func (m marginal) walk(best theta) (walk []stop, least float64) {
	start := m.stop(best[m.i], best)
	walk, least = []stop{start}, start.value
	for _, side := range []float64{-1, 1} {
		last, step := start, side*m.step(best)
		for {
			v := last.at[m.i] + step
			if v <= bounds[m.i][0] || v >= bounds[m.i][1] {
				break
			}
			last = m.stop(v, last.at)
			least = min(least, last.value)
			if side < 0 {
				walk = append([]stop{last}, walk...)
			} else {
				walk = append(walk, last)
			}
			if last.value > least+drop {
				break
			}
			step *= 1.25
		}
	}
	return walk, m.bottom(walk, least)
}

// bottom returns the least of the marginal between its stops, by the parabola
// through the lowest and those beside it.
func (m marginal) bottom(walk []stop, least float64) float64 {
	for k := 1; k+1 < len(walk); k++ {
		if walk[k].value > least {
			continue
		}
		a, b, c := walk[k-1], walk[k], walk[k+1]
		x, y := a.at[m.i]-b.at[m.i], c.at[m.i]-b.at[m.i]
		p, q := a.value-b.value, c.value-b.value
		curvature := (p/x - q/y) / (x - y)
		slope := p/x - curvature*x
		if curvature > 0 {
			return b.value - slope*slope/(4*curvature)
		}
	}
	return least
}

// crossing returns where the marginal comes to limit on the way in from the
// first stop, which lies above it.
func (m marginal) crossing(walk []stop, limit float64) float64 {
	k := 0
	for k+1 < len(walk) && walk[k+1].value >= limit {
		k++
	}
	if k+1 == len(walk) {
		return walk[k].at[m.i]
	}
	out, in := walk[k], walk[k+1]
	for range 40 {
		share := (out.value - limit) / (out.value - in.value)
		v := out.at[m.i] + min(max(share, 0.05), 0.95)*(in.at[m.i]-out.at[m.i])
		mid := m.stop(v, in.at)
		if math.Abs(mid.value-limit) < 1e-6 || math.Abs(out.at[m.i]-in.at[m.i]) < 1e-9 {
			return v
		}
		if mid.value >= limit {
			out = mid
		} else {
			in = mid
		}
	}
	return in.at[m.i]
}

// step returns the length of the first step of a walk: a third of what the
// information says is the way to the end of the interval.
func (m marginal) step(best theta) float64 {
	var g theta
	var h matrix
	m.l.objective(best, &g, &h)
	if information := h[m.i][m.i]; information > 1e-6 {
		return min(max(math.Sqrt(2*drop/information)/3, 1e-6), 1)
	}
	return 0.5
}
