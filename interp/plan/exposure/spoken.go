// The scale of stops that a shot speaks.

package exposure

import (
	"math"

	"pullscore/optics"
)

// Spoken is the scale of stops that a shot speaks: f-numbers or T-numbers, as its own
// stop is written. Every stop that is printed of the shot is on this scale, and so is
// every stop that can be written into it.
type Spoken struct {
	T                bool    // T-numbers
	PerT             float64 // T-number over f-number; 0 or NaN if the lens has one scale
	Widest, Smallest float64 // of the lens at the focal length set, on this scale
}

// Mark returns the number on this scale of an f-number. If the lens has one scale,
// both are the same.
func (k Spoken) Mark(number float64) float64 {
	if !k.T || !k.Both() {
		return number
	}
	return clean(number * k.PerT)
}

// Number returns the f-number of a number on this scale. The f-number decides the
// depth of field.
func (k Spoken) Number(mark float64) float64 {
	if !k.T || !k.Both() {
		return mark
	}
	return mark / k.PerT
}

// Both reports whether the lens has f-numbers and T-numbers.
func (k Spoken) Both() bool { return k.PerT > 0 }

// Other returns the number on the lens's other scale for an f-number; NaN if the lens
// has one scale.
func (k Spoken) Other(number float64) float64 {
	if k.T && k.Both() {
		return number
	}
	if !k.Both() {
		return math.NaN()
	}
	return clean(number * k.PerT)
}

// Passes returns the T-number, or without one the f-number, that decides the light at
// an f-number. It is exact: a mark of the shot's own scale counts as the whole number of
// thirds that it stands for.
func (k Spoken) Passes(number float64) float64 {
	n := optics.ExactStop(k.Mark(number))
	if k.Both() && !k.T {
		n *= k.PerT
	}
	return n
}

// clean returns a number without its last digits, where they hold only the error of a
// conversion there and back: so that 2.8 is the mark 2.8 again.
func clean(v float64) float64 {
	const digits = 1e9
	return math.Round(v*digits) / digits
}
