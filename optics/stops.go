// The scale of f-numbers: the rounded marks and their exact values.

package optics

import (
	"math"
	"slices"
	"strconv"
)

// A Stop is a mark of the third-stop scale with its exact f-number.
type Stop struct {
	Mark  float64 // as engraved, rounded: 1.4, 5.6, 11
	Exact float64 // sqrt(2) to the whole number of thirds: 1.41421, 5.65685, 11.3137
}

// thirdMarks are the engraved third stops from 0.7 to 128, common practice.
var thirdMarks = [...]float64{
	0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5,
	4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29,
	32, 36, 40, 45, 51, 57, 64, 72, 80, 90, 102, 114, 128,
}

// firstThird is the number of thirds of a stop from f/1 to the first mark.
const firstThird = -3

// ThirdStops returns the third-stop scale from 0.7 to 128, the widest stop first.
// The caller owns the slice.
func ThirdStops() []Stop {
	stops := make([]Stop, len(thirdMarks))
	for i, mark := range thirdMarks {
		stops[i] = Stop{Mark: mark, Exact: thirdStop(i)}
	}
	return stops
}

// ExactStop returns the exact f-number of a mark: 1.4 gives the square root of 2.
// It returns a value unchanged if it is not a mark of the third-stop scale.
func ExactStop(mark float64) float64 {
	if i := slices.Index(thirdMarks[:], mark); i >= 0 {
		return thirdStop(i)
	}
	return mark
}

// Mark returns the mark of the third stop nearest to f-number n, such as "2.8".
// Outside the scale it returns n with three digits.
func Mark(n float64) string {
	i := int(math.Round(6*math.Log2(n))) - firstThird
	if i < 0 || i >= len(thirdMarks) {
		return strconv.FormatFloat(n, 'g', 3, 64)
	}
	return strconv.FormatFloat(thirdMarks[i], 'g', -1, 64)
}

// thirdStop is the exact f-number of the mark at index i: a third of a stop is
// a sixth of a doubling. Exp2 is exact for whole powers, so 2, 4, 8 are too.
func thirdStop(i int) float64 { return math.Exp2(float64(i+firstThird) / 6) }
