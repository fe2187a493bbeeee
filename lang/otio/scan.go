// JSON as it is read here: in one pass over the text, without copying what is
// passed over. As the library of the form writes them, Inf, Infinity and NaN are
// numbers too.

package otio

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A scanner stands at a byte of a text.
type scanner struct {
	text string
	at   int

	progress func(done, total int) // nil: nobody wants to know
	told     int
}

// A placed error lies at a byte of the file.
type placed struct {
	at      int
	code    string
	message string
}

func (p *placed) Error() string { return p.message }

// bad returns an error about what stands at a byte.
func (s *scanner) bad(at int, expected string) error {
	if at >= len(s.text) {
		return &placed{len(s.text), "bad-json", "the file ends in the middle"}
	}
	r := []rune(s.text[at:min(len(s.text), at+4)])[0]
	return &placed{at, "bad-json", fmt.Sprintf("this is no JSON: %s is expected, and not %q", expected, r)}
}

// between is after how many bytes progress is told again.
const between = 1 << 20

// next passes over blanks and returns the byte that follows; 0 at the end.
func (s *scanner) next() byte {
	for s.at < len(s.text) {
		switch c := s.text[s.at]; c {
		case ' ', '\t', '\r', '\n':
			s.at++
		default:
			return c
		}
	}
	return 0
}

// take takes one sign.
func (s *scanner) take(sign byte) error {
	if s.next() != sign {
		return s.bad(s.at, strconv.QuoteRune(rune(sign)))
	}
	s.at++
	if s.progress != nil && s.at-s.told >= between {
		s.told = s.at
		s.progress(s.at, len(s.text))
	}
	return nil
}

// more takes what stands between two members of a list, or its end; first tells
// that none was read yet.
func (s *scanner) more(end byte, first bool) (bool, error) {
	switch c := s.next(); {
	case c == end:
		return false, s.take(end)
	case first:
		return true, nil
	default:
		return true, s.take(',')
	}
}

// object reads an object; field reads the value of a key.
func (s *scanner) object(field func(key string) error) error {
	if err := s.take('{'); err != nil {
		return err
	}
	for first := true; ; first = false {
		if more, err := s.more('}', first); err != nil || !more {
			return err
		}
		key, err := s.key()
		if err != nil {
			return err
		}
		if err := field(key); err != nil {
			return err
		}
	}
}

// key reads the name of a field, with its colon.
func (s *scanner) key() (string, error) {
	key, err := s.str()
	if err != nil {
		return "", err
	}
	return key, s.take(':')
}

// array reads a list; member reads one of it.
func (s *scanner) array(member func() error) error {
	if err := s.take('['); err != nil {
		return err
	}
	for first := true; ; first = false {
		if more, err := s.more(']', first); err != nil || !more {
			return err
		}
		if err := member(); err != nil {
			return err
		}
	}
}

// str reads a text.
func (s *scanner) str() (string, error) {
	raw, escaped, err := s.raw()
	switch {
	case err != nil:
		return "", err
	case !escaped:
		return raw[1 : len(raw)-1], nil
	}
	var text string
	err = json.Unmarshal([]byte(raw), &text)
	return text, err // none, of a text that was looked through
}

// raw reads a text with its quotes; escaped tells that it has escapes.
func (s *scanner) raw() (text string, escaped bool, err error) {
	if s.next() != '"' {
		return "", false, s.bad(s.at, "a text in quotes")
	}
	from := s.at
	for at := from + 1; at < len(s.text); at++ {
		switch c := s.text[at]; {
		case c == '"':
			s.at = at + 1
			return s.text[from:s.at], escaped, nil
		case c < ' ':
			return "", false, s.bad(at, "an escape")
		case c == '\\':
			escaped = true
			n := escapeLength(s.text[at:])
			if n == 0 {
				return "", false, s.bad(at+1, "an escape")
			}
			at += n - 1
		}
	}
	return "", false, s.bad(len(s.text), "")
}

// escapeLength returns how long the escape is that a text begins with; 0 for
// none.
func escapeLength(s string) int {
	const long = len(`\u0000`)
	switch {
	case len(s) < 2:
		return 0
	case strings.IndexByte(`"\/bfnrt`, s[1]) >= 0:
		return 2
	case s[1] != 'u' || len(s) < long:
		return 0
	}
	if _, err := strconv.ParseUint(s[2:long], 16, 16); err != nil {
		return 0
	}
	return long
}

// number reads a number; ok is false for one beyond all measure.
func (s *scanner) number() (value float64, ok bool, err error) {
	s.next()
	rest := s.text[s.at:]
	for _, word := range []string{"-Infinity", "-Inf", "Infinity", "Inf", "NaN"} {
		if strings.HasPrefix(rest, word) {
			s.at += len(word)
			return math.NaN(), false, nil
		}
	}
	n := numberLength(rest)
	if n == 0 {
		return 0, false, s.bad(s.at, "a value")
	}
	value, err = strconv.ParseFloat(rest[:n], 64)
	s.at += n
	return value, err == nil, nil
}

// numberLength returns how long the number is that a text begins with: digits,
// of which a first 0 stands alone, a fraction and an exponent; 0 for none.
func numberLength(s string) int {
	at := 0
	digits := func() bool {
		from := at
		for at < len(s) && s[at] >= '0' && s[at] <= '9' {
			at++
		}
		return at > from
	}
	is := func(signs string) bool {
		if at < len(s) && strings.IndexByte(signs, s[at]) >= 0 {
			at++
			return true
		}
		return false
	}
	is("-")
	if !is("0") && !digits() {
		return 0
	}
	if is(".") && !digits() {
		return 0
	}
	if is("eE") {
		is("+-")
		if !digits() {
			return 0
		}
	}
	return at
}

// word reads true, false or null.
func (s *scanner) word() (string, error) {
	s.next()
	for _, word := range []string{"true", "false", "null"} {
		if strings.HasPrefix(s.text[s.at:], word) {
			s.at += len(word)
			return word, nil
		}
	}
	return "", s.bad(s.at, "a value")
}

// deepest is how deep what is passed over may be nested.
const deepest = 10_000

// skip passes over a value, however it is nested.
func (s *scanner) skip() error {
	var open []byte // the ends of the lists around
	for {
		nested, err := s.enter(&open)
		if err != nil {
			return err
		}
		for !nested { // a value is over
			if len(open) == 0 {
				return nil
			}
			end := open[len(open)-1]
			more, err := s.more(end, false)
			if err != nil {
				return err
			}
			if !more {
				open = open[:len(open)-1]
				continue
			}
			if nested = true; end == '}' {
				if _, err := s.key(); err != nil {
					return err
				}
			}
		}
	}
}

// enter passes over a value that holds no other, or goes up to the first value
// in one that does.
func (s *scanner) enter(open *[]byte) (nested bool, err error) {
	switch c := s.next(); c {
	case '{', '[':
		end := c + 2 // both are two signs behind in ASCII
		if len(*open) == deepest {
			return false, &placed{s.at, "too-deep", fmt.Sprintf("the file is nested more than %d deep", deepest)}
		}
		s.at++
		if s.next() == end {
			return false, s.take(end)
		}
		*open = append(*open, end)
		if end == '}' {
			_, err = s.key()
		}
		return true, err
	case '"':
		_, _, err = s.raw()
	case 't', 'f', 'n':
		_, err = s.word()
	default:
		_, _, err = s.number()
	}
	return false, err
}
