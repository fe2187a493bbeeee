// The axis of time where a cut has taken something out of a shot.
//
// What is shown of the shot lies at the scale of the sheet, and each stretch that is not
// in the cut is narrowed to one width, however long it is: nobody pulls focus in it. So
// time runs in straight pieces, and the axis leads from time to place and back.

package times

import (
	"math"

	"pullscore/interp/plan"
)

// Narrowed is how wide a stretch is that the cut has taken out, in millimetres. One that is
// no wider at the scale of the sheet stays as it is.
const Narrowed = 12.0

// An Axis says where the times of a shot lie, in millimetres from time 0.
type Axis struct {
	perSecond float64
	narrow    []plan.Stretch // in their order
}

// NewAxis returns the axis of a scale in millimetres a second, on which those stretches
// are narrowed that would be wider.
func NewAxis(perSecond float64, removed []plan.Stretch) Axis {
	a := Axis{perSecond: perSecond}
	for _, s := range removed {
		if (s.To-s.From)*perSecond > Narrowed+1e-9 {
			a.narrow = append(a.narrow, s)
		}
	}
	return a
}

// Broken reports whether anything is narrowed.
func (a Axis) Broken() bool { return len(a.narrow) > 0 }

// Narrow returns the stretches that are narrowed.
func (a Axis) Narrow() []plan.Stretch { return a.narrow }

// At returns where a time lies.
func (a Axis) At(t float64) float64 {
	x, from := 0.0, 0.0 // what is passed of the axis, and until when
	for _, s := range a.narrow {
		if t <= s.From {
			break
		}
		x += (s.From-from)*a.perSecond + Narrowed*min(1, (t-s.From)/(s.To-s.From))
		from = s.To
	}
	return x + max(0, t-from)*a.perSecond
}

// Time returns which time lies at a place.
func (a Axis) Time(x float64) float64 {
	from := 0.0
	for _, s := range a.narrow {
		plain := (s.From - from) * a.perSecond
		if x <= plain {
			break
		}
		if x -= plain; x < Narrowed {
			return s.From + x/Narrowed*(s.To-s.From)
		}
		x, from = x-Narrowed, s.To
	}
	return from + x/a.perSecond
}

// Within returns the narrowed stretch that a time lies inside of, not at its ends.
func (a Axis) Within(t float64) (s plan.Stretch, ok bool) {
	for _, s := range a.narrow {
		if t > s.From+1e-9 && t < s.To-1e-9 {
			return s, true
		}
	}
	return s, false
}

// Holds reports whether all of a stretch of time is narrowed away.
func (a Axis) Holds(from, to float64) bool {
	for _, s := range a.narrow {
		if from >= s.From-1e-9 && to <= s.To+1e-9 && to > s.From && from < s.To {
			return true
		}
	}
	return false
}

// Parts returns the times between two at which the axis breaks, with those two.
func (a Axis) Parts(from, to float64) []float64 {
	times := []float64{from}
	for _, s := range a.narrow {
		for _, t := range []float64{s.From, s.To} {
			if t > times[len(times)-1]+1e-9 && t < to-1e-9 {
				times = append(times, t)
			}
		}
	}
	return append(times, to)
}

// cuts returns the times at which windows of so many millimetres start, and the end: on
// half seconds, or where something begins that is narrowed.
func (a Axis) cuts(seconds, each float64) []float64 {
	list := []float64{0}
	for {
		from := list[len(list)-1]
		to := a.Time(a.At(from) + each)
		if to >= seconds-Lap {
			return append(list, seconds)
		}
		if half := math.Floor(to*2) / 2; half > from+Lap {
			to = half
		}
		if s, inside := a.Within(to); inside && s.From > from+Lap {
			to = s.From
		} else if inside {
			to = s.To
		}
		if to >= seconds-Lap { // what is narrowed ends the shot
			return append(list, seconds)
		}
		list = append(list, to)
	}
}

// Layout returns the axis on which so many seconds lie in a room of so many millimetres, at
// the greatest scale of the ladder at which they do. If they do at none, long is true, and
// the scale is the least.
func Layout(seconds, room float64, removed []plan.Stretch) (axis Axis, long bool) {
	for _, rung := range ladder {
		if axis = NewAxis(rung, removed); axis.At(seconds) <= room+1e-9 {
			return axis, false
		}
	}
	return axis, true
}

// PerSecond returns the scale of what is not narrowed, in millimetres.
func (a Axis) PerSecond() float64 { return a.perSecond }

// Windows returns the times at which windows of a long shot start, and the end, in seconds:
// each as wide as so many seconds.
func (a Axis) Windows(seconds, each float64) []float64 {
	if !a.Broken() {
		return Cuts(seconds, each)
	}
	return a.cuts(seconds, each*a.perSecond)
}
