// Units: their spellings, what they measure, and how much they are.

package lang

// A Dimension is what a value measures.
type Dimension uint8

// The dimensions, with the unit that Unit.SI converts to.
const (
	DimNone       Dimension = iota // a bare number
	DimLength                      // metre
	DimAngle                       // degree
	DimTime                        // second
	DimStop                        // the stop's own number
	DimRatio                       // 1, so that 95 % is 0.95
	DimPixels                      // pixel
	DimPace                        // word a minute
	DimThroughput                  // bit a second
	DimSpeed                       // degree a second
	DimVelocity                    // metre a second
)

// String returns the name of the dimension with its article, for messages.
func (d Dimension) String() string {
	return [...]string{
		"a bare number", "a length", "an angle", "a time", "a stop", "a percentage",
		"a number of pixels", "a pace", "a rate of information", "a turning speed",
		"a speed",
	}[d]
}

// unitFacts holds, for each Unit, its spelling, dimension and size.
var unitFacts = [...]struct {
	text string
	dim  Dimension
	si   float64
}{
	UnitNone:    {"", DimNone, 1},
	UnitMM:      {"mm", DimLength, 0.001},
	UnitCM:      {"cm", DimLength, 0.01},
	UnitM:       {"m", DimLength, 1},
	UnitFoot:    {"ft", DimLength, 0.3048}, // exact: international yard and pound agreement, 1959
	UnitInch:    {"in", DimLength, 0.0254},
	UnitDeg:     {"deg", DimAngle, 1},
	UnitTurn:    {"turn", DimAngle, 360},
	UnitArcmin:  {"arcmin", DimAngle, 1.0 / 60},
	UnitS:       {"s", DimTime, 1},
	UnitMS:      {"ms", DimTime, 0.001},
	UnitFrame:   {"fr", DimTime, 0},
	UnitPercent: {"%", DimRatio, 0.01},
	UnitWPM:     {"wpm", DimPace, 1},
	UnitBitS:    {"bit/s", DimThroughput, 1},
	UnitDegS:    {"deg/s", DimSpeed, 1},
	UnitMetreS:  {"m/s", DimVelocity, 1},
	UnitFootS:   {"ft/s", DimVelocity, 0.3048},
	UnitPX:      {"px", DimPixels, 1},
	UnitF:       {"f/", DimStop, 1},
	UnitT:       {"T", DimStop, 1},
}

// String returns the unit as a plan writes it after a number. The units f/ and T come
// before the number.
func (u Unit) String() string { return unitFacts[u].text }

// Dimension returns what the unit measures.
func (u Unit) Dimension() Dimension { return unitFacts[u].dim }

// SI returns the factor that converts the unit to metres, degrees or seconds, or to the
// unit of its Dimension. It returns 0 for frames, whose length depends on the frame
// rate.
func (u Unit) SI() float64 { return unitFacts[u].si }

// unitOf returns the unit that one word spells.
func unitOf(word string) (unit Unit, ok bool) {
	switch word {
	case "mm":
		return UnitMM, true
	case "cm":
		return UnitCM, true
	case "m":
		return UnitM, true
	case "ft":
		return UnitFoot, true
	case "in":
		return UnitInch, true
	case "deg", "°":
		return UnitDeg, true
	case "turn":
		return UnitTurn, true
	case "arcmin":
		return UnitArcmin, true
	case "s":
		return UnitS, true
	case "ms":
		return UnitMS, true
	case "fr":
		return UnitFrame, true
	case "%":
		return UnitPercent, true
	case "wpm":
		return UnitWPM, true
	case "px":
		return UnitPX, true
	case "bit":
		return UnitBitS, true
	}
	return UnitNone, false
}

// unitSlip returns the language's own spelling of a unit for that of other
// people, "" where there is none.
func unitSlip(word string) string {
	switch word {
	case "sec", "secs", "second", "seconds":
		return "s"
	case "frame", "frames", "f":
		return "fr"
	case "mtr", "metre", "metres", "meters":
		return "m"
	case "millimetres", "millimeters":
		return "mm"
	case "centimetres", "centimeters":
		return "cm"
	case "foot", "feet":
		return "ft"
	case "inch", "inches":
		return "in"
	case "degree", "degrees":
		return "deg"
	case "turns":
		return "turn"
	case "percent":
		return "%"
	case "pixel", "pixels":
		return "px"
	case "bits", "bps":
		return "bit/s"
	}
	return ""
}
