// Quantities: what a value has to be. A tag names it once, `is:"time"`, and
// from that name come what messages ask for, the units that they offer, the
// unit that a bare number is taken in, and the word in usage lines.

package lang

import (
	"slices"
	"strings"
)

// A quantity is what a value has to be. The zero quantity is any value.
type quantity struct {
	text  string     // in messages, with an example
	usage string     // in usage lines
	dims  dimensions // that its units may have
	// unit is what a number without one is taken in, and tell is what is said of
	// that. UnitNone: a bare number is right, or nothing can be said of it here.
	unit Unit
	tell string
}

// dimensions is a set of dimensions. The empty set is any.
type dimensions uint16

func of(list ...Dimension) (set dimensions) {
	for _, d := range list {
		set |= 1 << d
	}
	return set
}

func (set dimensions) has(d Dimension) bool { return set == 0 || set&(1<<d) != 0 }

// What is told of numbers without units, where several quantities share it.
const (
	lengthsHave = "A length has one: mm, cm, m, ft or in."
	focalsHave  = "A focal length has one: mm, cm or in."
	timesHave   = "A time has one: s, ms or fr (frames)."
	anglesHave  = "An angle has one: deg or turn."
	sharesHave  = "A share has one: %."
	stopsAre    = "A stop is written f/2.8 or T2.8."
)

// quantityNamed returns the quantity that a tag names. It is a switch and no
// map, since a map would be built at every start of the program.
func quantityNamed(name string) quantity {
	switch name {
	case "time":
		return quantity{"a time, such as 1.2 s or 12 fr", "TIME", of(DimTime), UnitS, timesHave}
	case "timecode":
		return quantity{text: "a timecode, such as 01:00:10:12", usage: "TIMECODE", dims: of(DimTime)}
	case "length":
		return quantity{"a length, such as 75 cm or 5'6\"", "LENGTH", of(DimLength), UnitM, lengthsHave}
	case "distance":
		return quantity{"a length, such as 18 m", "DISTANCE", of(DimLength), UnitM, lengthsHave}
	case "side":
		return quantity{"a length or an angle, such as 20 cm or 12 deg", "LENGTH | ANGLE", of(DimLength, DimAngle), UnitM, lengthsHave}
	case "width":
		return quantity{"a length, such as 24.89 mm", "LENGTH", of(DimLength), UnitMM, focalsHave}
	case "focal":
		return quantity{"a focal length, such as 75 mm", "LENGTH", of(DimLength), UnitMM, focalsHave}
	case "angle":
		return quantity{"an angle, such as 90 deg", "ANGLE", of(DimAngle), UnitDeg, anglesHave}
	case "shutter":
		return quantity{"an angle or a time, such as 180 deg or 1/50 s", "ANGLE", of(DimAngle, DimTime), UnitDeg,
			"A shutter is an angle (180 deg) or a time (1/50 s)."}
	case "sharpness":
		return quantity{"a length or an angle, such as 0.025 mm or 1 arcmin", "LENGTH", of(DimLength, DimAngle), UnitMM,
			"Sharpness is a length (0.025 mm) or an angle (1 arcmin)."}
	case "chance":
		return quantity{"a chance, such as 95 %", "N %", of(DimRatio), UnitPercent, sharesHave}
	case "share":
		return quantity{"a percentage, such as 2 %", "N %", of(DimRatio), UnitPercent, sharesHave}
	case "pixels":
		return quantity{"a number of pixels, such as 3840 px", "N px", of(DimPixels), UnitPX, "Pixels have one: px."}
	case "pace":
		return quantity{"a pace, such as 150 wpm", "N wpm", of(DimPace), UnitWPM, "A pace has one: wpm."}
	case "throughput":
		return quantity{"a rate, such as 5 bit/s", "N bit/s", of(DimThroughput), UnitBitS, "A rate has one: bit/s."}
	case "speed":
		return quantity{"a speed, such as 1.2 m/s", "SPEED", of(DimVelocity), UnitMetreS, "A speed has one: m/s or ft/s."}
	case "turning":
		return quantity{"a speed, such as 400 deg/s", "N deg/s", of(DimSpeed), UnitDegS, "A turning speed has one: deg/s."}
	}
	return bareQuantity(name)
}

