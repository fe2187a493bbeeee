// The likelihood of takes under the landing model, with its gradient.

package takes

import (
	"math"

	"pullscore/interp/hand"
)

// A matrix holds a number for every two parameters.
type matrix [parameters][parameters]float64

// A likelihood is what the takes say of a hand.
type likelihood struct {
	cells []cell // with means in place of sums of travel and time
	total float64
	prior bool
}

func newLikelihood(cs *cells, withPriors bool) *likelihood {
	l := &likelihood{prior: withPriors}
	for _, c := range cs.sorted() {
		c.travel /= c.n
		c.moving /= c.n
		l.total += c.n
		l.cells = append(l.cells, c)
	}
	return l
}

// at returns minus the logarithm of the likelihood. Where g and h are not nil,
// its gradient and the expected information are added to them: the information
// that takes of such travels and times carry on the mean (Fisher 1925).
func (l *likelihood) at(th theta, g *theta, h *matrix) float64 {
	nll := 0.0
	tp, s0 := math.Exp(th[throughput]), math.Exp(th[rim])
	for i := range l.cells {
		c := &l.cells[i]
		bits := tp * c.moving * math.Ln2
		motor := hand.MotorSpread(c.travel, c.moving, tp)
		floor := s0 * c.rim
		variance := motor*motor + floor*floor
		deviation := c.squares - 2*th[bias]*c.sum + c.n*th[bias]*th[bias]
		nll += 0.5*c.n*math.Log(2*math.Pi*variance) + 0.5*deviation/variance
		if g == nil {
			continue
		}
		byTP := -2 * motor * motor / variance * bits * (1 + 1/math.Expm1(bits)) // of ln variance
		byRim := 2 * floor * floor / variance
		byVariance := 0.5 * (c.n - deviation/variance)
		g[bias] += (c.n*th[bias] - c.sum) / variance
		g[throughput] += byVariance * byTP
		g[rim] += byVariance * byRim
		h[bias][bias] += c.n / variance
		h[throughput][throughput] += 0.5 * c.n * byTP * byTP
		h[rim][rim] += 0.5 * c.n * byRim * byRim
		h[throughput][rim] += 0.5 * c.n * byTP * byRim
		h[rim][throughput] += 0.5 * c.n * byTP * byRim
	}
	return nll
}

// objective is what the fit makes least: minus the logarithm of the likelihood
// and, with priors, of what is known beforehand, up to a constant. Gradient and
// information are added to g and h where these are not nil.
func (l *likelihood) objective(th theta, g *theta, h *matrix) float64 {
	sum := l.at(th, g, h)
	if !l.prior {
		return sum
	}
	for i, p := range priors {
		z := (th[i] - p.mean) / p.sd
		sum += z * z / 2
		if g != nil {
			g[i] += z / p.sd
			h[i][i] += 1 / (p.sd * p.sd)
		}
	}
	return sum
}
