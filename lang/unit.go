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
)

// String names the dimension with its article, for messages.
func (d Dimension) String() string {
	return [...]string{
		"a bare number", "a length", "an angle", "a time", "a stop", "a percentage",
		"a number of pixels", "a pace", "a rate of information", "a turning speed",
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
	UnitPX:      {"px", DimPixels, 1},
	UnitF:       {"f/", DimStop, 1},
	UnitT:       {"T", DimStop, 1},
}

// String returns the unit as it is written behind a number; f/ and T stand
// before it.
func (u Unit) String() string { return unitFacts[u].text }

// Dimension returns what the unit measures.
func (u Unit) Dimension() Dimension { return unitFacts[u].dim }

// SI returns the factor from the unit to the metre, the degree or the second,
// or to the unit that its Dimension names. It is 0 for frames, whose length
// depends on the frame rate.
func (u Unit) SI() float64 { return unitFacts[u].si }

// unitWords are the units that one word spells.
var unitWords = map[string]Unit{
	"mm": UnitMM, "cm": UnitCM, "m": UnitM, "ft": UnitFoot, "in": UnitInch,
	"deg": UnitDeg, "°": UnitDeg, "turn": UnitTurn, "arcmin": UnitArcmin,
	"s": UnitS, "ms": UnitMS, "fr": UnitFrame, "%": UnitPercent, "wpm": UnitWPM,
	"px": UnitPX, "bit": UnitBitS,
}

// unitSlips are spellings that people use for the language's own.
var unitSlips = map[string]string{
	"sec": "s", "secs": "s", "second": "s", "seconds": "s", "frame": "fr", "frames": "fr", "f": "fr",
	"mtr": "m", "metre": "m", "metres": "m", "meters": "m", "foot": "ft", "feet": "ft", "inch": "in", "inches": "in",
	"degree": "deg", "degrees": "deg", "turns": "turn", "percent": "%", "pixel": "px", "pixels": "px",
	"millimetres": "mm", "millimeters": "mm", "centimetres": "cm", "centimeters": "cm", "bits": "bit/s", "bps": "bit/s",
}