// bareQuantity returns the quantities that are numbers alone or that are read as
// pieces of the tree.
func bareQuantity(name string) quantity {
	switch name {
	case "stop":
		return quantity{"a stop, such as f/2.8 or T2.1", "STOP", of(DimStop), UnitF, stopsAre}
	case "number":
		return quantity{text: "a number", usage: "N", dims: of(DimNone)}
	case "rate":
		return quantity{text: "a frame rate, such as 24 or 29.97df", usage: "N", dims: of(DimNone)}
	case "density":
		return quantity{text: "a density, such as 0.9", usage: "N", dims: of(DimNone)}
	case "gear":
		return quantity{text: "a number, the hand's degrees for one of the ring", usage: "N", dims: of(DimNone)}
	case "place":
		return quantity{"a distance or a name", "PLACE", of(DimLength, DimAngle), UnitM, lengthsHave}
	case "floor":
		return quantity{"a place on the floor: a name, or a way such as 1.2 m right", "FLOOR", of(DimLength), UnitM, lengthsHave}
	case "aim":
		return quantity{"a name", "AIM", of(DimAngle), UnitDeg, anglesHave}
	case "target":
		return quantity{"a name, a distance or inf", "TARGET", of(DimLength), UnitM, lengthsHave}
	case "size":
		return quantity{"a width, such as 12 m or 55 in diagonal", "WIDTH", of(DimLength), UnitM, lengthsHave}
	case "moment":
		return quantity{text: aMoment, usage: "MOMENT", dims: of(DimTime)}
	case "position":
		return quantity{text: aPosition, usage: "POSITION", dims: of(DimAngle, DimLength, DimRatio)}
	case "format":
		return quantity{text: "a size, such as 24.89 x 18.66 mm, or a format, such as super35 3-perf", usage: "FORMAT"}
	case "perfs":
		return quantity{text: "its perforations, such as 3-perf", usage: "3-perf"}
	case "sides":
		return quantity{text: "its sides, such as 16:9", usage: "16:9"}
	case "end":
		return quantity{text: "a name or words in quotes", usage: "NAME"}
	case "argument":
		return quantity{text: aMoment, usage: "ARGUMENT"}
	case "value":
		return quantity{usage: "VALUE"}
	}
	return quantity{}
}

const (
	aPosition = "an angle, a length along the rim, a part of the throw or a clock position"
	aMoment   = "a moment: words in quotes, a name or a time"
)

// quantityNames are the names that tags may use.
var quantityNames = [...]string{
	"time", "timecode", "length", "distance", "side", "width", "focal", "angle", "shutter", "sharpness", "chance", "share",
	"pixels", "pace", "throughput", "speed", "turning", "stop", "number", "rate", "density", "gear", "place", "target", "size",
	"moment", "floor", "aim", "position", "format", "perfs", "sides", "end", "argument", "value",
}

// units lists the spellings of the units that the quantity may have.
func (q quantity) units() (list []string) {
	for _, u := range unitFacts {
		if u.dim != DimNone && u.dim != DimStop && q.dims.has(u.dim) {
			list = append(list, u.text)
		}
	}
	return list
}

// nearUnit returns the unit that a word spells as elsewhere, or is near to.
func (q quantity) nearUnit(word string) (string, bool) {
	units := q.units()
	if near := unitSlip(strings.ToLower(word)); slices.Contains(units, near) {
		return near, true
	}
	return Nearest(word, units)
}

// unitMeant returns the unit that a word was meant for: a near one, or the only one.
func (q quantity) unitMeant(word string) (string, bool) {
	if units := q.units(); len(units) == 1 {
		return units[0], true
	}
	return q.nearUnit(word)
}

// offered returns the units that are offered for a number without one, the likeliest
// first.
func (q quantity) offered(value float64) (list []string) {
	const inCentimetres = 20 // more metres than that are rarer than as many centimetres
	switch {
	case q.unit == UnitM && value >= inCentimetres:
		list = []string{"cm", "m", "ft"}
	case q.unit == UnitM:
		list = []string{"m", "ft", "cm"}
	case q.unit == UnitS:
		list = []string{"s", "fr"}
	default:
		return []string{q.unit.String()}
	}
	if q.usage == "LENGTH | ANGLE" {
		list = append(list, "deg")
	}
	return list
}

// suggestUnit tells which unit a word may have been meant for.
func (q quantity) suggestUnit(word string) string {
	units := q.units()
	near, ok := q.nearUnit(word)
	switch {
	case ok:
		return "Did you mean `" + near + "`?"
	case len(units) == 0:
		return "There is no unit here."
	case len(units) == 1:
		return "The unit here is " + units[0] + "."
	}
	last := len(units) - 1
	return "The units here are " + strings.Join(units[:last], ", ") + " and " + units[last] + "."
}
