// The search for the least of the objective, some parameters held.

package fit

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// least returns where the objective is least with the held parameters left as
// they are in th. Parameters stay within bounds by a change of variable, since
// without priors a log may push them to the edge. The steps are Newton's with
// the expected information for the curvature (Fisher's scoring), which is never
// the wrong way up.
func (l *likelihood) least(th theta, held [parameters]bool) theta {
	var free []int
	for i, h := range held {
		if !h {
			free = append(free, i)
		}
	}
	spread := func(x []float64) theta {
		out := th
		for k, i := range free {
			out[i] = inside(x[k], i)
		}
		return out
	}
	scale := 1 / max(l.total, 1)
	there := l.remembered()
	problem := optimize.Problem{
		Func: func(x []float64) float64 { return scale * there(spread(x)).value },
		Grad: func(grad, x []float64) {
			g := &there(spread(x)).g
			for k, i := range free {
				grad[k] = scale * g[i] * slope(x[k], i)
			}
		},
		Hess: func(hess *mat.SymDense, x []float64) {
			h := &there(spread(x)).h
			for a, i := range free {
				for b, j := range free {
					hess.SetSym(a, b, scale*h[i][j]*slope(x[a], i)*slope(x[b], j))
				}
			}
		},
	}
	x := make([]float64, len(free))
	for k, i := range free {
		x[k] = outside(th[i], i)
	}
	settings := &optimize.Settings{
		GradientThreshold: 1e-8,
		Converger:         &optimize.FunctionConverge{Absolute: 1e-12, Iterations: 2},
		MajorIterations:   200,
	}
	// An error of the line search says that nothing is left to gain at the
	// precision of the machine: the best place found stands.
	res, _ := optimize.Minimize(problem, x, settings, &optimize.Newton{})
	if res == nil || math.IsNaN(res.F) {
		return th
	}
	return spread(res.X)
}

// A place is the objective somewhere, with its gradient and information.
type place struct {
	at    theta
	value float64
	g     theta
	h     matrix
}

// remembered returns the objective as a function that remembers its last place:
// the search asks for value, gradient and information one by one, and each alone
// costs nearly as much as all.
func (l *likelihood) remembered() func(theta) *place {
	var last *place
	return func(at theta) *place {
		if last == nil || last.at != at {
			last = &place{at: at}
			last.value = l.objective(at, &last.g, &last.h)
		}
		return last
	}
}

// inside maps any number into the bounds of a parameter, outside does the
// reverse, slope is the derivative of inside. About the middle all is as it
// was; toward a bound steps get shorter.
func inside(x float64, i int) float64 {
	mid, half := middle(i)
	return mid + half*math.Tanh((x-mid)/half)
}

func outside(v float64, i int) float64 {
	mid, half := middle(i)
	u := min(max((v-mid)/half, -1+1e-9), 1-1e-9)
	return mid + half*math.Atanh(u)
}

func slope(x float64, i int) float64 {
	mid, half := middle(i)
	c := math.Cosh((x - mid) / half)
	return 1 / (c * c)
}

func middle(i int) (mid, half float64) {
	return (bounds[i][0] + bounds[i][1]) / 2, (bounds[i][1] - bounds[i][0]) / 2
}
