// Package units writes numbers with their units. Everything that people read, on
// screen and on paper, takes its distances, angles, times, chances and stops from
// here. So Pullscore never writes one number in two ways. Files for programs (JSON,
// CSV) hold the plain numbers and do not use this package.
//
// It rounds every number first, and the rounded number decides the form and the unit.
// A length that rounds to a metre is "1 m", never "100 cm". So a longer distance never
// looks shorter.
//
// A number that does not apply (NaN) gives "".
package units

import (
	"math"
	"strconv"
	"strings"
)

// A Face is a way of writing.
type Face uint8

const (
	// Words is for sentences: findings, errors, differences, cures. It uses only
	// signs that a keyboard has, so people can type a length or an angle into a plan
	// as written.
	Words Face = iota
	// Table is for lists and papers, where space is short. It uses ′ ″ ° ∞ < >.
	Table
)

// A System is the system of units for lengths.
type System uint8

// The systems. Both write focal lengths, filters and the circle of confusion in
// millimetres.
const (
	Metric System = iota
	Imperial
)

// A Style says how to write numbers. The zero Style is metric, for sentences.
type Style struct {
	System System
	Face   Face
}

// ForTable returns the style of lists and papers: imperial or metric.
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

// Decimal returns v with at most the given decimals, without trailing zeros, and with
// a hyphen as the minus sign. It never returns "-0".
func Decimal(v float64, most int) string {
	text := fixed(v, most)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// Number returns v as Decimal does, with the minus sign of the style's face.
func (s Style) Number(v float64, most int) string {
	if out, ok := s.unwritten(v); ok {
		return out
	}
	return s.minus(Decimal(v, most))
}

// Fixed returns v with exactly the given decimals, so that the decimal points of a
// column line up.
func (s Style) Fixed(v float64, decimals int) string {
	if out, ok := s.unwritten(v); ok {
		return out
	}
	return s.minus(fixed(v, decimals))
}

// Signed returns v as Fixed does, with a plus sign if the rounded value is above zero.
func (s Style) Signed(v float64, decimals int) string {
	text := s.Fixed(v, decimals)
	if v > 0 && strings.ContainsAny(text, "123456789∞i") {
		return "+" + text
	}
	return text
}

// fixed returns a finite number with the given decimals, and zero without a sign.
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

// unwritten returns the text for a number without digits: "" for NaN, and a word or a
// sign for an infinite number. ok is false for any other number.
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

// Nearest returns v rounded to the nearest 1/perUnit: Nearest(1.26, 10) is 1.3. It
// never returns -0.
func Nearest(v, perUnit float64) float64 { return math.Round(v*perUnit)/perUnit + 0 }

// Up returns v rounded up to a multiple of 1/perUnit. A cure that needs at least v
// uses it.
func Up(v, perUnit float64) float64 { return math.Ceil(v*perUnit-slack)/perUnit + 0 }

// Down returns v rounded down to a multiple of 1/perUnit. A cure that may have at most
// v uses it.
func Down(v, perUnit float64) float64 { return math.Floor(v*perUnit+slack)/perUnit + 0 }

// Slow returns how fast a shot goes by on the screen whose camera runs at another speed,
// such as "4 times as slow" or "2 times as fast". factor is screen time over set time.
func Slow(factor float64) string {
	if factor < 1 {
		return Decimal(1/factor, 3) + " times as fast"
	}
	return Decimal(factor, 3) + " times as slow"
}

// Shoots returns how many frames a second a camera takes, and how fast the shot goes by
// on the screen: "96 frames a second, 4 times as slow".
func Shoots(perSecond, factor float64) string {
	return Decimal(perSecond, 3) + " frames a second, " + Slow(factor)
}

// Count returns a number with its noun, such as "1 frame" or "2 frames".
func Count(n int, thing string) string {
	if n == 1 || n == -1 {
		return strconv.Itoa(n) + " " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}
