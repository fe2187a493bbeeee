// Quantities: what a statement or clause takes, in words for messages, and the
// units that it may have.

package lang

import (
	"slices"
	"strings"
)

// A quantity is what a value has to be. The zero quantity is any.
type quantity struct {
	text string
	dims []Dimension
}

func of(text string, dims ...Dimension) quantity { return quantity{text, dims} }

var (
	aTime      = of("a time, such as 1.2 s or 12 fr", DimTime)
	aTimecode  = of("a timecode, such as 01:00:10:12", DimTime)
	aLength    = of("a length, such as 75 cm or 5'6\"", DimLength)
	aDistance  = of("a length, such as 18 m", DimLength)
	aFocal     = of("a focal length, such as 75 mm", DimLength)
	anAngle    = of("an angle, such as 90 deg", DimAngle)
	aStop      = of("a stop, such as f/2.8 or T2.1", DimStop)
	aNumber    = of("a number", DimNone)
	aRate      = of("a frame rate, such as 24 or 29.97df", DimNone)
	aPace      = of("a pace, such as 150 wpm", DimPace)
	aSharpness = of("a length or an angle, such as 0.025 mm or 1 arcmin", DimLength, DimAngle)
	aChance    = of("a chance, such as 95 %", DimRatio)
	aShare     = of("a percentage, such as 2 %", DimRatio)
	aWidth     = of("a length, such as 24.89 mm", DimLength)
	pixels     = of("a number of pixels, such as 3840 px", DimPixels)
	aShutter   = of("an angle or a time, such as 180 deg or 1/50 s", DimAngle, DimTime)
	aMonitor   = of("a length, then the number of pixels", DimLength, DimPixels)
	stopsAt    = of(aStop.text, DimStop, DimLength)
	bits       = of("a rate, such as 5 bit/s", DimThroughput)
	aSpeed     = of("a speed, such as 400 deg/s", DimSpeed)
	aDensity   = of("a density, such as 0.9", DimNone)
	aGear      = of("a number, the hand's degrees for one of the ring", DimNone)
	anArgument = of(quantityOf["Anchor"].text)
)

// quantityOf tells what the pieces of the tree are, by the names of their types.
var quantityOf = map[string]quantity{
	"Target": of("a name, a distance or inf", DimLength),
	"Anchor": of("a moment: words in quotes, a name or a time", DimTime),
	"Place":  of("a distance or a name", DimLength, DimAngle),
	"Size":   of("a width, such as 12 m or 55 in diagonal", DimLength),
}

// units lists the spellings of the units that the quantity may have.
func (q quantity) units() (list []string) {
	for _, u := range unitFacts {
		if u.dim != DimNone && u.dim != DimStop && (q.dims == nil || slices.Contains(q.dims, u.dim)) {
			list = append(list, u.text)
		}
	}
	return list
}

// suggestUnit tells which unit a word may have been meant for.
func (q quantity) suggestUnit(word string) string {
	units := q.units()
	near, ok := unitSlip(strings.ToLower(word)), true
	if !slices.Contains(units, near) {
		near, ok = Nearest(word, units)
	}
	switch {
	case ok:
		return "Did you mean `" + near + "`?"
	case len(units) == 0:
		return "No unit stands here."
	case len(units) == 1:
		return "The unit here is " + units[0] + "."
	}
	last := len(units) - 1
	return "The units here are " + strings.Join(units[:last], ", ") + " and " + units[last] + "."
}
