// Feet and inches, for all who write them.

package plan

import "math"

// Inch is the inch in metres, exact (international yard and pound agreement,
// 1959), and InchesPerFoot what its name says.
const (
	Inch          = 0.0254
	InchesPerFoot = 12
)

// FeetInches splits a length in metres, 0 or more, into whole feet, whole
// inches below twelve, and what is left of an inch in so many parts of one,
// rounded.
func FeetInches(m float64, parts int) (feet, inches float64, part int) {
	all := math.Round(m / Inch * float64(parts))
	perFoot := float64(InchesPerFoot * parts)
	feet = math.Floor(all / perFoot)
	all -= feet * perFoot
	inches = math.Floor(all / float64(parts))
	return feet, inches, int(all - inches*float64(parts))
}
