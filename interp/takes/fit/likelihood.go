// The likelihood of takes under the landing model, with its gradient.
//
// A take lands with the spread that its travel and its time leave, about the
// mark and the bias. Two distributions of that spread are known here. The
// normal one is the model's own, and what takes alone say is told by it. The
// fit that a plan uses goes by Student's t instead: under the normal one three
// slips among sixty takes halve a hand's throughput. A take that the end of the
// ring held would have gone on: it counts by the probability of all that lies
// farther (Tobin 1958, Econometrica 26, 24-36; from memory).

package fit

import (
	"math"

	"pullscore/interp/hand"
)

// A matrix holds a number for every two parameters.
type matrix [parameters][parameters]float64

// A likelihood is what the takes say of a hand.
type likelihood struct {
	cells  []cell // with means in place of sums of travel and time
	total  float64
	robust bool // by t, and held to what is known of hands beforehand
}

func newLikelihood(list []cell, robust bool) *likelihood {
	l := &likelihood{robust: robust}
	for _, c := range list {
		c.travel /= c.n
		c.moving /= c.n
		l.total += c.n
		l.cells = append(l.cells, c)
	}
	return l
}

// A share is what a cell adds to minus the logarithm of the likelihood, with
// how fast that goes with the bias and with the logarithm of the variance, and
// what it carries in information on these.
type share struct {
	nll                             float64
	byBias, byVariance              float64
	aboutBias, aboutVariance, cross float64
}

// at returns minus the logarithm of the likelihood. Where g and h are not nil,
// its gradient and the expected information are added to them: the information
// that takes of such travels and times carry on the mean (Fisher 1925). Of a
// take that was held it is the square of its slope, which has that mean.
func (l *likelihood) at(th theta, g *theta, h *matrix) float64 {
	nll := 0.0
	tp, s0 := math.Exp(th[throughput]), math.Exp(th[rim])
	for i := range l.cells {
		c := &l.cells[i]
		bits := tp * c.moving * math.Ln2
		motor := hand.MotorSpread(c.travel, c.moving, tp)
		floor := s0 * c.rim
		variance := motor*motor + floor*floor
		var s share
		switch {
		case c.atEnd:
			s = c.beyond(th[bias], variance, l.robust)
		case l.robust:
			s = c.robust(th[bias], variance)
		default:
			s = c.normal(th[bias], variance)
		}
		nll += s.nll
		if g == nil {
			continue
		}
		s.add(g, h, [parameters]float64{
			throughput: -2 * motor * motor / variance * bits * (1 + 1/math.Expm1(bits)),
			rim:        2 * floor * floor / variance,
		})
	}
	return nll
}

// add adds gradient and information; by has how fast the logarithm of the
// variance goes with each parameter.
func (s *share) add(g *theta, h *matrix, by [parameters]float64) {
	g[bias] += s.byBias
	h[bias][bias] += s.aboutBias
	for _, i := range []int{throughput, rim} {
		g[i] += s.byVariance * by[i]
		h[bias][i] += s.cross * by[i]
		h[i][bias] += s.cross * by[i]
		for _, j := range []int{throughput, rim} {
			h[i][j] += s.aboutVariance * by[i] * by[j]
		}
	}
}

// normal returns the share of a cell whose takes spread normally.
func (c *cell) normal(bias, variance float64) share {
	deviation := c.squares - 2*bias*c.sum + c.n*bias*bias
	return share{
		nll:    0.5*c.n*math.Log(2*math.Pi*variance) + 0.5*deviation/variance,
		byBias: (c.n*bias - c.sum) / variance, byVariance: 0.5 * (c.n - deviation/variance),
		aboutBias: c.n / variance, aboutVariance: 0.5 * c.n,
	}
}

// robust returns the share of a cell whose takes spread by t. Its information is
// that of Lange, Little & Taylor 1989.
func (c *cell) robust(bias, variance float64) share {
	scale := consistent * math.Sqrt(variance)
	z := (c.sum/c.n - bias) / scale
	pull := pull4(z)
	return share{
		nll:    c.n * (math.Log(scale) - logDensity4(z)),
		byBias: -c.n * pull / scale, byVariance: 0.5 * c.n * (1 - z*pull),
		aboutBias: c.n * (freedom + 1.0) / (freedom + 3.0) / (scale * scale), aboutVariance: c.n * freedom / (2 * (freedom + 3.0)),
	}
}

// beyond returns the share of a cell whose takes would have gone on past where
// the end of the ring held them.
func (c *cell) beyond(bias, variance float64, robust bool) share {
	scale, nll, hazard := math.Sqrt(variance), 0.0, 0.0
	if robust {
		scale *= consistent
	}
	z := (c.sum/c.n - bias) / scale
	if robust {
		nll, hazard = -math.Log(tail4(z)), hazard4(z)
	} else {
		nll, hazard = logTail(z)
	}
	byBias, byVariance := -hazard/scale, -hazard*z/2
	return share{
		nll: c.n * nll, byBias: c.n * byBias, byVariance: c.n * byVariance,
		aboutBias: c.n * byBias * byBias, aboutVariance: c.n * byVariance * byVariance, cross: c.n * byBias * byVariance,
	}
}

// objective is what the fit makes least: minus the logarithm of the likelihood
// and, of a robust fit, of what is known beforehand, up to a constant. Gradient
// and information are added to g and h where these are not nil.
func (l *likelihood) objective(th theta, g *theta, h *matrix) float64 {
	sum := l.at(th, g, h)
	if !l.robust {
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
