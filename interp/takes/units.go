// Numbers and lengths as logs and cameras write them.

package takes

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// metres holds the units of length, by their names in small letters.
var metres = map[string]float64{
	"m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1,
	"cm": 0.01, "mm": 0.001,
	"ft": 0.3048, "feet": 0.3048, "foot": 0.3048, "'": 0.3048, "′": 0.3048,
	"in": 0.0254, "inch": 0.0254, "inches": 0.0254, `"`: 0.0254, "″": 0.0254,
}

// Metres returns how many metres a unit of length is; ok is false for a word
// that is none.
func Metres(unit string) (m float64, ok bool) {
	m, ok = metres[strings.ToLower(unit)]
	return m, ok
}

// ParseNumber reads a plain decimal number: no unit, no text, nothing that is
// not finite.
func ParseNumber(s string) (float64, error) {
	if s == "" {
		return 0, errors.New("a number is missing here")
	}
	number, rest := cutNumber(s)
	if number == "" || rest != "" {
		return 0, fmt.Errorf("%q is no number", s)
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no number", s)
	}
	return v, nil
}

// ErrNoUnit is the error of a length that is a number alone.
var ErrNoUnit = errors.New("lacks its unit")

// ParseLength reads a length in metres with its unit, as in 1.72 m, 5'6",
// 5 ft 6 in, or infinity. A number alone has the unit given, where one is.
func ParseLength(s, unit string) (float64, error) {
	switch strings.ToLower(s) {
	case "inf", "infinity", "∞":
		return math.Inf(1), nil
	}
	sum, last, rest := 0.0, math.Inf(1), s
	for parts := 0; rest != "" || parts == 0; parts++ {
		number, behind := cutNumber(rest)
		v, err := ParseNumber(number)
		if err != nil {
			return 0, fmt.Errorf("%q is no length", s)
		}
		name, next := cutUnit(strings.TrimLeft(behind, " "))
		if name == "" && parts == 0 && next == "" {
			name = unit
		}
		m, ok := Metres(name)
		switch {
		case name == "":
			return 0, fmt.Errorf("%q %w", s, ErrNoUnit)
		case !ok:
			return 0, fmt.Errorf("%q has no unit of length", s)
		case m >= last || parts > 0 && (v < 0 || m != metres["in"] || last != metres["ft"]):
			return 0, fmt.Errorf("%q is no length", s)
		}
		sum, last, rest = sum+v*m, m, strings.TrimLeft(next, " -")
	}
	if !(sum > 0) || math.IsInf(sum, 0) {
		return 0, fmt.Errorf("%q is no distance", s)
	}
	return sum, nil
}

// cutNumber divides a text behind the number that it begins with.
func cutNumber(s string) (number, rest string) {
	i := 0
	digits := func() (n int) {
		for ; i < len(s) && '0' <= s[i] && s[i] <= '9'; i++ {
			n++
		}
		return n
	}
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	n := digits()
	if i < len(s) && s[i] == '.' {
		i++
		n += digits()
	}
	if n == 0 {
		return "", s
	}
	if end := i; i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		if digits() == 0 {
			i = end
		}
	}
	return s[:i], s[i:]
}

// cutUnit divides a text behind the unit that it begins with: a sign, or all up
// to a blank, a digit or a dash.
func cutUnit(s string) (unit, rest string) {
	for _, sign := range []string{"'", `"`, "′", "″"} {
		if strings.HasPrefix(s, sign) {
			return sign, s[len(sign):]
		}
	}
	if i := strings.IndexAny(s, " -0123456789'\""); i >= 0 {
		return s[:i], s[i:]
	}
	return s, ""
}
