// Numbers as the scanner reads them: decimals, fractions, feet and inches,
// timecodes.

package lang

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"
)

// number reads the token that begins with a digit, or with a dot before one.
func (s *scanner) number() lexer.TokenType {
	start := s.pos
	switch {
	case s.value == "gear" && s.ratio(gearIsOne), s.value == "crop" && s.ratio(shapeIsOne):
		return tokNumber
	case s.value == "type" && s.lead == "sensor" && s.sides():
		return tokNumber
	case s.perforations():
		return tokPerf
	case s.clock():
		return tokClock
	}
	s.digits()
	if c := s.byteAt(s.pos); (c == ':' || c == ';') && isDigit(s.byteAt(s.pos+1)) {
		return s.timecode(start)
	}
	if n := fractionTail(s.src[s.pos:]); n > 0 && s.src[start] != '.' {
		s.pos += n
	} else {
		s.decimals(start)
	}
	return s.marked(start)
}

// ratio reads what is written as two numbers and is one, such as the gear 1:1.5, and
// reports it as tell says.
func (s *scanner) ratio(tell func(f float64) (message, detail string, meant []string)) bool {
	start := s.pos
	from := plainNumber(s.src[start:])
	if s.byteAt(start+from) != ':' {
		return false
	}
	to := plainNumber(s.src[start+from+1:])
	if s.pos += from + 1 + to; to == 0 || s.byteAt(s.pos) == ':' {
		s.pos = start
		return false
	}
	f, ok := ratioOf(s.src[start:s.pos])
	if !ok {
		s.pos = start
		return false
	}
	message, detail, meant := tell(f)
	fault := s.report("bad-number", start, message, detail)
	for _, text := range meant {
		fault.writes(text)
	}
	return true
}

func gearIsOne(f float64) (message, detail string, meant []string) {
	gear, other := plain(round(f, 100)), plain(round(1/f, 100))
	return "a gear is one number", fmt.Sprintf("Write gear %s where the hand turns so many degrees for one of the ring; gear %s is the other way round.",
		gear, other), []string{gear, other}
}

func shapeIsOne(f float64) (message, detail string, meant []string) {
	shape := plain(round(f, 100))
	return "a shape is one number, its width over its height", "Write: crop " + shape, []string{shape}
}

// ratioOf returns the larger of the two numbers of a ratio over the smaller.
func ratioOf(written string) (float64, bool) {
	from, to, ok := strings.Cut(written, ":")
	if !ok {
		return 0, false
	}
	a, errA := strconv.ParseFloat(from, 64)
	b, errB := strconv.ParseFloat(to, 64)
	if errA != nil || errB != nil || !(a > 0) || !(b > 0) {
		return 0, false
	}
	return max(a, b) / min(a, b), true
}

// round rounds to so many parts of one.
func round(v, parts float64) float64 { return math.Round(v*parts) / parts }

func (s *scanner) digits() {
	for isDigit(s.byteAt(s.pos)) {
		s.pos++
	}
}

// decimals reads what may follow a number's first digits, and reports it where
// it is more than one point and digits.
func (s *scanner) decimals(start int) {
	commas, points := 0, 0
	for {
		switch c := s.byteAt(s.pos); {
		case isDigit(c):
			s.pos++
			continue
		case c == '.' && isDigit(s.byteAt(s.pos+1)):
			points++
		case c == ',' && isDigit(s.byteAt(s.pos+1)):
			commas++
		default:
			s.reportDecimals(start, commas, points)
			return
		}
		s.pos++
	}
}

func (s *scanner) reportDecimals(start, commas, points int) {
	written := shorten(s.src[start:s.pos])
	switch {
	case commas == 1 && points == 0:
		s.report("bad-number", start, "a decimal is written with a point",
			"Write %s; for two values put a blank behind the comma.", strings.Replace(written, ",", ".", 1)).
			writes(strings.Replace(s.src[start:s.pos], ",", ".", 1))
	case commas+points > 1:
		s.report("bad-number", start, "`"+written+"` is no number",
			"A number has digits and at most one point, and nothing between its thousands.").
			offers(s.thousands(start, points)...)
	}
}

// thousands offers a number without the commas between its thousands.
func (s *scanner) thousands(start, points int) []offer {
	whole, _, _ := strings.Cut(s.src[start:s.pos], ".")
	groups := strings.Split(whole, ",")
	for _, g := range groups[1:] {
		if len(g) != 3 || points > 1 {
			return nil
		}
	}
	number := strings.ReplaceAll(s.src[start:s.pos], ",", "")
	return []offer{writing(s.placeFrom(start), number)}
}

// fractionTail measures the "/50" of 1/50 at the start of src, 0 where src
// goes on otherwise.
func fractionTail(src string) int {
	if src == "" || src[0] != '/' {
		return 0
	}
	n := 1
	for n < len(src) && isDigit(src[n]) {
		n++
	}
	if n == 1 || n+1 < len(src) && src[n] == '.' && isDigit(src[n+1]) {
		return 0
	}
	return n
}

