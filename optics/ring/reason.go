// Why written marks cannot be read.

package ring

import "fmt"

// A Reason is why written marks do not say how a ring turns.
type Reason int

// The reasons. Each names the fields of a FormError that it fills beside Index.
const (
	NoRim          Reason = iota // lengths along the rim, and nothing says the way round
	NoThrow                      // parts of the throw, and nothing says the throw
	MixedForms                   // marks of more than one form: Form, Others
	WhichWay                     // hours, and nothing says which way the ring turns
	NoEnd                        // hours, and neither the closest stop nor infinity with the throw is among them
	WholeTurn                    // from one mark to the next the hour stays: Distance, Other
	OutOfOrder                   // positions neither rise nor fall: Distance, Degrees, Other, OtherDegrees
	NoDistance                   // no distance of a millimetre or more: Distance
	SameDistance                 // two marks of one distance: Distance, Other
	BeyondClosest                // nearer than the closest focus: Distance, Other
	OneAngle                     // two distances at one angle: Distance, Degrees, Other, OtherDefault
	PastThrow                    // marks reach farther than the throw: Measured, Said
	ThrowDisagrees               // lengths, girth and throw: Length, Girth, Measured, Said
	GirthDisagrees               // girth and diameter: Girth, Measured, Said
	Lone                         // one mark, and neither closest nor the throw said: Distance
)

// A FormError is the error for written marks that cannot be read. Distances, lengths and
// diameters are in metres, degrees as they count on the scale at which it fails.
type FormError struct {
	Reason Reason
	Index  int // of the written mark, from 0; -1 for the ring itself

	Form, Others Form
	Distance     float64 // of the mark
	Degrees      float64
	Other        float64 // the distance of another mark
	OtherDegrees float64
	OtherDefault bool    // the other mark is the closest focus or infinity, by default
	Length       float64 // along the rim, from the closest stop to infinity
	Girth        float64
	Measured     float64 // what follows from the marks or the girth: degrees, or a diameter
	Said         float64 // what is said instead
}

var reasons = [...]string{
	NoRim:          "lengths along the rim need the way round the ring",
	NoThrow:        "parts of the throw need the throw",
	MixedForms:     "marks are of more than one form",
	WhichWay:       "clock positions need the way that the ring turns",
	NoEnd:          "clock positions need the closest stop, or infinity and the throw",
	WholeTurn:      "from one mark to the next the ring goes nowhere, or a whole turn",
	OutOfOrder:     "positions neither rise nor fall with distance",
	NoDistance:     "distance is not a length of a millimetre or more",
	SameDistance:   "two marks have one distance",
	BeyondClosest:  "a mark is nearer than the closest focus",
	OneAngle:       "two distances lie at one angle",
	PastThrow:      "marks reach farther than the throw",
	ThrowDisagrees: "lengths, girth and throw disagree",
	GirthDisagrees: "girth and diameter disagree",
	Lone:           "one mark alone says nothing of the ring",
}

// Error returns the reason in words.
func (e *FormError) Error() string {
	if e.Reason < 0 || int(e.Reason) >= len(reasons) {
		return fmt.Sprintf("ring: reason %d", int(e.Reason))
	}
	return "ring: " + reasons[e.Reason]
}
