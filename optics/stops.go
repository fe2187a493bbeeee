// The scale of f-numbers: what is engraved and what it stands for.

package optics

import (
	"math"
	"slices"
	"strconv"
)

// A Stop is a mark of the third-stop scale with the f-number it stands for.
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

// ThirdStops returns the third-stop scale from 0.7 to 128, widest first. The
// slice is the caller's own.
func ThirdStops() []Stop {
	stops := make([]Stop, len(thirdMarks))
	for i, mark := range thirdMarks {
		stops[i] = Stop{Mark: mark, Exact: thirdStop(i)}
	}
	return stops
}

// ExactStop returns the f-number that an engraved mark stands for: 1.4 gives
// the square root of 2. A value that is no mark of the third-stop scale comes
// back as it is.
func ExactStop(mark float64) float64 {
	if i := slices.Index(thirdMarks[:], mark); i >= 0 {
		return thirdStop(i)
	}
	return mark
}

// Mark returns the engraved name of the third stop nearest to n, such as "2.8".
// Beyond the scale it returns n in three digits.
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
