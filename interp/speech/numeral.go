// Numerals, as they are said in English.

package speech

import "strings"

// The syllables of the numbers under twenty, and of the tens.
var (
	units = [20]int{2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2}
	tens  = [10]int{0, 0, 2, 2, 2, 2, 2, 3, 2, 2}
)

// longest is how many digits are read as one number; more are read one by one.
const longest = 12

// numeral returns the syllables of a run of digits that may hold commas between
// thousands and a point before a fraction. Digits that are not ASCII count as a
// syllable each.
func numeral(s string) int {
	whole, fraction, point := strings.Cut(s, ".")
	plain := strings.ReplaceAll(whole, ",", "")
	n := cardinal(plain, len(plain) == len(whole))
	if point {
		n += 1 + oneByOne(fraction) // "point"
	}
	return n
}

// suffix returns how many syllables what stands after a numeral adds to it, if
// it is the end of an ordinal (21st, 20th) or a plural (1980s).
func suffix(number, run string) (syllables int, ok bool) {
	if number == "" {
		return 0, false
	}
	last, ten := number[len(number)-1], byte('0')
	if len(number) > 1 {
		ten = number[len(number)-2]
	}
	switch run {
	case "st", "rd", "s":
		return 0, true
	case "nd":
		return 1, true // two, second
	case "th":
		if last == '0' && ten >= '2' {
			return 1, true // twenty, twentieth
		}
		return 0, true
	}
	return 0, false
}

// cardinal returns the syllables of a whole number, which may be a year.
func cardinal(s string, year bool) int {
	if len(s) > longest || len(s) > 1 && s[0] == '0' {
		return oneByOne(s)
	}
	value := 0
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return oneByOne(s)
		}
		value = 10*value + int(s[i]-'0')
	}
	if year && len(s) == 4 && pairs(value) {
		return inPairs(value/100, value%100)
	}
	return inThousands(value)
}

// oneByOne returns the syllables of digits named one after the other.
func oneByOne(s string) int {
	n := 0
	for _, r := range s {
		switch {
		case '0' <= r && r <= '9':
			n += units[r-'0']
		case r != '.' && r != ',':
			n++
		}
	}
	return n
}

// pairs reports whether a number of four digits is said as two of two, as years
// are: 1984, 2026, but not 2000 or 2005.
func pairs(value int) bool {
	return value < 2000 && value >= 1100 || value >= 2010 && value < 2100
}

// inPairs returns the syllables of nineteen eighty-four, nineteen oh five and
// fifteen hundred.
func inPairs(first, second int) int {
	n := underHundred(first)
	switch {
	case second == 0:
		return n + 2 // "hundred"
	case second < 10:
		n++ // "oh"
	}
	return n + underHundred(second)
}

func underHundred(v int) int {
	if v < 20 {
		return units[v]
	}
	n := tens[v/10]
	if v%10 > 0 {
		n += units[v%10]
	}
	return n
}

// inThousands returns the syllables of a number, without "and".
func inThousands(v int) int {
	if v == 0 {
		return units[0]
	}
	n := 0
	for group := 0; v > 0; group++ {
		if part := v % 1000; part > 0 {
			n += underThousand(part)
			if group > 0 {
				n += 2 // "thousand", "million", "billion"
			}
		}
		v /= 1000
	}
	return n
}

func underThousand(v int) int {
	n := 0
	if v >= 100 {
		n = units[v/100] + 2 // "hundred"
		v %= 100
	}
	if v > 0 {
		n += underHundred(v)
	}
	return n
}
