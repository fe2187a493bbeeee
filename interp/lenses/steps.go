// Where a ring sets which distance: its marks, and halfway between them, where the law
// knows least.

package lenses

import (
	"math"

	"pullscore/interp/plan"
	"pullscore/optics/ring"
)

// A Step is a distance on the ring.
type Step struct {
	Distance plan.Number `json:"distance_m"` // from the sensor; null: infinity
	Deg      plan.Number `json:"deg"`        // from the closest stop
	Rim      plan.Number `json:"rim_mm,omitzero"`
	Sigma    plan.Number `json:"sigma_deg,omitzero"` // how well Deg is known, one standard deviation
	Kind     string      `json:"kind"`               // mark, default or between
}

// The kinds of a Step.
const (
	Marked  = "mark"    // somebody wrote it
	Default = "default" // a mark that follows from closest or from the throw
	Between = "between" // by the law alone
)

// step returns the step at a distance in metres.
func (of *Lens) step(law *ring.Law, distance float64, kind string) Step {
	deg := law.Angle(distance)
	s := Step{Distance: plan.Number(distance), Deg: plan.Number(deg), Rim: plan.None(), Sigma: plan.Number(law.Sigma(distance)), Kind: kind}
	if of.Ring.Girth.Known() {
		s.Rim = of.Ring.Girth * plan.Number(deg) / 360
	}
	return s
}

// take fills in what the law of the ring knows; nil knows nothing.
func (of *Lens) take(law *ring.Law) {
	if of.Law = law; law == nil {
		return
	}
	marks := law.Marks()
	if !law.Measured() { // the two marks of a macro lens are the ends of the ring
		of.Factor[0], of.Factor[1] = law.Factors(math.Inf(1))
		for _, d := range of.Sheet {
			if d := float64(d); !math.IsNaN(law.Angle(d)) {
				of.Steps = append(of.Steps, of.step(law, d, Between))
			}
		}
		return
	}
	for i, m := range marks {
		kind := Marked
		if m.Default {
			kind = Default
		}
		of.Steps = append(of.Steps, of.step(law, m.Distance, kind))
		if i+1 < len(marks) {
			of.Steps = append(of.Steps, of.step(law, halfway(law, m.Distance, marks[i+1].Distance, of.Imperial), Between))
		}
	}
	if near, far, ok := law.Between(law.Next()); ok {
		of.Next = plan.Number(halfway(law, near.Distance, far.Distance, of.Imperial))
	}
}

// halfway returns the distance between two marks at which the law knows least, as a
// tape shows it: the middle in 1/(D - c).
func halfway(law *ring.Law, near, far float64, imperial bool) float64 {
	q := func(d float64) float64 { return 1 / (d - law.Origin()) }
	d := law.Origin() + 2/(q(near)+q(far))
	if on := ring.OnTape(d, imperial); on > near && on < far {
		return on
	}
	return d
}
