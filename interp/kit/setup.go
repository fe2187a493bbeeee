package kit

import (
	"fmt"
	"math"
	"slices"

	"pullscore/interp/plan"
)

func (l *Lens) FocalText() string {
	if !l.Zoom() {
		return plan.Decimal(l.Focal*1000, 1) + " mm"
	}
	return fmt.Sprintf("%s to %s mm", plan.Decimal(l.Focal*1000, 1), plan.Decimal(l.Longest*1000, 1))
}

// Transmission is the T-number over the f-number, from the widest of both
// scales; NaN where the lens has one scale alone.
func (l *Lens) Transmission() float64 {
	f, t := math.NaN(), math.NaN()
	for _, r := range l.stops {
		if r.t && math.IsNaN(t) {
			t = r.widest
		} else if !r.t && math.IsNaN(f) {
			f = r.widest
		}
	}
	return t / f
}

// StopsAt returns the widest and the smallest f-number at a focal length,
// linear in stops between the focal lengths that the lens gives.
func (l *Lens) StopsAt(focal float64) (widest, smallest float64) { return l.ScaleAt(focal, false) }

// ScaleAt is stopsAt on the scale of T-numbers, or on that of f-numbers; a lens
// with one scale has it for both.
func (l *Lens) ScaleAt(focal float64, t bool) (widest, smallest float64) {
	var list []stopRange
	for _, r := range l.stops {
		if r.t == t {
			list = append(list, r)
		}
	}
	if list == nil {
		list = l.stops
	}
	last := list[0]
	for _, r := range list {
		at := r.at
		if math.IsNaN(at) { // said without a focal length: at the short end
			at = l.Focal
		}
		if at >= focal {
			from := last.at
			if math.IsNaN(from) {
				from = l.Focal
			}
			if at <= from {
				return r.widest, r.smallest
			}
			u := (focal - from) / (at - from)
			mix := func(a, b float64) float64 { return a * math.Pow(b/a, u) }
			return mix(last.widest, r.widest), mix(last.smallest, r.smallest)
		}
		last = r
	}
	return last.widest, last.smallest
}

// HasScale tells whether a lens has T-numbers, or f-numbers.
func (l *Lens) HasScale(t bool) bool {
	return slices.ContainsFunc(l.stops, func(r stopRange) bool { return r.t == t })
}
