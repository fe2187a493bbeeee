// Package units puts numbers into words. Whatever people read of a plan, on
// screen and on paper, takes its distances, angles, times, chances and stops
// from here, so that two places never write one number in two ways. Files that
// programs read (JSON, CSV) have the numbers themselves and never pass here.
//
// Every number is rounded first, and the rounded number decides in which form
// and unit it is written: what rounds to a metre reads "1 m" and never
// "100 cm". A longer distance therefore never reads as a shorter one.
//
// What does not apply (NaN) is written as "".
package units

import (
	"math"
	"strconv"
	"strings"
)

// A Face is a way of writing.
type Face uint8

const (
	// Words is for sentences: findings, errors, differences, cures. It has no
	// sign that a keyboard lacks, so a length or an angle can be typed into a
	// plan as it stands.
	Words Face = iota
	// Table is for lists and papers, where room is short: ′ ″ ° ∞ < >.
	Table
)

// A System is the one that lengths are written in.
type System uint8

// The systems. Focal lengths, filters and the disc of confusion are in
// millimetres in both.
const (
	Metric System = iota
	Imperial
)

// A Style says how numbers are written. The zero Style is metric, in words.
type Style struct {
	System System
	Face   Face
}

// ForTable returns the style of lists and papers, in the plan's system.
func ForTable(imperial bool) Style {
	if imperial {
		return Style{Imperial, Table}
	}
	return Style{Metric, Table}
}

// other returns the same style in the other system.
func (s Style) other() Style {
	if s.System == Imperial {
		return Style{Metric, s.Face}
	}
	return Style{Imperial, s.Face}
}

// Decimal returns v with at most that many decimals, without zeros behind
// them, and with a hyphen as its minus. It is never "-0".
func Decimal(v float64, most int) string {
	text := fixed(v, most)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// Number returns v as Decimal does, with the minus of the style's face.
func (s Style) Number(v float64, most int) string {
	if out, ok := s.unwritten(v); ok {
		return out
	}
	return s.minus(Decimal(v, most))
}

// Fixed returns v with exactly that many decimals, so that the points of a
// column stand above one another.
func (s Style) Fixed(v float64, decimals int) string {
	if out, ok := s.unwritten(v); ok {
		return out
	}
	return s.minus(fixed(v, decimals))
}

// Signed returns v as Fixed does, with a plus where it is more than zero once
// rounded.
func (s Style) Signed(v float64, decimals int) string {
	text := s.Fixed(v, decimals)
	if v > 0 && strings.ContainsAny(text, "123456789∞i") {
		return "+" + text
	}
	return text
}

// fixed writes a finite number with so many decimals, zero without a sign.
func fixed(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// minus gives a number the minus sign of the face.
func (s Style) minus(text string) string {
	if s.Face == Table {
		return strings.Replace(text, "-", "−", 1)
	}
	return text
}

// unwritten returns what stands for a number that has no digits: nothing for
// NaN, a word or a sign for what is infinite. ok is false for any other.
func (s Style) unwritten(v float64) (text string, ok bool) {
	switch {
	case math.IsNaN(v):
		return "", true
	case !math.IsInf(v, 0):
		return "", false
	case s.Face == Table && v < 0:
		return "−∞", true
	case s.Face == Table:
		return "∞", true
	case v < 0:
		return "-infinity", true
	}
	return "infinity", true
}

// unit joins a number of at most so many decimals and its unit.
func (s Style) unit(v float64, most int, unit string) string { return s.Number(v, most) + " " + unit }

// slack keeps Up and Down from going a whole step further for the last bits of
// a computation.
const slack = 1e-6

// Nearest returns v rounded to the nearest part, of which the unit has perUnit:
// Nearest(1.26, 10) is 1.3. It is never -0.
func Nearest(v, perUnit float64) float64 { return math.Round(v*perUnit)/perUnit + 0 }

// Up returns v rounded up to a part, of which the unit has perUnit. A cure that
// needs at least v says this number.
func Up(v, perUnit float64) float64 { return math.Ceil(v*perUnit-slack)/perUnit + 0 }

// Down returns v rounded down to a part, of which the unit has perUnit. A cure
// that may have at most v says this number.
func Down(v, perUnit float64) float64 { return math.Floor(v*perUnit+slack)/perUnit + 0 }

// Count returns a number of things, such as "1 frame" or "2 frames".
func Count(n int, thing string) string {
	if n == 1 || n == -1 {
		return strconv.Itoa(n) + " " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}
