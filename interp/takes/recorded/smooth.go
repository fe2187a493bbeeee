// How long a movement took, from the curve that fits it best.
//
// A hand sets out and lands gently, so the frame on which it first moves and
// that on which it has come to rest depend on how fine the recording is: with
// steps of 1.5 deg a movement of 2.5 s reads 0.75 s too short. The middle of
// the movement does not have that fault, and shows both ends: the least squares
// of a + b M((t - t0)/T), where M is minimum jerk, or a straight ramp where the
// plan moves evenly. Offset a and size b are linear and follow from t0 and T,
// which are searched for.
//
// A curve of one smooth movement leaves out what comes after it. A correction is
// part of the movement, since the landing has it, so the time goes to the last
// frame that is away from the rest, where that is later. A movement that no such
// curve fits is timed by its speed instead (motion.go).

package recorded

import (
	"math"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/stat"

	"pullscore/interp/hand"
)

const (
	// shortest is the least time that a fit gives a movement, seconds.
	shortest = 0.04

	// middle is the share of its time in which minimum jerk goes from a quarter to
	// three quarters of its way. It only says where the search begins.
	middle = 0.2812
)

// A fit is the smooth movement nearest to a stretch of a curve.
type fit struct {
	start, lasts float64 // seconds
	rms          float64 // what it leaves, degrees
}

// profile returns the share of its way that a movement has gone after a share
// of its time.
func profile(even bool) func(u float64) float64 {
	if even {
		return func(u float64) float64 { return min(max(u, 0), 1) }
	}
	return func(u float64) float64 { return hand.MinJerk(min(max(u, 0), 1)) }
}

// fitMovement returns the smooth or even movement nearest to angles at times, of
// which there are at least three, and ok false where they do not go up.
func fitMovement(times, angles []float64, even bool) (best fit, ok bool) {
	early, late := crossing(times, angles, 0.25), crossing(times, angles, 0.75)
	travel := angles[len(angles)-1] - angles[0]
	if !(travel > 0) {
		return fit{}, false
	}
	share := middle
	if even {
		share = 0.5
	}
	lasts := max((late-early)/share, 0.1)
	start := (early+late)/2 - lasts/2
	way, shape := profile(even), make([]float64, len(times))
	// The search goes by steps of 0.05 s and 0.1 s.
	at := func(x []float64) (t0, T float64) { return start + 0.05*x[0], max(lasts+0.1*x[1], shortest) }
	left := func(x []float64) float64 {
		t0, T := at(x)
		for i, t := range times {
			shape[i] = way((t - t0) / T)
		}
		return unexplained(shape, angles) / (travel * travel)
	}
	settings := &optimize.Settings{
		MajorIterations: 400,
		Converger:       &optimize.FunctionConverge{Absolute: 1e-12, Iterations: 30},
	}
	found, err := optimize.Minimize(optimize.Problem{Func: left}, []float64{0, 0}, settings, &optimize.NelderMead{SimplexSize: 1})
	if err != nil {
		return fit{}, false
	}
	best.start, best.lasts = at(found.X)
	best.rms = travel * math.Sqrt(found.F/float64(len(times)))
	return best, !math.IsNaN(best.start + best.lasts + best.rms)
}

// unexplained returns the sum of squares that a + b shape leaves of angles, with
// the best a and b.
func unexplained(shape, angles []float64) float64 {
	a, b := stat.Mean(angles, nil), 0.0
	if v := stat.Variance(shape, nil); v > 1e-12 {
		b = stat.Covariance(shape, angles, nil) / v
		a -= b * stat.Mean(shape, nil)
	}
	sum := 0.0
	for i, x := range shape {
		d := angles[i] - a - b*x
		sum += d * d
	}
	return sum
}

// crossing returns when angles first pass a share of the way from the least to
// the greatest of them.
func crossing(times, angles []float64, share float64) float64 {
	lo, hi := angles[0], angles[0]
	for _, h := range angles {
		lo, hi = min(lo, h), max(hi, h)
	}
	for i, h := range angles {
		if h >= lo+share*(hi-lo) {
			return times[i]
		}
	}
	return times[len(times)-1]
}

// restAfter returns when the hand is at rest for good: the time of the frame
// after the last that is farther from the rest than the tolerance, or that of
// the first frame.
func restAfter(times, angles []float64, rest, tolerance float64) float64 {
	for i := len(times) - 1; i >= 0; i-- {
		if math.Abs(angles[i]-rest) > tolerance {
			return times[min(i+1, len(times)-1)]
		}
	}
	return times[0]
}
