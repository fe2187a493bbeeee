// Numbers that only cameras and lenses have: the perforations of film, the sides of a
// sensor, the clock position of a mark.

package lang

import (
	"strconv"
	"strings"
)

// perforations moves past the 3-perf behind the name of a format. Anywhere else that is
// a difference.
func (s *scanner) perforations() bool {
	if s.lead != "sensor" || s.nth != 2 || s.prev != tokWord || s.value == "x" || s.value == movesWord {
		return false
	}
	n := countDigits(s.src[s.pos:])
	rest, found := strings.CutPrefix(s.src[s.pos+n:], "-perf")
	if !found || wordLength(rest) > 0 {
		return false
	}
	s.pos += n + len("-perf")
	return true
}

// sides moves past the two sides of a sensor, such as 16:9.
func (s *scanner) sides() bool {
	wide := countDigits(s.src[s.pos:])
	if s.byteAt(s.pos+wide) != ':' {
		return false
	}
	high := countDigits(s.src[s.pos+wide+1:])
	end := s.pos + wide + 1 + high
	if high == 0 || s.byteAt(end) == ':' || s.byteAt(end) == ';' {
		return false
	}
	s.pos = end
	return true
}

// clock moves past a clock position, such as 4 o'clock or 4:30 o'clock, and reports
// minutes that no hour has.
func (s *scanner) clock() bool {
	start := s.pos
	n := countDigits(s.src[start:])
	minutes := 0
	if rest := s.src[start+n:]; strings.HasPrefix(rest, ":") {
		if minutes = countDigits(rest[1:]); minutes != 2 {
			return false
		}
		n += 1 + minutes
	}
	word := s.src[start+n:]
	word = word[blanks(word):]
	mark := len("o'clock")
	if strings.HasPrefix(word, "o’clock") {
		mark = len("o’clock")
	} else if !strings.HasPrefix(word, "o'clock") {
		return false
	}
	if wordLength(word) > mark {
		return false
	}
	s.pos = len(s.src) - len(word) + mark
	if written := s.src[start : start+n]; minutes > 0 && written[n-2:] > "59" {
		s.report("bad-number", start, "`"+shorten(written)+"` is no time on a clock", "An hour has 60 minutes, as in 4:30 o'clock.")
	}
	return true
}

// countDigits counts the digits at the start of src.
func countDigits(src string) int {
	n := 0
	for n < len(src) && isDigit(src[n]) {
		n++
	}
	return n
}

// clockHours returns the hours of a clock position as written.
func clockHours(written string) Hours {
	number := written[:strings.IndexByte(written, 'o')]
	hours, minutes, _ := strings.Cut(strings.TrimFunc(number, isBlank), ":")
	h, _ := strconv.ParseFloat(hours, 64) // digits, as the scanner has seen
	m, _ := strconv.ParseFloat("0"+minutes, 64)
	return Hours(h + m/60)
}

// writeClock writes a clock position in the one way that the formatter has.
func writeClock(written string) string {
	number := written[:strings.IndexByte(written, 'o')]
	return strings.TrimFunc(number, isBlank) + " o'clock"
}