// timecode reads digits and colons, whatever their number; the parser asks for
// the right one.
func (s *scanner) timecode(start int) lexer.TokenType {
	for {
		s.digits()
		if c := s.byteAt(s.pos); c != ':' && c != ';' || !isDigit(s.byteAt(s.pos+1)) {
			break
		}
		s.pos++
	}
	if written := s.src[start:s.pos]; !IsTimecode(written) {
		s.report("bad-number", start, "`"+shorten(written)+"` is no timecode",
			"A timecode is hours, minutes, seconds and frames, 01:00:10:12, with a ; before the frames in drop frame.").
			offers(s.asTimecode(start)...)
	}
	return tokTimecode
}

// asTimecode offers the timecode that four groups of at most two digits come to.
func (s *scanner) asTimecode(start int) []offer {
	written := s.src[start:s.pos]
	groups := strings.FieldsFunc(written, func(r rune) bool { return r == ':' || r == ';' })
	if len(groups) != 4 {
		return nil
	}
	if strings.Count(written, ";") > 1 { // it tells nothing of drop frame
		written = strings.ReplaceAll(written, ";", ":")
	}
	last := written[strings.LastIndexAny(written, ":;")]
	for i, g := range groups {
		if len(g) == 1 {
			groups[i] = "0" + g
		}
	}
	made := strings.Join(groups[:3], ":") + string(last) + groups[3]
	if !IsTimecode(made) {
		return nil
	}
	return []offer{writing(s.placeFrom(start), made)}
}

// IsTimecode reports whether s has a timecode's four groups of two digits.
func IsTimecode(s string) bool {
	if len(s) != len("00:00:00:00") {
		return false
	}
	for i := range len(s) {
		switch {
		case i == 8:
			if s[i] != ':' && s[i] != ';' {
				return false
			}
		case i == 2 || i == 5:
			if s[i] != ':' {
				return false
			}
		case !isDigit(s[i]):
			return false
		}
	}
	return true
}

// marked reads the marks of feet and inches behind a number. A quote right behind
// a digit is a mark: no text can stand there.
func (s *scanner) marked(start int) lexer.TokenType {
	if n := halfInch(s.src[start:s.pos], s.src[s.pos:]); n > 0 {
		s.pos += n
		return tokFeet
	}
	if n := markLength(s.src[s.pos:], inchMarks); n > 0 {
		s.pos += n
		return tokFeet
	}
	n := markLength(s.src[s.pos:], footMarks)
	if n == 0 {
		return tokNumber
	}
	s.pos += n
	// The hyphen of 4'-6" touches both; with a blank beside it, it is a minus.
	hyphen := markLength(s.src[s.pos:], hyphens)
	if hyphen > 0 && !isDigit(s.byteAt(s.pos+hyphen)) {
		hyphen = 0
	}
	if more := inches(s.src[s.pos+hyphen:]); more > 0 {
		s.pos += hyphen + more
	}
	return tokFeet
}

// The marks of feet and inches; some keyboards and programs write a mark of inches
// as two of feet.
var (
	footMarks = []string{"'", "′", "’"}
	inchMarks = []string{`"`, "″", "”", "''", "′′", "’’"}
	hyphens   = []string{"-", "\u2010", "\u2011", "–"}
)

// oneMark writes the marks of feet and inches in one way, ' and ", with a blank
// for a hyphen.
var oneMark = strings.NewReplacer("''", `"`, "′′", `"`, "’’", `"`, "″", `"`, "”", `"`,
	"′", "'", "’", "'", "-", " ", "\u2010", " ", "\u2011", " ", "–", " ")

func markLength(src string, marks []string) int {
	if src == "" || isBlank(rune(src[0])) {
		return 0
	}
	for _, m := range marks {
		if strings.HasPrefix(src, m) {
			return len(m)
		}
	}
	return 0
}

// halfInch measures the ` 1/2"` at the start of src, which stands behind number,
// 0 where src goes on otherwise.
func halfInch(number, src string) int {
	n := blanks(src)
	if n == 0 || !isInteger(number) {
		return 0
	}
	top := plainNumber(src[n:])
	tail := fractionTail(src[n+top:])
	if top == 0 || tail == 0 {
		return 0
	}
	n += top + tail
	mark := markLength(src[n:], inchMarks)
	if mark == 0 {
		return 0
	}
	return n + mark
}

// inches measures the 6 1/2" at the start of src, 0 where src goes on
// otherwise.
func inches(src string) int {
	n := blanks(src)
	whole := plainNumber(src[n:])
	if whole == 0 {
		return 0
	}
	n += whole
	if gap := blanks(src[n:]); gap > 0 {
		if num := plainNumber(src[n+gap:]); num > 0 {
			if tail := fractionTail(src[n+gap+num:]); tail > 0 {
				n += gap + num + tail
			}
		}
	} else {
		n += fractionTail(src[n:])
	}
	mark := markLength(src[n:], inchMarks)
	if mark == 0 {
		return 0
	}
	return n + mark
}

// plainNumber measures digits with at most one point at the start of src.
func plainNumber(src string) int {
	n := 0
	for n < len(src) && src[n] < utf8.RuneSelf && (isDigit(src[n]) ||
		src[n] == '.' && n > 0 && !strings.Contains(src[:n], ".")) {
		n++
	}
	return n
}
