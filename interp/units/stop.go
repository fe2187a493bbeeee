// Stops and gears.

package units

import "math"

// A Round says how to write a stop that lies between two marks.
type Round uint8

const (
	Near   Round = iota // as near as the number says
	Open                // to the mark that lets more light in
	Closed              // to the mark that lets less light in
	Exact               // as it is, also near a mark: a stop that the plan or kit gives
)

// marks are the third stops as lenses show them, from 0.7 up. Each is the rounded name
// of a power of the sixth root of two; ISO 517 and common practice. optics has the
// same scale, and a test compares the two.
var marks = [...]float64{
	0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11,
	13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80, 90, 102, 114, 128,
}

// onMark is how near to a mark a stop takes the name of the mark, as a share of its
// number. onExact is the same for the exact number of the mark; that number differs
// from the mark by more than onMark only at 1.2.
const onMark, onExact = 0.03, 0.005

// Stop returns a stop such as "f/2.8", or "T2.9" if t is true. Within 3 % of a mark it
// returns that mark; between two marks r decides. It returns "" for NaN and for an
// infinite number.
func (s Style) Stop(n float64, t bool, r Round) string {
	if _, ok := s.unwritten(n); ok {
		return ""
	}
	name := "f/"
	if t {
		name = "T"
	}
	if r == Exact {
		return name + Decimal(n, 2)
	}
	below := 0 // the last mark that is not above n
	for i := range marks {
		if stands(i) <= n {
			below = i
		}
	}
	above := min(below+1, len(marks)-1)
	switch {
	case isOn(below, n):
		return name + Decimal(marks[below], 1)
	case isOn(above, n):
		return name + Decimal(marks[above], 1)
	case n < marks[0] || n > marks[len(marks)-1] || r == Near:
		return name + Decimal(n, decimals(n))
	case r == Open:
		return name + Decimal(marks[below], 1)
	}
	return name + Decimal(marks[above], 1)
}

// Stops returns a difference of light in stops with its noun, such as "1.3 stops".
func (s Style) Stops(n float64) string {
	if out, ok := s.unwritten(n); ok {
		return out
	}
	text := s.Number(n, 1) + " stop"
	if math.Abs(Nearest(n, 10)) == 1 {
		return text
	}
	return text + "s"
}

// stands returns the exact f-number of the mark at index i.
func stands(i int) float64 { return math.Exp2(float64(i-3) / 6) }

// isOn reports whether a stop is near enough to a mark to take its name, or lies
// between the mark and its exact number.
func isOn(i int, n float64) bool {
	lo, hi := min(marks[i], stands(i)), max(marks[i], stands(i))
	return math.Abs(n/marks[i]-1) <= onMark || n >= lo*(1-onExact) && n <= hi*(1+onExact)
}

// Gear returns the turns of the hand wheel for one turn of the ring, such as
// "2:1 (hand to ring)".
func (s Style) Gear(turns float64) string {
	if out, ok := s.unwritten(turns); ok {
		return out
	}
	return s.Number(turns, 2) + ":1 (hand to ring)"
}
